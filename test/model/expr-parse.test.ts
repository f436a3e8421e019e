/** The language of sizes: what it reads, how it is taken apart, and what it says of what it cannot read. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateExpr } from '../../src/model/expr/evaluate.ts';
import { type Expr, parseExpr, parsePath, parseReading, readExpr, readsOf } from '../../src/model/expr/parse.ts';
import { exprText } from '../../src/model/expr/text.ts';
import { nearestWord } from '../../src/model/nearest.ts';
import { readLength } from '../../src/units/parse.ts';
import { law } from '../support/law.ts';

function parsed(text: string): Expr {
  const r = parseExpr(text, 'in');
  if (!r.ok) throw new Error(`"${text}" did not parse: ${JSON.stringify(r)}`);
  return r.expr;
}
const flex = (v: number): Expr => ({ k: 'lit', value: { dim: 'flex', v } });
const mm = (v: number): Expr => ({ k: 'lit', value: { dim: 'length', v } });
const size = (id: string): Expr => ({ k: 'size', id });
const bin = (op: '+' | '-' | '*' | '/', a: Expr, b: Expr): Expr => ({ k: 'bin', op, a, b });
const read = (id: string, names: string[], of: 'left' | 'right' | 'front' | 'run'): Expr => ({ k: 'read', path: { id, names }, of });

describe('a length as typed is one literal', () => {
  const table: readonly (readonly [string, Expr])[] = [
    ['seat_d/2 - 1-1/2 in', bin('-', bin('/', size('seat_d'), flex(2)), mm(38.1))],
    ['10 - 1/2', bin('-', flex(10), flex(0.5))],
    ['10-1/2', flex(10.5)],
    ['leg.front-3', bin('-', read('leg', [], 'front'), flex(3))],
    ['leg.front-3/4', bin('-', read('leg', [], 'front'), flex(0.75))],
    ['long - 1-1/2', bin('-', size('long'), flex(1.5))],
    ['long-1-1/2', bin('-', size('long'), flex(1.5))],
    ['3 3/4', flex(3.75)],
    ['3\' 5 7/32"', mm(1046.95625)],
    ['3\' 5 7/32" + 1 ft', bin('+', mm(1046.95625), mm(304.8))],
    ['5\'-6"', mm(1676.4)],
    ['5\' - 6"', bin('-', mm(1524), mm(152.4))],
    ['2,5 + 1.5', bin('+', flex(2.5), flex(1.5))],
    ['min(a, 2) + 1,5', bin('+', { k: 'call', fn: 'min', args: [size('a'), flex(2)] }, flex(1.5))],
    ['min((1,5), 2)', { k: 'call', fn: 'min', args: [flex(1.5), flex(2)] }],
    ['12-30/4', bin('-', flex(12), flex(7.5))],
    ['long/3/4', bin('/', bin('/', size('long'), flex(3)), flex(4))],
    ['long*3/4', bin('*', size('long'), flex(0.75))],
    ['long/2 mm', bin('/', size('long'), mm(2))],
    ['7/8 in', mm(22.225)],
    ['−½', { k: 'neg', a: flex(0.5) }],
    ['-8 3/4', { k: 'neg', a: flex(8.75) }],
    ['2 × 3', bin('*', flex(2), flex(3))],
  ];
  test.each(table)('%s', (text, expected) => {
    expect(parsed(text)).toEqual(expected);
  });
});

describe('names, readings and spots', () => {
  const table: readonly (readonly [string, Expr])[] = [
    ['leg:left:*.right', read('leg', ['left', '*'], 'right')],
    ['rung:*+1.left+3', bin('+', read('rung', ['*+1'], 'left'), flex(3))],
    ['rung:2.left', read('rung', ['2'], 'left')],
    ['rung.run - leg_d/2', bin('-', read('rung', [], 'run'), bin('/', size('leg_d'), flex(2)))],
    [
      'xon(leg:left.inner, 0, 5-1/2)',
      { k: 'on', axis: 'x', path: { id: 'leg', names: ['left'] }, mark: 'inner', a: flex(0), b: flex(5.5) },
    ],
    ['min(a, 3, 2 in)', { k: 'call', fn: 'min', args: [size('a'), flex(3), mm(50.8)] }],
    ['round(a/3, 1/8)', { k: 'call', fn: 'round', args: [bin('/', size('a'), flex(3)), flex(0.125)] }],
    ['1 - 2 - 3', bin('-', bin('-', flex(1), flex(2)), flex(3))],
    ['1 + 2 * 3', bin('+', flex(1), bin('*', flex(2), flex(3)))],
    ['(1 + 2) * 3', bin('*', bin('+', flex(1), flex(2)), flex(3))],
    ['-a * b', bin('*', { k: 'neg', a: size('a') }, size('b'))],
    ['2 - -a', bin('-', flex(2), { k: 'neg', a: size('a') })],
  ];
  test.each(table)('%s', (text, expected) => {
    expect(parsed(text)).toEqual(expected);
  });
  test('angles', () => {
    expect(parsed('15 deg')).toEqual({ k: 'lit', value: { dim: 'angle', v: (15 * Math.PI) / 180 } });
    expect(parsed('1:8')).toEqual({ k: 'lit', value: { dim: 'angle', v: Math.atan(1 / 8) } });
  });
  test('everything that is read from elsewhere, in order', () => {
    expect(readsOf(parsed('a + min(leg.left, zon(rail.inner, b, 2)) - a')).map((n) => (n.k === 'size' ? n.id : n.path.id))).toEqual([
      'a',
      'leg',
      'rail',
      'b',
      'a',
    ]);
  });
});

describe('refusals say where, what, and what is near', () => {
  const table: readonly (readonly [string, number, RegExp, string?])[] = [
    ['', 0, /nothing/],
    ['  ', 0, /nothing/],
    ['a +', 3, /missing at the end/],
    ['+', 1, /missing/],
    ['* 3', 0, /missing in front/],
    ['a b', 2, /sign is missing/],
    ['a (3)', 0, /cannot be called/],
    ['3 (a)', 2, /sign is missing/],
    ['(a', 0, /never closed/],
    ['a)', 1, /closes nothing/],
    [')', 0, /nothing in front/],
    ['(a b)', 3, /missing/],
    ['min(', 4, /missing at the end/],
    ['min()', 4, /nothing in front/],
    ['round(1, 2, 3)', 0, /round takes/],
    ['leg.frnt', 4, /no face or size/, 'front'],
    ['leg.', 3, /point/],
    ['leg:.front', 3, /behind ":"/],
    ['leg:left', 8, /which face/, 'leg:left.width'],
    ['left + 3', 0, /of what/, 'leg.left'],
    ['min + 3', 3, /brackets/, 'min(…)'],
    ['mn(2, 3)', 0, /cannot be called/, 'min'],
    ['Math.max(1)', 0, /small letters/, 'math'],
    ['Long/2', 0, /small letters/, 'long'],
    ['leg.Front', 4, /small letters/, 'front'],
    ['constructor(1)', 0, /cannot be called/],
    ['rung:1.run', 0, /same run/, 'rung.run'],
    ['20 inchs', 2, /no unit/, 'inch'],
    ['1e-7', 1, /no unit/],
    ['2 in.left', 4, /cannot/],
    ['a & b', 2, /"&"/],
    ['a\u0000b', 1, /0000/],
    ['a = 2', 2, /"="/],
    ['__proto__', 0, /"_"/],
    ['xon(leg, 1, 2)', 4, /faces or marks/],
    ['xon(leg.inner, 1)', 0, /two places/],
    ['xon(leg.inner)', 13, /two places/],
    ['a, b', 1, /cannot stand/],
    ['1/0', 0, /divided by 0/],
    ['1-1-1/2', 0, /two ways/, '1\' 1 1/2"'],
    ['1.1/2', 0, /two ways/, '1 1/2'],
    ['1,234', 0, /two ways/, '1.234'],
    ['1 200 mm', 0, /not sure/, '1200 mm'],
    ['min(1,5)', 4, /space behind a comma/, '1, 5'],
    ['a/1/2 in', 2, /brackets/, '(1/2 in)'],
    ['a*2-1/2', 2, /two ways/, '(2-1/2)'],
    ['2-1/2*a', 0, /two ways/, '(2-1/2)'],
    ['10 -1/2', 0, /two ways/, '10 1/2'],
    [`${'('.repeat(21)}1${')'.repeat(21)}`, 21, /nested/],
    ['-'.repeat(22) + '1', 21, /nested/],
    [Array.from({ length: 101 }, () => '1').join('+'), 200, /more than 200/],
  ];
  test.each(table.map(([text, ...rest]) => ({ text, rest })))('"$text"', ({ text, rest: [at, problem, nearest] }) => {
    const r = parseExpr(text, 'mm');
    expect(r).toMatchObject({ ok: false, at, problem: expect.stringMatching(problem) });
    expect(r.ok || r.nearest).toBe(nearest);
  });
  test('at the limits it still reads', () => {
    expect(parseExpr(Array.from({ length: 100 }, () => '1').join('+'), 'mm').ok).toBe(true);
    expect(parseExpr(`${'('.repeat(20)}1${')'.repeat(20)}`, 'mm').ok).toBe(true);
  });
  test('a bare JSON number stands for itself', () => {
    expect(readExpr(1e-7, 'mm')).toEqual({ ok: true, expr: flex(1e-7) });
    expect(readExpr(Number.NaN, 'mm')).toMatchObject({ ok: false });
    expect(readExpr('2+3', 'mm').ok).toBe(true);
  });
});

describe('paths alone', () => {
  test.each([
    ['leg', 'leg', []],
    ['leg:left:front', 'leg', ['left', 'front']],
    [' rung:*+1 ', 'rung', ['*+1']],
    ['leg:*:1', 'leg', ['*', '1']],
  ] as const)('%s', (text, id, names) => {
    expect(parsePath(text)).toEqual({ ok: true, path: { id, names } });
  });
  test.each([
    '',
    ' ',
    ':left',
    'leg:',
    'leg::a',
    'leg.front',
    'leg left',
    '*',
    'leg:*+2',
    'leg:left;',
    '__proto__',
    'a'.repeat(41),
    `leg:${'a'.repeat(41)}`,
    'Leg',
    '1leg',
  ])('"%s" is none', (text) => {
    const r = parsePath(text);
    expect(r).toMatchObject({ ok: false, problem: expect.any(String) });
    expect(!r.ok && r.at).toBeLessThanOrEqual(text.length);
  });
  test('with a face or a mark', () => {
    expect(parseReading('seat.bottom')).toEqual({ ok: true, path: { id: 'seat', names: [] }, of: 'bottom' });
    expect(parseReading('leg:left.inner2')).toEqual({ ok: true, path: { id: 'leg', names: ['left'] }, of: 'inner2' });
    expect(parseReading('seat')).toMatchObject({ ok: false, at: 4 });
    expect(parseReading('seat.')).toMatchObject({ ok: false });
    expect(parseReading('seat.bottom.top')).toMatchObject({ ok: false });
    expect(parseReading('seat.bottom + 1')).toMatchObject({ ok: false, at: 11 });
  });
});

test('the nearest known word', () => {
  const words = ['left', 'right', 'front', 'back', 'width', 'midwidth'];
  expect(nearestWord('letf', words)).toBe('left');
  expect(nearestWord('wdth', words)).toBe('width');
  expect(nearestWord('FRONT', words)).toBe('front');
  expect(nearestWord('sideways', words)).toBe(null);
  expect(nearestWord('', words)).toBe(null);
  expect(nearestWord('x', ['y', 'z'])).toBe(null);
  expect(nearestWord('a'.repeat(100_000), words)).toBe(null);
  expect(nearestWord('cat', ['car', 'bat'])).toBe(nearestWord('cat', ['bat', 'car']));
});

const scrap = fc.constantFrom(
  'a',
  'leg',
  '.left',
  ':',
  '*',
  '+1',
  '(',
  ')',
  ',',
  '+',
  '-',
  '/',
  ' ',
  '1',
  '12',
  '1/2',
  '.5',
  "'",
  '"',
  ' in',
  'mm',
  'deg',
  'min(',
  'xon(',
  'round(',
  '½',
  '\u2009',
  'É',
  '😀',
  '\u0000',
  '__proto__',
);
law(
  'parsing never throws, and points into the text',
  fc.oneof(
    fc.array(scrap, { maxLength: 30 }).map((a) => a.join('')),
    fc.string({ unit: 'binary', maxLength: 80 }),
  ),
  (text) => {
    const r = parseExpr(text, 'mm');
    if (!r.ok) expect(r.at >= 0 && r.at <= text.length && r.problem.length > 0).toBe(true);
    else expect(JSON.parse(JSON.stringify(r.expr))).toEqual(r.expr);
    const p = parsePath(text);
    if (!p.ok) expect(p.at >= 0 && p.at <= text.length).toBe(true);
  },
  { runs: 4000 },
);

law(
  'what a field reads as a length, an expression reads as the same length',
  fc.tuple(
    fc
      .array(fc.constantFrom('1', '2', '12', '345', '/', ' ', '-', '.', ',', "'", '"', ' in', ' mm', '½', '3/4'), { maxLength: 7 })
      .map((a) => a.join('')),
    fc.constantFrom('mm' as const, 'in' as const),
  ),
  ([text, unit]) => {
    const field = readLength(text, unit);
    const e = parseExpr(text, unit);
    if (field.ok) {
      const r = e.ok ? evaluateExpr(e.expr, unit, () => ({ ok: false, problem: 'no names' })) : null;
      const mm = r?.ok ? r.value.v * (r.value.dim !== 'length' && unit === 'in' ? 25.4 : 1) : Number.NaN;
      expect(Math.abs(mm - field.mm)).toBeLessThanOrEqual(1e-14 * Math.abs(field.mm));
    } else if ('ask' in field) expect(e.ok).toBe(false);
  },
  { runs: 4000 },
);

const leaf: fc.Arbitrary<Expr> = fc.oneof(
  fc.integer({ min: 0, max: 4000 }).map((n) => flex(n / 8)),
  fc.integer({ min: 0, max: 40000 }).map((n) => mm(n / 16)),
  fc.integer({ min: 0, max: 6000 }).map((n) => mm((n * 254) / 640)),
  fc.constantFrom(size('long'), size('leg_w'), read('leg', ['left', '*'], 'front'), read('rung', [], 'run')),
);
const tree = fc.letrec<{ e: Expr }>((tie) => ({
  e: fc.oneof(
    { depthSize: 'small' },
    leaf,
    fc
      .tuple(fc.constantFrom('+' as const, '-' as const, '*' as const, '/' as const), tie('e'), tie('e'))
      .map(([op, a, b]) => bin(op, a, b)),
    tie('e').map((a): Expr => ({ k: 'neg', a })),
    fc
      .tuple(fc.constantFrom('min' as const, 'max' as const), fc.array(tie('e'), { minLength: 1, maxLength: 3 }))
      .map(([fn, args]): Expr => ({ k: 'call', fn, args })),
    fc.tuple(tie('e'), tie('e')).map(([a, b]): Expr => ({ k: 'on', axis: 'y', path: { id: 'leg', names: ['1'] }, mark: 'inner', a, b })),
  ),
})).e;
law(
  'an expression written out reads back as itself',
  fc.tuple(tree, fc.constantFrom('mm' as const, 'in' as const)),
  ([e, unit]) => {
    const text = exprText(e, unit);
    const r = parseExpr(text, unit);
    if (!r.ok) throw new Error(`${text}: ${r.problem}`);
    expect(close(r.expr, e)).toEqual(e);
  },
  { runs: 1000 },
);

/** The first tree with the literals of the second wherever they differ by less than the grid. */
function close(a: unknown, b: unknown): unknown {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= 1e-6 ? b : a;
  if (Array.isArray(a)) return a.map((x, i) => close(x, (b as unknown[] | undefined)?.[i]));
  if (a === null || typeof a !== 'object') return a;
  return Object.fromEntries(Object.entries(a).map(([k, v]) => [k, close(v, (b as Record<string, unknown> | undefined)?.[k])]));
}
