import { type Frame, inDir } from '../../geom/frame.ts';
import { type Vec2, type Vec3, AXES, axisIndex, dot, scale } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, block, boxOf } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { beyond } from '../features.ts';
import type { Plane } from '../meeting.ts';
import { othersOf, sweptAlong } from '../shared-box.ts';
import { contacts } from './contacts.ts';
import { type Arm, type Corner, alongMitre, corner, dirOf, keySpots, onMitre, splineAt } from './lay.ts';
import type { Mitre } from './params.ts';

export function drawn(p: Place<Mitre>): Corner {
  const c = corner(p.meeting);
  if (!c) throw new Error('a mitre needs two parts that share a corner: propose refuses the others');
  return c;
}
export function make(p: Place<Mitre>, s: Mitre): Made {
  const c = drawn(p);
  const extras = s.form === 'splined' ? [spline(c, s)] : s.form === 'keyed' ? keySpots(c, s.count).map((w, i) => key(c, s, w, i)) : [];
  const slots = s.form === 'splined' ? [groove(c, s)] : s.form === 'keyed' ? keySpots(c, s.count).map((w, i) => kerf(c, s, w, i)) : [];
  return {
    features: { first: [cutOff(c, 1), ...slots], second: [cutOff(c, -1), ...slots] },
    extras,
    contacts: contacts(c, s),
    frees: [
      ...(s.form === 'keyed' ? extras.map((e) => ({ moves: [e.name], along: scale(e.enters, -1) })) : []),
      { moves: ['first'], along: dirOf(c, [0, 0, -1]) },
      ...(s.form === 'splined' ? [] : [{ moves: ['first'], along: c.first.run }]),
    ],
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
/** All of a part that lies beyond the mitre: where the parts stand square, by an outline whose corners are whole numbers if theirs are. */
function cutOff(c: Corner, sign: 1 | -1): Feature {
  const w = c.square;
  if (!w) {
    const normal = scale(c.frame.z, sign);
    return beyond('mitre', 'remove', { normal, off: dot(normal, c.frame.o) }, 'mitre');
  }
  const [i, j] = othersOf(w).map(axisIndex) as [0 | 1 | 2, 0 | 1 | 2];
  const inner: Vec2 = [c.inner[i], c.inner[j]];
  const [du, dv] = [c.outer[i] - inner[0], c.outer[j] - inner[1]];
  // Square to the line from corner to corner, to the side that goes.
  const turn = -dv * c.frame.z[i] + du * c.frame.z[j] > 0 ? sign : -sign;
  const at = (along: number, off: number): Vec2 => [inner[0] + du * along - dv * off * turn, inner[1] + dv * along + du * off * turn];
  const arm = sign > 0 ? c.first : c.second;
  const span = [arm.side.box.min[axisIndex(w)], arm.side.box.max[axisIndex(w)]] as const;
  return sweptAlong(w, 'mitre', 'remove', [at(-1, 0), at(2, 0), at(2, 2), at(-1, 2)], span, ['mitre', null, null, null]);
}
type Size = { readonly u: readonly [number, number]; readonly w: readonly [number, number]; readonly n: readonly [number, number] };
const cut = (c: Corner, name: string, z: Size, faces: Readonly<Partial<Record<Looks, string>>>): Feature => ({
  ...block(name, 'remove', boxOf(z.u[0], z.u[1], z.w[0], z.w[1], z.n[0], z.n[1]), faces),
  at: c.frame,
});
/** Where the spline lies: along a frame's mitre in the middle of its thickness, or along the width of a case near the inner corner. */
function splineSize(c: Corner, s: Mitre): Size {
  const mid = (c.span[0] + c.span[1]) / 2;
  const n = [-s.depth, s.depth] as const;
  if (alongMitre(c)) return { u: [0, c.long], w: [mid - s.thick / 2, mid + s.thick / 2], n };
  return { u: [splineAt(c) - s.thick / 2, splineAt(c) + s.thick / 2], w: c.span, n };
}
/** In a frame the groove runs out at the outer corner; a case's runs from edge to edge. */
function groove(c: Corner, s: Mitre): Feature {
  const z = splineSize(c, s);
  const ends: Partial<Record<Looks, string>> = { 'z-': 'bottom first', 'z+': 'bottom second' };
  return alongMitre(c)
    ? cut(c, 'groove', { ...z, u: [0, 2 * c.long] }, { ...ends, 'y-': 'wall low', 'y+': 'wall high' })
    : cut(c, 'groove', z, { ...ends, 'x-': 'wall low', 'x+': 'wall high' });
}
function spline(c: Corner, s: Mitre): ExtraPart {
  const z = splineSize(c, s);
  const at: Frame = { ...c.frame, o: onMitre(c, z.u[0], z.w[0], z.n[0]) };
  const stock = boxOf(0, z.u[1] - z.u[0], 0, z.w[1] - z.w[0], 0, 2 * s.depth);
  const trims = alongMitre(c) ? [trim(c.first, at), trim(c.second, at)] : [];
  return {
    name: 'spline',
    words: 'spline, its grain across the joint',
    record: partRecord(stock, 'z', c.first.side.wood, trims),
    at,
    enters: dirOf(c, [0, 0, -1]),
  };
}
/** Cut flush with a part's outer face. */
function trim(arm: Arm, at: Frame): Feature {
  const plane: Plane = { normal: inDir(at, arm.outer.normal), off: arm.outer.off - dot(arm.outer.normal, at.o) };
  return { ...beyond(`flush with the ${arm.role} part`, 'shape', plane, 'flush'), why: 'shape' };
}
/** A key reaches in from the outer corner; its inner edge is square to the mitre. */
function kerf(c: Corner, s: Mitre, w: number, i: number): Feature {
  const wide = 2 * s.depth * Math.max(c.first.rise, c.second.rise, 1);
  return cut(
    c,
    `kerf ${i + 1}`,
    { u: [c.long - s.depth, c.long + wide], w: [w - s.thick / 2, w + s.thick / 2], n: [-wide, wide] },
    { 'x-': 'bottom', 'y-': 'wall low', 'y+': 'wall high' },
  );
}
function key(c: Corner, s: Mitre, w: number, i: number): ExtraPart {
  const [a, b] = [s.depth * c.first.rise, s.depth * c.second.rise];
  const at: Frame = { ...c.frame, o: onMitre(c, c.long - s.depth, w - s.thick / 2, -a) };
  return {
    name: `key${i + 1}`,
    words: 'key, its grain across the corner',
    record: partRecord(boxOf(0, s.depth, 0, s.thick, 0, a + b), 'z', c.first.side.wood, [trim(c.first, at), trim(c.second, at)]),
    at,
    enters: dirOf(c, [-1, 0, 0]),
  };
}
/**
 * How the saw is set for a part that lies flat on its wider face, degrees: `gauge` from a cut square across the part, `blade` from upright. (A frame
 * takes the gauge alone, a case the blade alone, boards that lean both.)
 */
export function sawSettings(c: Corner, arm: Arm): { readonly gauge: number; readonly blade: number } {
  const { frame, stock } = arm.side;
  const all = AXES.map((k) => ({ dir: frame[k], size: stock.max[axisIndex(k)] - stock.min[axisIndex(k)] }));
  const [thick, wide] = all.filter((x) => Math.abs(dot(x.dir, arm.run)) < 0.5).toSorted((p, q) => p.size - q.size);
  const on = (x: { dir: Vec3 } | undefined): number => Math.abs(dot(x?.dir ?? arm.run, c.frame.z));
  const deg = 180 / Math.PI;
  return { gauge: Math.atan2(on(wide), Math.abs(dot(arm.run, c.frame.z))) * deg, blade: Math.asin(Math.min(1, on(thick))) * deg };
}
