/** Facts for the checks of walls: the mortises, holes and housings of one part, as convex solids in its record frame. */
import type { Built } from '../build/build.ts';
import type { JointPlace } from '../build/part.ts';
import { roleKey } from '../build/part.ts';
import { type Box, boxAround } from '../geom/box.ts';
import { type Frame, HOME, compose, outDir, outPoint, seenFrom } from '../geom/frame.ts';
import { loopPoints } from '../geom/loop.ts';
import { type Vec3, add, dot, scale, unit } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import { once } from './once.ts';

/** `goesIn`: unit direction in which it is cut into the part; `normals`: of its flat sides, or of enough chords of a round one. */
type CutShape = {
  readonly name: string;
  readonly points: readonly Vec3[];
  readonly box: Box;
  readonly normals: readonly Vec3[];
  readonly goesIn: Vec3;
};
export type JointCut = CutShape & { readonly place: JointPlace };

/** Cuts that another part stands in with wood all round: what a wall is left beside. Sockets and grooves run out at an edge by design. */
const ENCLOSED = /^(mortise|hole|housing)( \d+)?$/;
const CHORDS = 24;

/** By part; parts that are already cut keep what their record holds and are left out. */
export const jointCuts = once(({ built }: Built): ReadonlyMap<string, readonly JointCut[]> => {
  const out = new Map<string, JointCut[]>();
  for (const place of built.places)
    for (const [path, cuts] of cutsOf(place)) {
      if (cuts.length === 0 || !built.parts.has(path) || built.parts.get(path)?.frozen) continue;
      const list = out.get(path);
      if (list) list.push(...cuts);
      else out.set(path, [...cuts]);
    }
  return out;
});
const cutsOf = once((place: JointPlace): readonly (readonly [string, readonly JointCut[]])[] =>
  Object.entries(place.roles).flatMap(([role, paths]) =>
    paths.map(
      (path, i) => [path, (shapesOf(place)[roleKey(place.family, role, i)] ?? []).map((s): JointCut => ({ ...s, place }))] as const,
    ),
  ),
);
/** By the key of `Made.features`; the same for all places that are made alike, which share what went in. */
function shapesOf(place: JointPlace): Readonly<Record<string, readonly CutShape[]>> {
  const before = shapes.get(place.input);
  if (before) return before;
  const out: Record<string, readonly CutShape[]> = {};
  for (const [role, sides] of Object.entries(place.input.meeting.sides))
    sides.forEach((side, i) => {
      const key = roleKey(place.family, role, i);
      const enclosed = (place.made?.features[key] ?? []).filter((f) => f.op === 'remove' && ENCLOSED.test(f.name));
      out[key] = enclosed.flatMap((f) => shapeOf(seenFrom(side.frame, HOME), f));
    });
  shapes.set(place.input, out);
  return out;
}
const shapes = new WeakMap<JointPlace['input'], Readonly<Record<string, readonly CutShape[]>>>();
/** `meeting` is the meeting frame seen from the part's record frame. */
function shapeOf(meeting: Frame, f: Feature): CutShape[] {
  const s = f.solid;
  if (s.kind !== 'prism' || s.profileTo) return [];
  const at: Frame = compose(meeting, f.at);
  const ring = loopPoints(s.profile[0] ?? [], CHORDS).points;
  const points = ring.flatMap((q): Vec3[] => [outPoint(at, [q[0], q[1], s.from]), outPoint(at, [q[0], q[1], s.to])]);
  const sides = ring.flatMap((p, i): Vec3[] => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return Math.hypot(q[0] - p[0], q[1] - p[1]) < 1e-9 ? [] : [unit(outDir(at, [q[1] - p[1], p[0] - q[0], 0]))];
  });
  const box = boxAround(points);
  return box ? [{ name: f.name, points, box, normals: [...sides, at.z], goesIn: outDir(meeting, [0, 0, 1]) }] : [];
}
/** Wood between two cuts, mm, and the direction across it; below 0 they run into each other. A lower bound where they stand cornerwise. */
export function wallBetween(a: JointCut, b: JointCut): { readonly wall: number; readonly across: Vec3; readonly at: Vec3 } {
  let best = { wall: -Infinity, across: [0, 0, 1] as Vec3 };
  for (const n of [...a.normals, ...b.normals]) {
    const [la, ha, lb, hb] = [...span(a.points, n), ...span(b.points, n)];
    const wall = Math.max(lb - ha, la - hb);
    if (wall > best.wall + 1e-9) best = { wall, across: n };
  }
  return { ...best, at: scale(add(middle(a.points), middle(b.points)), 1 / 2) };
}
export const middle = (points: readonly Vec3[]): Vec3 =>
  scale(
    points.reduce<Vec3>((s, p) => add(s, p), [0, 0, 0]),
    1 / Math.max(1, points.length),
  );
function span(points: readonly Vec3[], n: Vec3): [number, number] {
  const all = points.map((p) => dot(n, p));
  return [Math.min(...all), Math.max(...all)];
}
