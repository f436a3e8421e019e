/** What expressions come to. All expected numbers are worked out by hand, or by a second, plainer calculator below. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Look, type Value, asAngle, asLength, asNumber, evaluateExpr } from '../../src/model/expr/evaluate.ts';
import { parseExpr } from '../../src/model/expr/parse.ts';
import { law } from '../support/law.ts';

const sizes: Readonly<Record<string, Value>> = {
  long: { dim: 'flex', v: 1200 },
  wide: { dim: 'length', v: 600 },
  lean: { dim: 'angle', v: Math.PI / 12 },
  share: { dim: 'number', v: 0.25 },
};
const look: Look = (n) => {
  const value = n.k === 'size' ? sizes[n.id] : ({ dim: 'length', v: 45 } as const);
  return value ? { ok: true, value } : { ok: false, problem: 'no such size' };
};
function come(text: string, unit: 'mm' | 'in' = 'mm'): Value | string {
  const e = parseExpr(text, unit);
  if (!e.ok) throw new Error(`"${text}" did not parse: ${e.problem}`);
  const r = evaluateExpr(e.expr, unit, look);
  return r.ok ? r.value : r.problem;
}

describe('kinds of value', () => {
  const table: readonly (readonly [string, 'mm' | 'in', Value['dim'], number])[] = [
    ['long/2 + 40', 'mm', 'flex', 640],
    ['-long/2 + 40', 'mm', 'flex', -560],
    ['long/2 - wide', 'mm', 'length', 0],
    ['wide + 1', 'in', 'length', 625.4],
    ['1 + wide', 'in', 'length', 625.4],
    ['wide + 1', 'mm', 'length', 601],
    ['wide*2', 'mm', 'length', 1200],
    ['2*wide', 'mm', 'length', 1200],
    ['wide/4', 'mm', 'length', 150],
    ['wide/leg.width', 'mm', 'number', 600 / 45],
    ['wide/2 in', 'in', 'number', 600 / 50.8],
    ['long/wide', 'mm', 'number', 2],
    ['wide*share', 'mm', 'length', 150],
    ['share*2', 'mm', 'flex', 0.5],
    ['share*share', 'mm', 'number', 0.0625],
    ['share + 1', 'mm', 'number', 1.25],
    ['share*40 + wide', 'mm', 'length', 610],
    ['wide/wide*40 + wide', 'in', 'length', 1616],
    ['lean*2', 'mm', 'angle', Math.PI / 6],
    ['lean + 15 deg', 'mm', 'angle', Math.PI / 6],
    ['lean/2', 'mm', 'angle', Math.PI / 24],
    ['lean/lean', 'mm', 'number', 1],
    ['-lean', 'mm', 'angle', -Math.PI / 12],
    ['min(wide, 3)', 'in', 'length', 76.2],
    ['max(wide, 3, long)', 'mm', 'length', 1200],
    ['min(4, share)', 'mm', 'number', 0.25],
    ['min(7)', 'mm', 'flex', 7],
    ['max(1 in, 25 mm)', 'mm', 'length', 25.4],
    ['round(7.5)', 'mm', 'flex', 8],
    ['round(-7.5)', 'mm', 'flex', -8],
    ['round(-0.2)', 'mm', 'flex', 0],
    ['round(38 mm)', 'in', 'length', 25.4],
    ['round(39 mm)', 'in', 'length', 50.8],
    ['round(38.4 mm)', 'mm', 'length', 38],
    ['round(37 mm, 5)', 'mm', 'length', 35],
    ['round(1.3, 1/8)', 'in', 'flex', 1.25],
    ['round(1.3 in, 1/8)', 'in', 'length', 31.75],
    ['round(14.6 deg)', 'mm', 'angle', Math.PI / 12],
    ['round(0.15, 0.1)', 'mm', 'flex', 0.2],
    ['0 * -1', 'mm', 'flex', 0],
    ['leg:left.front - 3', 'mm', 'length', 42],
    ['xon(leg.inner, 1, 2)', 'mm', 'length', 45],
  ];
  test.each(table)('%s in %s', (text, unit, dim, v) => {
    const r = come(text, unit);
    expect(r).toEqual({ dim, v: expect.closeTo(v, 9) });
    expect(typeof r === 'object' && Object.is(r.v, -0)).toBe(false);
  });
});

describe('what cannot be worked out is told', () => {
  test.each([
    ['wide*wide', /a length times a length/],
    ['wide*lean', /times/],
    ['wide + share', /a length and a plain number cannot be added/],
    ['share - wide', /cannot be subtracted/],
    ['wide + lean', /cannot be added/],
    ['lean + 2', /cannot be added/],
    ['share/wide', /cannot be divided/],
    ['2/lean', /cannot be divided/],
    ['wide/lean', /cannot be divided/],
    ['wide/(2 - 2)', /division by zero in wide \/ \(2 - 2\)/],
    ['min(wide, lean)', /cannot choose/],
    ['round(wide, lean)', /steps of an angle/],
    ['round(wide, 0)', /above 0/],
    ['round(wide, -2)', /above 0/],
    ['nowhere + 1', /no such size/],
    [Array.from({ length: 60 }, () => '999999999999').join('*'), /no finite number/],
  ])('%s', (text, problem) => {
    expect(come(text)).toMatch(problem);
  });
});

test('a bare number takes the unit of the place where it is wanted', () => {
  const two: Value = { dim: 'flex', v: 2 };
  expect(asLength(two, 'in')).toEqual({ ok: true, v: 50.8 });
  expect(asLength(two, 'mm')).toEqual({ ok: true, v: 2 });
  expect(asNumber(two)).toEqual({ ok: true, v: 2 });
  expect(asAngle({ dim: 'flex', v: 180 })).toEqual({ ok: true, v: Math.PI });
  expect(asLength({ dim: 'number', v: 2 }, 'mm')).toMatchObject({
    ok: false,
    problem: 'a length is wanted here, and this is a plain number',
  });
  expect(asLength({ dim: 'angle', v: 2 }, 'mm')).toMatchObject({ ok: false });
  expect(asNumber({ dim: 'length', v: 2 })).toMatchObject({ ok: false });
  expect(asAngle({ dim: 'length', v: 2 })).toMatchObject({ ok: false });
});

/** A plain calculator: products first, then sums, left to right, on a list of numbers and signs. */
function calculator(first: number, rest: readonly (readonly [string, number])[]): number {
  const sums: [string, number][] = [['+', first]];
  for (const [sign, n] of rest) {
    const last = sums.at(-1) as [string, number];
    if (sign === '*') last[1] *= n;
    else if (sign === '/') last[1] /= n;
    else sums.push([sign, n]);
  }
  return sums.reduce((all, [sign, n]) => (sign === '+' ? all + n : all - n), 0);
}
const positive = fc.integer({ min: 1, max: 4000 }).map((n) => n / 4);
law(
  'long sums agree with a plain calculator',
  fc.tuple(positive, fc.array(fc.tuple(fc.constantFrom('+', '-', '*', '/'), positive), { maxLength: 12 })),
  ([first, rest]) => {
    const text = [String(first), ...rest.map(([sign, n]) => ` ${sign} ${n}`)].join('');
    const expected = calculator(first, rest);
    const got = come(text);
    expect(typeof got === 'object' && Math.abs(got.v - expected) <= 1e-9 * Math.max(1, Math.abs(expected))).toBe(true);
  },
  { runs: 1000 },
);

const leaves = fc.constantFrom('long', 'wide', 'lean', 'share', '2', '1 in', '15 deg', '0', 'leg.left', 'nowhere');
const anyText = fc.letrec<{ t: string }>((tie) => ({
  t: fc.oneof(
    { depthSize: 'small' },
    leaves,
    fc.tuple(tie('t'), fc.constantFrom(' + ', ' - ', ' * ', ' / '), tie('t')).map((p) => `(${p.join('')})`),
    fc.tuple(fc.constantFrom('min', 'max', 'round'), tie('t'), tie('t')).map(([f, a, b]) => `${f}(${a}, ${b})`),
  ),
})).t;
law(
  'every expression comes to a finite value or to a reason',
  anyText,
  (text) => {
    const e = parseExpr(text, 'mm');
    if (!e.ok) return;
    for (const unit of ['mm', 'in'] as const) {
      const r = evaluateExpr(e.expr, unit, look);
      if (r.ok) expect(Number.isFinite(r.value.v) && !Object.is(r.value.v, -0)).toBe(true);
      else expect(r.problem).toMatch(/\w/);
    }
  },
  { runs: 2000 },
);
