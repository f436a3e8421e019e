/** Cut lists that a spreadsheet opens without changing, or running, anything. Quoting: RFC 4180. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csv } from '../../src/exports/csv.ts';
import { type CutListRow, cutListCsv } from '../../src/exports/cut-list.ts';
import { cutListOf } from '../../src/piece/files.ts';
import { law } from '../support/law.ts';
import { builtOf, documentOf, fixtureText } from '../support/piece.ts';

/** A reader of RFC 4180 of its own: records of fields, quotes undone. */
function read(text: string): string[][] {
  if (!text.startsWith('\ufeff')) throw new Error('no byte order mark');
  const rows: string[][] = [[]];
  let field = '';
  let quoted = false;
  const end = (): void => {
    rows.at(-1)?.push(field);
    field = '';
  };
  for (let i = 1; i < text.length; i++) {
    const c = text[i] ?? '';
    if (quoted && c === '"' && text[i + 1] === '"') [field, i] = [field + '"', i + 1];
    else if (c === '"') quoted = !quoted;
    else if (quoted || (c !== ',' && c !== '\r' && c !== '\n')) field += c;
    else if (c === ',') end();
    else if (c === '\n') {
      end();
      rows.push([]);
    }
  }
  expect(rows.pop()).toEqual([]);
  return rows;
}
/** What a spreadsheet would take for something to work out. */
const RUNS = /^\s*[=+\-@\uff0b\uff0d\uff1d\uff20]/;
/** What it would turn into a date, a number or a fraction. */
const CHANGES = /^\s*[\d.,/\s-]+$/;

test('plain and awkward cells as RFC 4180 writes them', () => {
  expect(
    csv([
      ['a', 'b c', 1.5],
      ['say "so"', 'one, two', -0],
    ]),
  ).toBe('\ufeffa,b c,1.5\r\n"say ""so""","one, two",0\r\n');
  expect(csv([[' a', 'two\r\nlines']])).toBe('\ufeff" a","two\r\nlines"\r\n');
  expect(() => csv([[Number.NaN]])).toThrow('NaN');
});
test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', ' =1', '\n=1', '=cmd|"/c calc"!A1', '\uff1d1'])('%j cannot run', (cell) => {
  const [[back = ''] = []] = read(csv([[cell]]));
  expect(back).toBe(`'${cell}`);
});
law(
  'whatever stands in a table comes back, and nothing in it runs',
  fc.array(
    fc.array(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('=a', '"', ',', '\r\n', '-', '@x')), { minLength: 2, maxLength: 4 }),
    { minLength: 1, maxLength: 5 },
  ),
  (rows) => {
    const back = read(csv(rows));
    expect(back.map((r) => r.length)).toEqual(rows.map((r) => r.length));
    rows.forEach((row, i) =>
      row.forEach((cell, k) => {
        const there = back[i]?.[k] ?? '';
        expect(there === cell || there === `'${cell}`).toBe(true);
        expect(RUNS.test(there)).toBe(false);
      }),
    );
  },
);

const INCH = 25.4;
const ROW: CutListRow = {
  letter: 'A',
  handedOf: null,
  words: 'leg',
  count: 4,
  wood: 'white_oak',
  finished: { length: 20.5 * INCH, width: 0.75 * INCH, thickness: 0.3 * INCH },
  rough: { length: 21.5 * INCH, width: 1 * INCH, thickness: (3 / 64) * INCH },
};
test('decimals to reckon with in one column, fractions that stay fractions in the next', () => {
  const [head = [], line = []] = read(cutListCsv([ROW], 'in', { system: 'in', denominator: 64 }));
  const of = (name: string): string => line[head.indexOf(name)] ?? 'missing';
  expect(of('finished length (in)')).toBe('20.5');
  expect(of('finished length as read')).toBe('20 1/2 in');
  expect(of('finished width (in)')).toBe('0.75');
  expect(of('finished width as read')).toBe('3/4 in');
  // 0.3 in is 19.2 sixty-fourths: read as 19.
  expect(of('finished thickness as read')).toBe('19/64 in');
  expect(of('rough thickness (in)')).toBe('0.0469');
  expect(of('Wood')).toBe('white oak');
  head.forEach((name, i) => {
    if (name.endsWith('as read')) expect(line[i]).not.toMatch(CHANGES);
    if (name.endsWith('(in)')) expect(line[i]).toMatch(/^\d+(\.\d+)?$/);
  });
});
test('millimetres', () => {
  const [head = [], line = []] = read(cutListCsv([{ ...ROW, handedOf: 'B' }], 'mm', { system: 'mm', decimals: 1 }));
  expect(line[head.indexOf('finished length (mm)')]).toBe('520.7');
  expect(line[head.indexOf('finished length as read')]).toBe('520.7 mm');
  expect(line[head.indexOf('Mirror image of')]).toBe('B');
});
test('names from a hostile document neither run nor break a line', () => {
  const doc = documentOf(fixtureText('hostile-names'));
  const rows = read(cutListOf(doc, builtOf(doc)));
  expect(rows.length).toBeGreaterThan(3);
  expect(new Set(rows.map((r) => r.length)).size).toBe(1);
  for (const cell of rows.flat()) {
    expect(cell).not.toMatch(RUNS);
    // eslint-disable-next-line no-control-regex
    expect(cell).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/);
  }
  expect(rows.flat().some((c) => c.startsWith(`'=HYPERLINK`))).toBe(true);
});
