/** Formulas that shapes report by, against printed tables and numbers worked by hand. */
import { expect, test } from 'vitest';
import { SPRINGBACK_RANGE, formRadius, formRise, springback } from '../../src/shapes/bent.ts';
import { compoundMitre } from '../../src/shapes/end-cut.ts';
import { SHORT, shortGrain } from '../../src/shapes/grain.ts';

const DEG = Math.PI / 180;
// A maker's printed table of compound mitres for a radial saw (manualsdump.com, 315.21212, p. 24): four sides.
test.each([
  [10, 44.56145, 7.05302],
  [45, 35.26439, 30],
])('four sides pitched %d degrees from flat', (pitch, mitre, bevel) => {
  const m = compoundMitre(4, pitch * DEG);
  expect(m.mitre / DEG).toBeCloseTo(mitre, 2);
  expect(m.bevel / DEG).toBeCloseTo(bevel, 2);
});
test('a flat hexagon is mitred at 30 degrees, an upright box of six sides bevelled so', () => {
  expect(compoundMitre(6, 0).mitre / DEG).toBeCloseTo(30, 9);
  expect(compoundMitre(6, Math.PI / 2).bevel / DEG).toBeCloseTo(30, 9);
});
test('four plies spring back a sixteenth: the form is that much rounder (common practice)', () => {
  expect(springback(4)).toBe(1 / 16);
  expect(formRadius(1600, 4)).toBeCloseTo(1500, 9);
  // What is left of the rise built in is what was asked for.
  expect(formRise(45, 4) * (1 - 1 / 16)).toBeCloseTo(45, 9);
  expect(SPRINGBACK_RANGE[0]).toBeLessThan(1);
  expect(SPRINGBACK_RANGE[1]).toBeGreaterThan(1);
});
test('a tongue 20 along the grain that stands 50 out is short grain, one of 60 is not', () => {
  const tongue = (wide: number) => {
    const [a, b] = [100 - wide / 2, 100 + wide / 2];
    const block = (u0: number, u1: number) => [
      [
        [u0, 50],
        [u1, 50],
        [u1, 101],
        [u0, 101],
      ] as [number, number][],
    ];
    return shortGrain({ low: [0, 0], high: [200, 100], cuts: [block(-1, a), block(b, 201)] });
  };
  const found = tongue(20);
  expect(found).toHaveLength(1);
  expect(found[0]?.fibre).toBeCloseTo(20, 6);
  expect(Math.abs((found[0]?.out ?? 0) - 50)).toBeLessThan(1.5);
  expect(SHORT).toBeLessThan(60);
  expect(tongue(60)).toEqual([]);
});
