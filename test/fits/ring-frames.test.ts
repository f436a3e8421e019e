/** Frames of three and five legs, and spokes in a post: tenons that meet in one leg at other angles than a right one. */
import { beforeAll, expect, test } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';

beforeAll(() => loadKernel());

const RADIUS = 25;
const THICK = 8;
/**
 * Two tenons of thickness t whose middle lines meet at the angle a on the leg's axis: their near corners lie on the line that halves it, and touch
 * there at (t/2) / tan(a/2) from the axis. Worked with t = 8: 60 deg 6.928, 72 deg 5.506, 90 deg 4, 108 deg 2.906, 120 deg 2.309.
 */
const TOUCH: Readonly<Record<number, number>> = { 60: 6.928, 72: 5.506, 90: 4, 108: 2.906, 120: 2.309 };
const CLEAR = 1;

const leg = { wood: 'ash', grain: 'z', midwidth: '0', width: 2 * RADIUS, middepth: '0', depth: 2 * RADIUS, bottom: '0', height: '400' };
const section = { midheight: '0', height: '60', middepth: '0', depth: '20' };
/** Legs on a circle with rails from each to the next: the rails meet in a leg at the angle of the polygon. */
const ring = (count: number, set: object): object => ({
  dryfit: 1,
  title: 'Ring of legs',
  units: 'mm',
  parts: {
    leg: { ...leg, at: ['0', '250', '0'], copies: [{ ring: 'z', count }], shape: [{ as: 'turned@1' }] },
    rail: {
      wood: 'ash',
      grain: 'x',
      from: { on: 'leg:1', z: '300' },
      to: { on: 'leg:2', z: '300' },
      copies: [{ ring: 'z', count }],
      left: RADIUS,
      right: `rail.run - ${RADIUS}`,
      ...section,
    },
  },
  joints: {
    rails: {
      as: 'mortise_tenon@1',
      places: [
        { enter: 'rail:*', into: 'leg:*' },
        { enter: 'rail:*', into: 'leg:*+1' },
      ],
      set: { thickness: THICK, spare: '0', ...set },
    },
  },
});
/** Rails that stand out from a post like spokes. */
const spokes = (count: number, set: object): object => ({
  dryfit: 1,
  title: 'Post with spokes',
  units: 'mm',
  parts: {
    post: { ...leg, shape: [{ as: 'turned@1' }] },
    rail: { wood: 'ash', grain: 'x', copies: [{ ring: 'z', count }], left: RADIUS, right: '300', ...section, midheight: '200' },
  },
  joints: { rails: { as: 'mortise_tenon@1', places: [{ enter: 'rail:*', into: 'post' }], set: { thickness: THICK, spare: '0', ...set } } },
});
const collide = (doc: object) => findingsOf(doc).filter((f) => f.rule === 'tenons-meet');
const overlaps = (doc: object): readonly string[] => findingsOf(doc).flatMap((f) => (/overlap|collide/.test(f.rule) ? [f.key] : []));

test.each<[string, (set: object) => object, number]>([
  ['three legs', (set) => ring(3, set), 60],
  ['four legs', (set) => ring(4, set), 90],
  ['five legs', (set) => ring(5, set), 108],
  ['three spokes', (set) => spokes(3, set), 120],
  ['five spokes', (set) => spokes(5, set), 72],
])('%s: tenons touch where the angle says, and the longest that clears is named and does clear', (_name, doc, angle) => {
  const touch = RADIUS - (TOUCH[angle] ?? NaN);
  const found = collide(doc({ length: '23.5' }));
  expect(found.length).toBeGreaterThan(0);
  for (const f of found) {
    expect(f.limit).toBeCloseTo(touch, 2);
    expect(f.why).toContain(`at {deg:${angle}}`);
    expect(f.why).toContain(`clears is {mm:${Math.floor((touch - CLEAR) * 10) / 10}}`);
  }
  // Just short of touching nothing is said, and the solids agree; 0.2 beyond it they do share wood.
  const short = doc({ length: String(Math.floor(touch * 100) / 100) });
  expect(collide(short)).toEqual([]);
  expect(overlaps(short)).toEqual([]);
  expect(collide(doc({ length: String(touch + 0.2) })).length).toBeGreaterThan(0);
});
test('what is proposed clears', () => {
  for (const doc of [ring(3, {}), ring(5, {}), spokes(5, {})]) {
    expect(collide(doc)).toEqual([]);
    expect(overlaps(doc)).toEqual([]);
  }
});
