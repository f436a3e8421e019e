/** Square-cut features and flat contacts in the meeting frame: what housings, grooves, tongues and slots are made of. */
import type { Box } from '../geom/box.ts';
import { type Frame, HOME, outDir } from '../geom/frame.ts';
import { rectangle } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, axisIndex, axisVec, dot, scale } from '../geom/vec3.ts';
import { FACES, type Face, faceSide, isFace } from '../model/ids.ts';
import type { FaceRef, Feature, FeatureOp } from '../model/record.ts';
import type { Contact, FitClass, Hold, Side } from './family.ts';
import type { Meeting, MeetSide, Polygon } from './meeting.ts';

/** How far an added piece is rooted inside its own stock, mm: with less, a piece set on a trimmed shoulder can fall off. */
export const ROOT = 1;

/** A side of a box by the way it looks. */
export type Looks = 'x-' | 'x+' | 'y-' | 'y+' | 'z-' | 'z+';
const REFS: Readonly<Record<Looks, FaceRef>> = {
  'y-': { of: 'side', corner: 0 },
  'x+': { of: 'side', corner: 1 },
  'y+': { of: 'side', corner: 2 },
  'x-': { of: 'side', corner: 3 },
  'z-': { of: 'from' },
  'z+': { of: 'to' },
};
export const looking = (axis: Axis, sign: 1 | -1): Looks => `${axis}${sign > 0 ? '+' : '-'}`;
/** A box given by its corners; either order of the two numbers on an axis. */
export const boxOf = (x0: number, x1: number, y0: number, y1: number, z0: number, z1: number): Box => ({
  min: [Math.min(x0, x1), Math.min(y0, y1), Math.min(z0, z1)],
  max: [Math.max(x0, x1), Math.max(y0, y1), Math.max(z0, z1)],
});

/** An axis-parallel box in the meeting frame as a feature; `faces` names the sides that matter. */
export function block(name: string, op: FeatureOp, box: Box, faces: Readonly<Partial<Record<Looks, string>>>): Feature {
  const named: Record<string, FaceRef> = {};
  for (const [looks, word] of Object.entries(faces)) named[word] = REFS[looks as Looks];
  return {
    name,
    op,
    solid: { kind: 'prism', profile: [rectangle(box.min[0], box.min[1], box.max[0], box.max[1])], from: box.min[2], to: box.max[2] },
    at: HOME,
    faces: named,
    why: 'joint',
  };
}

/** The direction in which a face of the part looks, in the meeting frame. */
function faceDir(side: MeetSide, face: Face): Vec3 {
  const { axis, high } = faceSide(face);
  return scale(axis === 0 ? side.frame.x : axis === 1 ? side.frame.y : side.frame.z, high ? 1 : -1);
}
/** The compass name of the part's own face that looks most nearly along `dir` (meeting frame). */
export function faceToward(side: MeetSide, dir: Vec3): Face {
  const along = [dot(side.frame.x, dir), dot(side.frame.y, dir), dot(side.frame.z, dir)];
  let best: Face = 'left';
  let most = -Infinity;
  FACES.forEach((f, i) => {
    const d = (i % 2 === 0 ? -1 : 1) * (along[i >> 1] ?? 0);
    if (d > most + 1e-9) [best, most] = [f, d];
  });
  return best;
}
/** Which way along `axis` of the meeting a named face or mark of the part looks; null when it looks along another axis. */
export function signAlong(side: MeetSide, word: string, axis: Axis): 1 | -1 | null {
  const dir = isFace(word) ? faceDir(side, word) : side.marks[word]?.normal;
  const d = dir ? dir[axisIndex(axis)] : 0;
  return Math.abs(d) > 0.99 ? (d > 0 ? 1 : -1) : null;
}
/** +1 when the part's own compass axis that lies along `axis` runs with it, -1 against it: what makes a rule for a tie the same in a mirrored copy. */
export function ownSense(side: MeetSide, axis: Axis): 1 | -1 {
  const i = axisIndex(axis);
  const all = [side.frame.x[i], side.frame.y[i], side.frame.z[i]];
  return all.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0) >= 0 ? 1 : -1;
}

/** The one part in a role; throws when the meeting lacks it, which is our fault. */
export function sideIn(m: Meeting, role: string): MeetSide {
  const s = m.sides[role]?.[0];
  if (!s) throw new Error(`the meeting has no part in the role "${role}", only ${Object.keys(m.sides).join(', ')}`);
  return s;
}
/** The span that two boxes share along an axis, low and high; empty when high is not above low. */
export function sharedSpan(a: Box, b: Box, axis: Axis): readonly [number, number] {
  const i = axisIndex(axis);
  return [Math.max(a.min[i], b.min[i]), Math.min(a.max[i], b.max[i])];
}
export const alongGrain = (side: MeetSide, dir: Vec3): boolean => Math.abs(dot(side.grain, dir)) > 0.99;
/** Do the parts stand square to each other, so that boxes in the meeting frame are the wood itself? */
export const isSquare = (m: Meeting): boolean =>
  Math.abs(m.angle.rake) < 1e-6 && Math.abs(m.angle.splay) < 1e-6 && Object.values(m.sides).every((all) => all.every((s) => s.square));

/** Which sort of grain meets at a face with this normal: end grain on either side is 'end'. */
export function glueAcross(normal: Vec3, a: Vec3, b: Vec3): 'long' | 'end' {
  return Math.abs(dot(normal, a)) > 0.7 || Math.abs(dot(normal, b)) > 0.7 ? 'end' : 'long';
}

export type FaceName = { readonly role: string; readonly index?: number; readonly feature: string; readonly face: string };
export type FlatPatch = { readonly frame: Frame; readonly patch: Polygon };
/**
 * A rectangle in a plane of the meeting frame, between the two low-high spans of the other two axes; the plane's normal looks
 * along `looks`, out of the first side's wood.
 */
export function flatAt(looks: Looks, at: number, first: readonly [number, number], second: readonly [number, number]): FlatPatch {
  const axis = looks[0] as Axis;
  const sign = looks[1] === '+' ? 1 : -1;
  const [u, v]: readonly [Axis, Axis] = axis === 'x' ? ['y', 'z'] : axis === 'y' ? ['x', 'z'] : ['x', 'y'];
  const patch: Vec2[] = [
    [first[0], second[0]],
    [first[1], second[0]],
    [first[1], second[1]],
    [first[0], second[1]],
  ];
  return { frame: { o: scale(axisVec(axis), at), x: axisVec(u), y: axisVec(v), z: axisVec(axis, sign) }, patch };
}
export type ContactSpec = {
  readonly name: string;
  readonly a: FaceName;
  readonly b: FaceName;
  readonly on: FlatPatch;
  readonly fit: FitClass;
  readonly meant?: number;
  /** How far apart the two really lie, where a part as built is not as drawn; `meant` where it is. */
  readonly apart?: number;
  readonly hold: Hold;
  readonly glue: Contact['glue'];
  /** Grain of the first side: a glued contact counts its length across it. */
  readonly grain?: Vec3;
  readonly travel?: Contact['travel'];
};
/** A contact of two flat faces: the first looks along the patch frame's z, the second against it, `apart` farther on. */
export function flatContact(s: ContactSpec): Contact {
  const meant = s.meant ?? 0;
  const apart = s.apart ?? meant;
  const off = dot(s.on.frame.o, s.on.frame.z);
  const far: Frame = { ...s.on.frame, o: outPointZ(s.on.frame, apart) };
  const side = (n: FaceName, frame: Frame, sign: 1 | -1, at: number): Side => ({
    ...n,
    surface: { plane: { normal: scale(frame.z, sign), off: sign * at }, patch: s.on.patch, patchFrame: frame },
  });
  return {
    name: s.name,
    between: [side(s.a, s.on.frame, 1, off), side(s.b, far, -1, off + apart)],
    fit: s.fit,
    meant,
    hold: s.hold,
    glue: s.glue,
    ...(s.hold === 'glued' && s.grain ? { gluedLength: acrossGrain(s.on, s.grain) } : {}),
    ...(s.travel ? { travel: s.travel } : {}),
  };
}
const outPointZ = (f: Frame, z: number): Vec3 => {
  const d = outDir(f, [0, 0, z]);
  return [f.o[0] + d[0], f.o[1] + d[1], f.o[2] + d[2]];
};
/** How long the patch is across a grain that lies in it; its longer side when the grain stands on it. */
function acrossGrain(on: FlatPatch, grain: Vec3): number {
  const span = (i: 0 | 1): number => Math.max(...on.patch.map((p) => p[i])) - Math.min(...on.patch.map((p) => p[i]));
  if (Math.abs(dot(grain, on.frame.z)) > 0.7) return Math.max(span(0), span(1));
  return Math.abs(dot(grain, on.frame.x)) > 0.7 ? span(1) : span(0);
}
