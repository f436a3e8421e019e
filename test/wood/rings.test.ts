import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcsInside, guessedPith, ringAngle, ringArcs } from '../../src/wood/rings.ts';
import { law } from '../support/law.ts';

// On a flat-sawn face at depth 40 mm over the pith, rings 3 mm apart show at x = √((3n)² − 40²): 12.806, 20.616, … by Pythagoras.
test('rings meet a flat-sawn face where Pythagoras says', () => {
  const arcs = ringArcs(100, 25, [50, -40], 3);
  const out = [14, 15, 16, 17, 18].map((n) => {
    const mine = arcs.filter((a) => a.r === 3 * n);
    expect(mine.length).toBe(1);
    return 3 * n * Math.cos(mine[0]?.from ?? 0);
  });
  [12.806, 20.616, 26.533, 31.639, 36.277].forEach((x, i) => expect(out[i]).toBeCloseTo(x, 3));
});

test('a ring wholly inside is a whole turn, a ring wholly outside is none', () => {
  expect(arcsInside(100, 100, [50, 50], 20)).toEqual([{ r: 20, from: 0, to: 2 * Math.PI }]);
  expect(arcsInside(100, 100, [50, 50], 80)).toEqual([]);
});

law(
  'the arcs of a ring are as long as the share of its circle that lies in the section',
  fc.record({
    w: fc.integer({ min: 20, max: 300 }),
    t: fc.integer({ min: 10, max: 90 }),
    x: fc.integer({ min: -100, max: 300 }),
    y: fc.integer({ min: -150, max: 150 }),
    r: fc.integer({ min: 5, max: 300 }),
  }),
  ({ w, t, x, y, r }) => {
    const found = arcsInside(w, t, [x, y], r).reduce((s, a) => s + a.to - a.from, 0);
    const n = 20_000;
    let hits = 0;
    for (let i = 0; i < n; i++) {
      const a = ((i + 0.5) / n) * 2 * Math.PI;
      const [px, py] = [x + r * Math.cos(a), y + r * Math.sin(a)];
      if (px > 0 && px < w && py > 0 && py < t) hits++;
    }
    expect(Math.abs(found / (2 * Math.PI) - hits / n)).toBeLessThan(10 / n);
  },
);

test('the guess for a board says how it was sawn', () => {
  const deg = (a: number): number => (a * 180) / Math.PI;
  expect(deg(ringAngle(150, 25, guessedPith(150, 25, 'flat')))).toBe(0);
  expect(deg(ringAngle(150, 25, guessedPith(150, 25, 'quarter')))).toBeCloseTo(90, 6);
  expect(deg(ringAngle(150, 25, guessedPith(150, 25, 'rift')))).toBeGreaterThan(30);
  expect(deg(ringAngle(150, 25, guessedPith(150, 25, 'rift')))).toBeLessThan(70);
});
