/** Facts for the checks of walls: the mortises, holes and housings of one part, as convex solids in its record frame. */
import type { JointPlace, Part } from '../build/part.ts';
import { roleKey } from '../build/part.ts';
import { type Frame, compose, inDir, outDir, outPoint, seenFrom } from '../geom/frame.ts';
import { loopPoints } from '../geom/loop.ts';
import { type Vec3, add, dot, scale, unit } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import type { Facts } from './check.ts';

/** `goesIn`: unit direction in which it is cut into the part; `normals`: of its flat sides, or of enough chords of a round one. */
export type JointCut = { readonly place: JointPlace; readonly name: string; readonly points: readonly Vec3[]; readonly normals: readonly Vec3[]; readonly goesIn: Vec3 };

/** Cuts that another part stands in with wood all round: what a wall is left beside. Sockets and grooves run out at an edge by design. */
const ENCLOSED = /^(mortise|hole|housing)( \d+)?$/;
const CHORDS = 24;

/** By part; parts that are already cut keep what their record holds and are left out. */
export function jointCuts(facts: Facts): Map<string, JointCut[]> {
  const { parts, places } = facts.built.built;
  const out = new Map<string, JointCut[]>();
  for (const place of places)
    for (const [role, paths] of Object.entries(place.roles))
      paths.forEach((path, i) => {
        const part = parts.get(path);
        if (!part || part.frozen || !place.made) return;
        const cuts = (place.made.features[roleKey(place.family, role, i)] ?? []).filter((f) => f.op === 'remove' && ENCLOSED.test(f.name));
        out.set(path, [...(out.get(path) ?? []), ...cuts.flatMap((f) => cutOf(place, part, f))]);
      });
  return out;
}
function cutOf(place: JointPlace, part: Part, f: Feature): JointCut[] {
  const s = f.solid;
  if (s.kind !== 'prism' || s.profileTo) return [];
  const at: Frame = compose(seenFrom(part.frame, place.meeting.frame), f.at);
  const ring = loopPoints(s.profile[0] ?? [], CHORDS).points;
  const points = ring.flatMap((q): Vec3[] => [outPoint(at, [q[0], q[1], s.from]), outPoint(at, [q[0], q[1], s.to])]);
  const sides = ring.flatMap((p, i): Vec3[] => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return Math.hypot(q[0] - p[0], q[1] - p[1]) < 1e-9 ? [] : [unit(outDir(at, [q[1] - p[1], p[0] - q[0], 0]))];
  });
  return [{ place, name: f.name, points, normals: [...sides, at.z], goesIn: inDir(part.frame, outDir(place.meeting.frame, [0, 0, 1])) }];
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
export const middle = (points: readonly Vec3[]): Vec3 => scale(points.reduce<Vec3>((s, p) => add(s, p), [0, 0, 0]), 1 / Math.max(1, points.length));
function span(points: readonly Vec3[], n: Vec3): [number, number] {
  const all = points.map((p) => dot(n, p));
  return [Math.min(...all), Math.max(...all)];
}
