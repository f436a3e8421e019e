/** Joints tried on real solids: two boxes in the world, a family, and what a carpenter would measure afterwards. */
import { type Box, cornersOf, volumeOf } from '../../src/geom/box.ts';
import { type Frame, HOME, compose, mirrored, seenFrom } from '../../src/geom/frame.ts';
import { loopPoints } from '../../src/geom/loop.ts';
import { type Axis, type Vec2, type Vec3, quantise } from '../../src/geom/vec3.ts';
import { outDir, outPoint } from '../../src/geom/frame.ts';
import { type Cutting, type Family, type Made, type Place, isRefusal } from '../../src/joints/family.ts';
import { type MeetPart, meet } from '../../src/joints/meet.ts';
import type { Meeting, MeetSide } from '../../src/joints/meeting.ts';
import type { FaceRef, Feature, PartRecord } from '../../src/model/record.ts';
import { cutPart } from '../../src/solids/cut.ts';
import { kernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import type { Solid } from '../../src/solids/solid.ts';
import { placed } from '../../src/solids/shape.ts';

export const SHOP: Cutting = { mortiseWidths: [6, 8, 10, 12], bits: [5, 6, 8, 10, 12], grooveWidths: [4, 6, 8] };

export type Board = {
  readonly box: Box;
  readonly grain: Axis;
  readonly wood?: string;
  readonly marks?: Record<string, string>;
  readonly frame?: Frame;
};
export const board = (
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
  grain: Axis,
  marks: Record<string, string> = {},
): Board => ({
  box: { min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] },
  grain,
  marks,
});
/** The record frame has its origin at the low corner; mirrored boards keep their numbers and get a left-handed frame. */
function partOf(path: string, b: Board): MeetPart {
  const size: Vec3 = [b.box.max[0] - b.box.min[0], b.box.max[1] - b.box.min[1], b.box.max[2] - b.box.min[2]];
  const frame = compose(b.frame ?? HOME, { ...HOME, o: b.box.min });
  return { path, wood: b.wood ?? 'oak', grain: b.grain, stock: { min: [0, 0, 0], max: size }, frame, marks: b.marks ?? {}, shapes: [] };
}
export type Boards = Readonly<Record<string, Board>>;
export const meetingOf = (boards: Boards, end?: string): Meeting =>
  meet(Object.fromEntries(Object.entries(boards).map(([role, b]) => [role, [partOf(role, b)]])), end);
export const mirroredBoards = (boards: Boards, axis: Axis, at = 0): Boards =>
  Object.fromEntries(Object.entries(boards).map(([role, b]) => [role, { ...b, frame: compose(mirrored(axis, at), b.frame ?? HOME) }]));

export type Tried<P> = { readonly place: Place<P>; readonly sizes: P; readonly made: Made };
export function attempt<P>(family: Family<P>, meeting: Meeting, set: Partial<P> = {}): Tried<P> {
  const place: Place<P> = { meeting, siblings: [], set };
  const p = family.propose(place, SHOP);
  if (isRefusal(p)) throw new Error(`refused: ${p.cannot} (${p.asked}, limit ${p.limit})`);
  const sizes = (p as { sizes: P }).sizes;
  return { place, sizes, made: family.make(place, sizes) };
}

/** The record of a part in a role, features moved from the meeting into its own frame. */
export function recordOf(side: MeetSide, features: readonly Feature[]): PartRecord {
  return {
    stock: side.stock,
    grain: 'x',
    wood: side.wood,
    features: features.map((f) => ({ ...f, at: seenFrom(side.frame, f.at) })),
    key: '',
  };
}
type Placed = { readonly name: string; readonly record: PartRecord; readonly frame: Frame };
/** All parts and extras of a place, with their frames seen from the meeting. */
function piecesOf(m: Meeting, made: Made): Placed[] {
  const parts = Object.entries(m.sides).flatMap(([role, sides]) =>
    sides.map((s, i) => ({
      name: role,
      record: recordOf(s, made.features[sides.length > 1 ? `${role}#${i}` : role] ?? []),
      frame: s.frame,
    })),
  );
  return [...parts, ...made.extras.map((e) => ({ name: e.name, record: e.record, frame: e.at }))];
}
function solidOf(p: Placed): Solid {
  const cut = cutPart(p.record, { who: p.name });
  if (!cut.ok) throw new Error(cut.problem);
  return cut.solid;
}
export type Figures = {
  readonly volume: Record<string, number>;
  readonly pieces: Record<string, number>;
  readonly overlap: Record<string, number>;
  readonly union: number;
};
/** Volumes of all pieces, how many lumps each is, the overlap of every two, and the volume of everything together. */
export function figures(m: Meeting, made: Made): Figures {
  return withSolids(() => {
    const all = piecesOf(m, made).map((p) => ({ p, solid: placed(solidOf(p).body, p.frame) }));
    const { Manifold } = kernel();
    const overlap: Record<string, number> = {};
    all.forEach((a, i) => {
      for (const b of all.slice(i + 1)) {
        const both = Manifold.intersection([a.solid, b.solid]);
        overlap[`${a.p.name} / ${b.p.name}`] = both.volume();
        both.delete();
      }
    });
    const together = Manifold.union(all.map((a) => a.solid));
    const union = together.volume();
    together.delete();
    const lumps = (i: number): number => {
      const parts = all[i]?.solid.decompose() ?? [];
      const n = parts.length;
      for (const part of parts) part.delete();
      return n;
    };
    return {
      volume: Object.fromEntries(all.map((a) => [a.p.name, a.solid.volume()])),
      pieces: Object.fromEntries(all.map((a, i) => [a.p.name, lumps(i)])),
      overlap,
      union,
    };
  });
}
/** What the joint took from and gave to a part's stock, net, mm³. */
export const lost = (m: Meeting, f: Figures, role: string): number => {
  const side = m.sides[role]?.[0];
  if (!side) throw new Error(`no ${role}`);
  return volumeOf(side.stock) - (f.volume[role] ?? 0);
};

/** A feature by what it is in space: its corners and its named faces, free of how its profile was written down. */
function inSpace(f: Feature, seer: Frame = HOME): unknown {
  const at = seenFrom(seer, f.at);
  const s = f.solid;
  const point = (p: Vec3): string =>
    outPoint(at, p)
      .map((n) => quantise(Math.round(n * 1e4) / 1e4))
      .join(' ');
  if (s.kind === 'half') return { name: f.name, op: f.op, normal: outDir(at, s.normal).map((n) => quantise(n)), off: quantise(s.off) };
  if (s.kind === 'turned') return { name: f.name, op: f.op, round: s.profile.map((c) => [c.at[0], point([0, 0, c.at[1]])]) };
  const far = s.profileTo ?? s.profile;
  const rings = (loops: typeof s.profile, z: number): string[] =>
    loops.flatMap((loop) => loopPoints(loop, 16).points.map((c) => point([c[0], c[1], z])));
  const corners = [...rings(s.profile, s.from), ...rings(far, s.to)];
  const faceCorners = (ref: FaceRef): string[] => {
    if (ref.of === 'from') return s.profile.flatMap((l) => l.map((c) => point([...c.at, s.from])));
    if (ref.of === 'to') return far.flatMap((l) => l.map((c) => point([...c.at, s.to])));
    const along = (loops: typeof s.profile, z: number): string[] => {
      const loop = ref.of === 'side' ? (loops[ref.loop ?? 0] ?? []) : [];
      const ends = ref.of === 'side' ? [loop[ref.corner], loop[(ref.corner + 1) % loop.length]] : [];
      return ends.flatMap((c) => (c ? [point([...c.at, z])] : []));
    };
    return [...along(s.profile, s.from), ...along(far, s.to)];
  };
  const faces = Object.entries(f.faces)
    .map(([name, ref]) => `${name}: ${faceCorners(ref).sort().join(', ')}`)
    .sort();
  return { name: f.name, op: f.op, corners: corners.sort(), faces };
}
/** A meeting as its mirror image, mirrored in its own frame: parts, marks and planes change hand, own names stay. */
export function mirrorMeeting(m: Meeting, axis: 'x' | 'y'): Meeting {
  const f = mirrored(axis, 0);
  const i = axis === 'x' ? 0 : 1;
  const dir = (v: Vec3): Vec3 => outDir(f, v);
  const plane = (p: { normal: Vec3; off: number }): { normal: Vec3; off: number } => ({ normal: dir(p.normal), off: p.off });
  const box = (b: Box): Box => {
    const [lo, hi] = [[...b.min], [...b.max]] as [number[], number[]];
    [lo[i], hi[i]] = [-(b.max[i] ?? 0), -(b.min[i] ?? 0)];
    return { min: lo as unknown as Vec3, max: hi as unknown as Vec3 };
  };
  const side = (s: MeetSide): MeetSide => ({
    ...s,
    frame: compose(f, s.frame),
    box: box(s.box),
    grain: dir(s.grain),
    marks: Object.fromEntries(Object.entries(s.marks).map(([k, p]) => [k, plane(p)])),
    shapes: s.shapes.map((x) => ({ ...x, at: compose(f, x.at) })),
  });
  return {
    ...m,
    patch: m.patch.map((p): Vec2 => (axis === 'x' ? [-p[0], p[1]] : [p[0], -p[1]])).toReversed(),
    shoulder: plane(m.shoulder),
    face: plane(m.face),
    angle: axis === 'x' ? { ...m.angle, splay: -m.angle.splay } : { ...m.angle, rake: -m.angle.rake },
    sides: Object.fromEntries(Object.entries(m.sides).map(([role, all]) => [role, all.map(side)])),
  };
}
/** Features and extras in space, sorted, so that two makings can be compared; seen through a mirror when `axis` is given. */
export function shapesOf(made: Made, axis?: 'x' | 'y'): unknown {
  const seer = axis ? mirrored(axis, 0) : HOME;
  const sorted = (all: readonly Feature[]): string[] => all.map((f) => JSON.stringify(inSpace(f, seer))).sort();
  return {
    features: Object.fromEntries(Object.entries(made.features).map(([role, all]) => [role, sorted(all)])),
    extras: made.extras.map((e) => `${e.name} ${e.record.grain} ${extraInSpace(e.record, seenFrom(seer, e.at))}`).sort(),
    frees: made.frees.map((x) => JSON.stringify({ ...x, along: outDir(seer, x.along).map((n) => quantise(n)) })).sort(),
    contacts: made.contacts.map((c) => `${c.name} ${c.hold} ${c.fit} ${c.glue} ${quantise(c.gluedLength ?? 0).toFixed(3)}`).sort(),
  };
}
/** The stock's corners and the features of an extra, seen through the mirror. */
function extraInSpace(r: PartRecord, at: Frame): string {
  const stock = cornersOf(r.stock)
    .map((p) =>
      outPoint(at, p)
        .map((n) => quantise(Math.round(n * 1e4) / 1e4))
        .join(' '),
    )
    .sort();
  return JSON.stringify([stock, r.features.map((f) => JSON.stringify(inSpace({ ...f, at: compose(at, f.at) }))).sort()]);
}
