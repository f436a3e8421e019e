/** Pegs through parts that another joint holds: where they run, what they cut, drawbores, the mirror law. */
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { compose, mirrored, outPoint } from '../../src/geom/frame.ts';
import { HOME } from '../../src/geom/frame.ts';
import type { Axis, Vec3 } from '../../src/geom/vec3.ts';
import { DEFAULT_CUTTING } from '../../src/joints/cutters.ts';
import { families } from '../../src/joints/families.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { type MeetPart, meet } from '../../src/joints/meet.ts';
import { peg } from '../../src/joints/peg/peg.ts';
import type { Peg } from '../../src/joints/peg/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { attempt, shapesOf } from '../support/joint-bench.ts';
import { jsonDocument } from '../support/piece.ts';
import { cutOf } from '../support/sound.ts';

beforeAll(() => loadKernel());
const part = (path: string, grain: Axis, size: Vec3, at: Vec3): MeetPart => ({
  path,
  wood: 'oak',
  grain,
  stock: { min: [0, 0, 0], max: size },
  frame: { ...HOME, o: at },
  marks: {},
  shapes: [],
});
const leg = part('leg', 'z', [45, 45, 713], [0, 0, 0]);
const rail = part('rail', 'x', [400, 20, 90], [45, 3, 500]);
const start = (parts: readonly MeetPart[], set: Partial<Peg> = {}): { at: Vec3; along: Vec3 } => {
  const m = meet({ through: parts });
  const { made } = attempt(peg, m, set);
  const e = made.extras[0];
  if (!e) throw new Error('no peg');
  const d = e.record.stock.max[0];
  return {
    at: outPoint(compose(m.frame, e.at), [d / 2, d / 2, 0]).map((n) => Math.round(n * 1e6) / 1e6 + 0) as unknown as Vec3,
    along: compose(m.frame, e.at).z.map((n) => Math.round(n * 1e6) / 1e6 + 0) as unknown as Vec3,
  };
};

test.each([
  ['leg named first', [leg, rail]],
  ['rail named first', [rail, leg]],
])('it enters from the face nearer to the rail, behind the joint face, in the middle of the width: %s', (_name, parts) => {
  expect(start(parts, { back: 14 })).toEqual({ at: [31, 0, 545], along: [0, 1, 0] });
  expect(start(parts, { back: 14, from: 'far' })).toEqual({ at: [31, 45, 545], along: [0, -1, 0] });
  expect(start(parts, { back: 14, up: 20 })).toEqual({ at: [31, 0, 565], along: [0, 1, 0] });
});
test('where the parts share their wood it stands in the middle of it', () => {
  const side = part('side', 'x', [300, 60, 20], [0, 0, 0]);
  const other = part('other', 'z', [60, 60, 300], [240, 0, -100]);
  expect(start([side, other]).at.slice(0, 2)).toEqual([270, 30]);
});
test('drawbored, the tenon’s hole lies nearer its shoulder and the peg bites by as much', () => {
  for (const parts of [
    [leg, rail],
    [rail, leg],
  ]) {
    const m = meet({ through: parts });
    const { made } = attempt(peg, m, { back: 14, drawbore: 1 });
    const own = parts.indexOf(rail);
    const hole = made.features[`through#${own}`]?.[0];
    const other = made.features[`through#${1 - own}`]?.[0];
    // In the world: nearer the rail's shoulder is towards +x.
    expect(outPoint(compose(m.frame, hole?.at ?? HOME), [0, 0, 0])[0]).toBeCloseTo(32, 9);
    expect(outPoint(compose(m.frame, other?.at ?? HOME), [0, 0, 0])[0]).toBeCloseTo(31, 9);
    expect(made.contacts.map((c) => c.meant).sort()).toEqual([-1, 0]);
  }
});
test('handed copies are bored alike', () => {
  for (const axis of ['x', 'y', 'z'] as const) {
    const image = (p: MeetPart): MeetPart => ({ ...p, frame: compose(mirrored(axis, 30), p.frame) });
    const set = { count: 2, drawbore: 1, up: 5, back: 14 };
    expect(shapesOf(attempt(peg, meet({ through: [leg, rail].map(image) }), set).made)).toEqual(
      shapesOf(attempt(peg, meet({ through: [leg, rail] }), set).made),
    );
  }
});
test.each<[string, Partial<Peg>]>([
  ['as thick as the rail is wide', { diameter: 60 }],
  ['in front of the joint face', { back: 1 }],
  ['none', { count: 0 }],
  ['drawn by more than itself', { drawbore: 9 }],
  ['running into each other', { count: 2, apart: 4 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  const place = { meeting: meet({ through: [leg, rail] }), siblings: [], set };
  const p = peg.propose(place, DEFAULT_CUTTING.mm);
  if (!isRefusal<Peg>(p)) throw new Error('not refused');
  expect(isRefusal(peg.propose({ ...place, set: { ...set, ...p.nearest } }, DEFAULT_CUTTING.mm))).toBe(false);
});
test('one part alone is refused', () => {
  expect(isRefusal(peg.propose({ meeting: meet({ through: [leg] }), siblings: [], set: {} }, DEFAULT_CUTTING.mm))).toBe(true);
});
const speaks = (set: Partial<Peg>): string[] => {
  const t = attempt(peg, meet({ through: [leg, rail] }), set);
  return peg.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Partial<Peg>, string[]]>([
  [{}, []],
  [{ drawbore: 1.5, diameter: 6 }, []],
  [{ drawbore: 2, diameter: 6 }, ['peg drawbore strong']],
  [{ back: 8, diameter: 6 }, ['peg near the face']],
])('rules on %j say %j', (set, rules) => expect(speaks(set)).toEqual(rules));

describe('a mitred corner with both tenons in one leg', () => {
  const doc = jsonDocument({
    dryfit: 1,
    title: 'Corner',
    units: 'mm',
    parts: {
      post: { wood: 'oak', grain: 'z', left: '0', width: '60', front: '0', depth: '60', bottom: '0', height: '400' },
      rail: { wood: 'oak', grain: 'x', left: 'post.right', width: '200', front: '10', depth: '24', bottom: '200', height: '90' },
      side: { wood: 'oak', grain: 'y', front: 'post.back', depth: '200', left: '10', width: '24', bottom: '200', height: '90' },
    },
    joints: {
      corner: {
        as: 'mortise_tenon@1',
        set: { end: 'mitred', thickness: '8', width: '48', length: '40', spare: '3', drop: '0' },
        places: [
          { enter: 'rail', into: 'post' },
          { enter: 'side', into: 'post' },
        ],
      },
      pin: { as: 'peg@1', places: [{ through: ['post', 'rail', 'side'] }], set: { diameter: '6', back: '20' } },
    },
  });
  test('the peg bores every part on its list and is one extra', () => {
    const b = buildPiece(doc, families);
    expect(b.problems).toEqual([]);
    expect([...b.drawn.extras.keys()]).toEqual(['pin/1/peg1']);
    const p = b.drawn.places.find((x) => x.joint === 'pin');
    expect(Object.keys(p?.made?.features ?? {})).toEqual(['through#0', 'through#1', 'through#2']);
    const peg1 = b.drawn.extras.get('pin/1/peg1');
    if (!peg1) throw new Error('no peg');
    const v = withSolids(() => measure(cutOf(peg1.record)).volume);
    expect(Math.abs(v - 9 * Math.PI * 60) / v).toBeLessThan(0.003);
  });
});
