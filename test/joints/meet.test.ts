/** Meetings of boxes worked out by hand, and the laws that make copies equal. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Frame, HOME, compose, mirrored, turned } from '../../src/geom/frame.ts';
import type { Axis, Vec3 } from '../../src/geom/vec3.ts';
import { type MeetPart, meet } from '../../src/joints/meet.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import type { Feature } from '../../src/model/record.ts';
import { law } from '../support/law.ts';

const part = (path: string, grain: Axis, size: Vec3, at: Vec3, more: Partial<MeetPart> = {}): MeetPart => ({
  path,
  wood: 'oak',
  grain,
  stock: { min: [0, 0, 0], max: size },
  frame: { ...HOME, o: at },
  marks: {},
  shapes: [],
  ...more,
});
const half = (name: string, normal: Vec3, off: number, why: Feature['why'] = 'trim'): Feature => ({
  name,
  op: 'shape',
  solid: { kind: 'half', normal, off },
  at: HOME,
  faces: {},
  why,
});
/** The numbers of a meeting that must not depend on where it stands. */
const numbers = (m: Meeting): unknown => ({ ...m, frame: null });

const leg = part('leg', 'z', [45, 45, 713], [0, 0, 0]);
const rail = part('rail', 'x', [1030, 20, 90], [45, 3, 623]);

test('a rail end on a leg: origin in the middle of the end, x across its thickness, y up its width, z into the leg', () => {
  const m = meet({ enter: [rail], into: [leg] });
  expect(m.kind).toBe('end-to-face');
  expect(m.touch).toBe('touch');
  expect(m.gap).toBe(0);
  expect(m.frame).toEqual({ o: [45, 13, 668], x: [0, 1, 0], y: [0, 0, 1], z: [-1, 0, 0] });
  expect([...m.patch].sort()).toEqual([
    [-10, -45],
    [-10, 45],
    [10, -45],
    [10, 45],
  ]);
  expect(m.sides['enter']?.[0]?.end).toBe('left');
  expect(m.sides['into']?.[0]?.end).toBe('right');
  expect(m.sides['into']?.[0]?.box).toEqual({ min: [-13, -668, 0], max: [32, 45, 45] });
  expect(m.sides['into']?.[0]?.grain).toEqual([0, 1, 0]);
  expect(m.face).toEqual({ normal: [0, 0, -1], off: 0 });
  expect(m.shoulder).toEqual({ normal: [0, 0, 1], off: 0 });
});

test('a rail that is short stands open, one that is long bites, one far away meets nothing', () => {
  const short = meet({ enter: [{ ...rail, frame: { ...HOME, o: [46, 3, 623] } }], into: [leg] });
  expect([short.touch, short.gap, short.kind]).toEqual(['gap', 1, 'end-to-face']);
  const long = meet({ enter: [{ ...rail, frame: { ...HOME, o: [43.5, 3, 623] } }], into: [leg] });
  expect([long.touch, long.gap, long.kind]).toEqual(['touch', -1.5, 'end-to-face']);
  expect(long.frame.o).toEqual([43.5, 13, 668]);
  const far = meet({ enter: [{ ...rail, frame: { ...HOME, o: [345, 3, 623] } }], into: [leg] });
  expect([far.kind, far.gap]).toEqual(['none', 300]);
  const aside = meet({ enter: [{ ...rail, frame: { ...HOME, o: [48, 49, 623] } }], into: [leg] });
  expect([aside.kind, aside.gap]).toEqual(['none', 5]);
});

test('two boards of a corner share it: the shoulder stands at the inner face of the other', () => {
  const side = part('side', 'x', [300, 150, 18], [0, 0, 0]);
  const front = part('front', 'z', [18, 150, 120], [282, 0, 0]);
  const m = meet({ tails: [side], pins: [front] });
  expect([m.kind, m.touch, m.gap]).toEqual(['corner', 'share', 0]);
  expect(m.frame).toEqual({ o: [282, 75, 9], x: [0, 0, 1], y: [0, 1, 0], z: [1, 0, 0] });
  expect(m.sides['pins']?.[0]?.end).toBe('left');
  expect(m.sides['tails']?.[0]?.end).toBe('right');
  expect(m.sides['tails']?.[0]?.box.max[2]).toBe(18);
});

test('a half-blind corner, a T and a crossing share as well', () => {
  const side = part('side', 'y', [12, 300, 100], [0, 6, 0]);
  const front = part('front', 'x', [400, 20, 100], [0, 0, 0]);
  const blind = meet({ tails: [side], pins: [front] });
  expect([blind.kind, blind.touch, blind.frame.o[1], blind.sides['tails']?.[0]?.end]).toEqual(['corner', 'share', 20, 'front']);
  const bar = part('bar', 'y', [40, 200, 20], [100, 0, 0]);
  const cross = part('cross', 'x', [300, 40, 20], [0, 80, 0]);
  const m = meet({ over: [bar], under: [cross] });
  expect([m.kind, m.touch]).toEqual(['cross', 'share']);
  expect(m.frame).toEqual({ o: [120, 100, 20], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] });
  const tee = meet({ over: [{ ...bar, stock: { min: [0, 0, 0], max: [40, 110, 20] } }], under: [cross] });
  expect([tee.kind, tee.touch, tee.frame.o[1]]).toEqual(['end-to-edge', 'share', 80]);
});

test('boards edge to edge, a top on a rail, a shelf in a side', () => {
  const a = part('a', 'x', [900, 100, 20], [0, 0, 0]);
  const b = part('b', 'x', [900, 120, 20], [0, 100, 0]);
  const joint = meet({ one: [a], other: [b] });
  expect([joint.kind, joint.sides['one']?.[0]?.end]).toEqual(['edge-to-edge', 'back']);
  expect(joint.frame).toEqual({ o: [450, 100, 10], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] });
  const top = part('top', 'x', [1200, 600, 22], [-85, -40, 713]);
  const under = meet({ under: [top], rail: [rail] });
  expect([under.kind, under.sides['under']?.[0]?.end, under.sides['rail']?.[0]?.end]).toEqual(['edge-to-face', 'bottom', 'top']);
  expect(under.frame.o).toEqual([560, 13, 713]);
  const sideBoard = part('side', 'z', [18, 280, 1800], [0, 0, 0]);
  const shelf = part('shelf', 'x', [764, 276, 18], [18, 0, 500]);
  const m = meet({ shelf: [shelf], side: [sideBoard] });
  expect([m.kind, m.touch]).toEqual(['end-to-face', 'touch']);
  expect(m.frame).toEqual({ o: [18, 138, 509], x: [0, 0, 1], y: [0, 1, 0], z: [-1, 0, 0] });
});

test('the face asked for is taken, also where the part passes right through', () => {
  const post = part('post', 'z', [20, 120, 400], [0, 0, 0]);
  const stretcher = part('stretcher', 'x', [500, 20, 60], [-30, 50, 100]);
  const m = meet({ enter: [stretcher], into: [post] }, 'left');
  expect([m.touch, m.frame.o[0], m.frame.z]).toEqual(['share', 20, [-1, 0, 0]]);
  const other = meet({ enter: [stretcher], into: [post] }, 'right');
  expect([other.touch, other.frame.o[0], other.frame.z]).toEqual(['share', 0, [1, 0, 0]]);
});

test('parts that touch along a line only meet in a point', () => {
  expect(meet({ a: [part('a', 'x', [10, 10, 10], [0, 0, 0])], b: [part('b', 'x', [10, 10, 10], [10, 10, 0])] }).kind).toBe('point');
});

/** The stool's leg: 15 degrees, octagon, trimmed by the seat's underside. In its record frame the axis runs along z. */
function leaningLeg(): { leg: MeetPart; seat: MeetPart } {
  const lean = (15 * Math.PI) / 180;
  const long = 400;
  const [w, t] = [38.1, Math.tan(lean)];
  // The stock ends at the long point: its upper end square to the axis, 19.05·tan 15° above the axis' end.
  const frame = compose(
    { ...HOME, o: [0, 0, 355.6 - 38.1] },
    compose(turned('x', lean), { ...HOME, o: [-w / 2, -w / 2, -long + (w / 2) * t] }),
  );
  const normal: Vec3 = [0, Math.sin(lean), Math.cos(lean)];
  const trim = half('trim', normal, normal[1] * (w / 2) + normal[2] * (long - (w / 2) * t));
  const c = w / (2 + Math.SQRT2);
  const corner = (x: number, y: number, sx: number, sy: number): Feature =>
    half(`octagon ${sx} ${sy}`, [sx * Math.SQRT1_2, sy * Math.SQRT1_2, 0], Math.SQRT1_2 * (sx * x + sy * y) - c * Math.SQRT1_2, 'shape');
  const shapes = [trim, corner(0, 0, -1, -1), corner(w, 0, 1, -1), corner(0, w, -1, 1), corner(w, w, 1, 1)];
  return {
    leg: part('leg', 'z', [w, w, long], [0, 0, 0], { frame, shapes }),
    seat: part('seat', 'x', [279.4, 279.4, 38.1], [-139.7, -139.7, 355.6 - 38.1]),
  };
}

test('a leaning leg under a seat: the shoulder is the trim, the frame follows the leg, the slant is the rake', () => {
  const { leg, seat } = leaningLeg();
  const m = meet({ enter: [leg], into: [seat] });
  expect([m.kind, m.touch, m.gap, m.sides['enter']?.[0]?.end]).toEqual(['end-to-face', 'touch', 0, 'top']);
  expect(m.frame.o[0]).toBeCloseTo(0, 9);
  expect(m.frame.o[1]).toBeCloseTo(0, 9);
  expect(m.frame.o[2]).toBeCloseTo(317.5, 9);
  expect(Math.abs(m.angle.rake)).toBeCloseTo((15 * Math.PI) / 180, 9);
  expect(m.angle.splay).toBeCloseTo(0, 9);
  expect(m.shoulder.normal).toEqual(m.face.normal.map((n) => (n === 0 ? 0 : -n)));
  expect(m.patch).toHaveLength(8);
});

test('a rung into a leaning eight-sided leg: the axis meets the facet, not the stock', () => {
  // Square to an octagon's corner facet: 38.1 across flats, so the flat lies 19.05 from the axis whichever flat it is.
  const c = 38.1 / (2 + Math.SQRT2);
  const flatAt = half('octagon', [Math.SQRT1_2, -Math.SQRT1_2, 0], Math.SQRT1_2 * 38.1 - c * Math.SQRT1_2, 'shape');
  const post = part('leg', 'z', [38.1, 38.1, 400], [-19.05, -19.05, 0], { shapes: [flatAt] });
  const at = (d: number): MeetPart =>
    part('rung', 'x', [200, 22, 22], [0, 0, 0], { frame: compose(turned('z', -Math.PI / 4), { ...HOME, o: [d, -11, 120] }) });
  expect(meet({ enter: [at(19.05)], into: [post] }).touch).toBe('touch');
  expect(meet({ enter: [at(19.05)], into: [post] }).gap).toBeCloseTo(0, 9);
  expect(meet({ enter: [at(18)], into: [post] }).gap).toBeCloseTo(-1.05, 9);
  expect(meet({ enter: [at(20)], into: [post] }).gap).toBeCloseTo(0.95, 9);
});

const scenes: Record<string, Record<string, MeetPart[]>> = {
  'rail on leg': { enter: [{ ...rail, marks: { face: 'front' } }], into: [{ ...leg, marks: { inner: 'right' } }] },
  corner: { tails: [part('side', 'x', [300, 150, 18], [0, 0, 0])], pins: [part('front', 'z', [18, 150, 120], [282, 0, 0])] },
  crossing: { over: [part('bar', 'y', [40, 200, 20], [100, 0, 0])], under: [part('cross', 'x', [300, 40, 20], [0, 80, 0])] },
  leaning: { enter: [leaningLeg().leg], into: [leaningLeg().seat] },
};
const somewhere = fc.double({ min: -2000, max: 2000, noNaN: true });
const place = fc.record({
  at: fc.tuple(somewhere, somewhere, somewhere),
  turns: fc.array(fc.tuple(fc.constantFrom<Axis>('x', 'y', 'z'), fc.constantFrom(37, 90, 120, 180, 270, -15)), { maxLength: 3 }),
  mirror: fc.option(fc.constantFrom<Axis>('x', 'y', 'z'), { nil: null }),
});
for (const [name, roles] of Object.entries(scenes))
  law(
    `meeting of a ${name}: mirrored, turned and moved parts give the same numbers`,
    fc.property(place, ({ at, turns, mirror }) => {
      let world: Frame = { ...HOME, o: at };
      for (const [axis, deg] of turns) world = compose(turned(axis, (deg * Math.PI) / 180), world);
      if (mirror) world = compose(mirrored(mirror, 12.5), world);
      const there = Object.fromEntries(
        Object.entries(roles).map(([r, ps]) => [r, ps.map((p) => ({ ...p, frame: compose(world, p.frame) }))]),
      );
      const [a, b] = [meet(roles), meet(there)];
      close(numbers(b), numbers(a), '');
      close(b.frame, compose(world, a.frame), 'frame');
    }),
  );
function close(a: unknown, b: unknown, where: string): void {
  if (typeof a === 'number' && typeof b === 'number') {
    if (Math.abs(a - b) > 2e-7) throw new Error(`${where}: ${a} is not ${b}`);
  } else if (a && b && typeof a === 'object' && typeof b === 'object') {
    expect(Object.keys(a).sort(), where).toEqual(Object.keys(b).sort());
    for (const k of Object.keys(a)) close((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k], `${where}.${k}`);
  } else if (a !== b) throw new Error(`${where}: ${String(a)} is not ${String(b)}`);
}
