/** Features that several families build alike, in the meeting frame: round holes, pins, wedges and their kerfs. */
import { outside } from '../shapes/section.ts';
import type { Box } from '../geom/box.ts';
import { type Frame, HOME, seenFrom } from '../geom/frame.ts';
import { type Loop, circle, polygon } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, axisVec, cross, scale, unit } from '../geom/vec3.ts';
import { partRecord } from '../model/part-record.ts';
import type { FaceRef, Feature, FeatureOp, PartRecord } from '../model/record.ts';
import { flatContact } from './blocks.ts';
import type { Contact, ExtraPart, Hold, Side } from './family.ts';
import type { Plane, Polygon } from './meeting.ts';

/** How far a cut reaches past the face it starts from, mm, so that no skin is left where two roads to one number differ. */
export const CLEAR = 1;

/** A right-handed frame at `o` with its z along `along`; x is as near to `hint` as it can be. */
export function frameAlong(o: Vec3, along: Vec3, hint: Vec3 = [1, 0, 0]): Frame {
  const z = unit(along);
  const away: Vec3 =
    Math.abs(z[0] * hint[0] + z[1] * hint[1] + z[2] * hint[2]) > 0.99 ? (Math.abs(z[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0]) : hint;
  const y = unit(cross(z, away));
  return { o, x: cross(y, z), y, z };
}
/** A round hole or pin along the z of `at`. */
export const cylinder = (
  name: string,
  op: FeatureOp,
  at: Frame,
  d: number,
  from: number,
  to: number,
  faces: { round?: string; from?: string; to?: string } = {},
): Feature => ({
  name,
  op,
  at,
  why: 'joint',
  solid: { kind: 'prism', profile: [circle(0, 0, d / 2)], from, to },
  faces: {
    ...(faces.round ? { [faces.round]: { of: 'side', corner: 0 } satisfies FaceRef } : {}),
    ...(faces.from ? { [faces.from]: { of: 'from' } satisfies FaceRef } : {}),
    ...(faces.to ? { [faces.to]: { of: 'to' } satisfies FaceRef } : {}),
  },
});
/** Everything beyond a plane of the meeting frame. */
export const beyond = (name: string, op: FeatureOp, plane: Plane, face: string): Feature => ({
  name,
  op,
  at: HOME,
  why: 'joint',
  solid: { kind: 'half', normal: plane.normal, off: plane.off },
  faces: { [face]: { of: 'plane' } },
});
/** A flat outline in the plane of two axes of the meeting frame, swept along the third between two coordinates. `sides` names the side after each corner. */
export function swept(
  name: string,
  op: FeatureOp,
  plane: 'xy' | 'xz' | 'yz',
  outline: Polygon,
  low: number,
  high: number,
  sides: readonly (string | null)[],
  ends?: readonly [string, string],
): Feature {
  // In each case x, y of the solid's frame are the two axes named, and its z the third axis or, to stay right-handed, its opposite.
  const at: Frame =
    plane === 'yz'
      ? { o: [0, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] }
      : plane === 'xy'
        ? HOME
        : { o: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] };
  const [from, to] = plane === 'xz' ? [-high, -low] : [low, high];
  const loop: Loop = polygon(...outline);
  const faces: Record<string, FaceRef> = {};
  sides.forEach((word, corner) => {
    if (word) faces[word] = { of: 'side', corner };
  });
  if (ends) {
    faces[ends[plane === 'xz' ? 1 : 0]] = { of: 'from' };
    faces[ends[plane === 'xz' ? 0 : 1]] = { of: 'to' };
  }
  return { name, op, at, why: 'joint', solid: { kind: 'prism', profile: [loop], from, to }, faces };
}

/** A round pin of its own: the record's z along its grain, its stock the square that it is turned or split from. */
export function pinRecord(wood: string, d: number, length: number): PartRecord {
  const stock: Box = { min: [0, 0, 0], max: [d, d, length] };
  return partRecord(stock, 'z', wood, [outside('turning', stock, 'z', circle(0, 0, d / 2))]);
}
/** A peg that goes in at `start` (on the face of the wood) along `along`. */
export function pin(name: string, words: string, wood: string, d: number, length: number, start: Vec3, along: Vec3): ExtraPart {
  const axis = frameAlong(start, along);
  const corner = { ...axis, o: [0, 1, 2].map((i) => (start[i] ?? 0) - ((axis.x[i] ?? 0) + (axis.y[i] ?? 0)) * (d / 2)) as unknown as Vec3 };
  return { name, words, record: pinRecord(wood, d, length), at: corner, enters: axis.z };
}
/** One side of a round contact. */
export const roundSide = (
  role: string,
  feature: string,
  face: string,
  at: Vec3,
  along: Vec3,
  r: number,
  length: number,
  index?: number,
): Side => ({
  role,
  feature,
  face,
  ...(index === undefined ? {} : { index }),
  surface: { round: { at, along }, r, length },
});

/** A wedge and the kerf that it fills, both in the meeting frame: thin end at `root`, thick end at `tip`, `run` wide. */
export type WedgeSpec = {
  /** Across the kerf: the way it spreads the tenon. */
  readonly spread: 'x' | 'y';
  /** Which way the part's own axis runs along `spread`: its high flank is on that side. */
  readonly sense: 1 | -1;
  /** Its middle along `spread`, and the low and high along the other axis. */
  readonly at: number;
  readonly span: readonly [number, number];
  readonly root: number;
  readonly tip: number;
  /** Width of the saw cut, and of the wedge's thick end. */
  readonly kerf: number;
  readonly thick: number;
};
const flankName = (w: WedgeSpec, sign: 1 | -1): string => (sign === w.sense ? 'flank high' : 'flank low');
export function wedgeKerf(name: string, w: WedgeSpec, past = CLEAR): Feature {
  const grow = ((w.thick - w.kerf) / 2 / (w.tip - w.root)) * past;
  const [k, t] = [w.kerf / 2, w.thick / 2 + grow];
  const outline: Vec2[] = [
    [w.at - k, w.root],
    [w.at + k, w.root],
    [w.at + t, w.tip + past],
    [w.at - t, w.tip + past],
  ];
  return swept(name, 'remove', w.spread === 'x' ? 'xz' : 'yz', outline, w.span[0] - past, w.span[1] + past, [
    'root',
    flankName(w, 1),
    null,
    flankName(w, -1),
  ]);
}
export function wedgeExtra(name: string, words: string, wood: string, w: WedgeSpec, more: readonly Feature[] = []): ExtraPart {
  const across: Axis = w.spread;
  // The record's frame turns with the part's own axis, so that handed copies have equal wedges.
  const edge = w.at - (w.sense * w.thick) / 2;
  const at: Frame = {
    ...HOME,
    o: across === 'x' ? [edge, w.span[0], w.root] : [w.span[0], edge, w.root],
    [across]: axisVec(across, w.sense),
  };
  const run = w.span[1] - w.span[0];
  const long = w.tip - w.root;
  const stock: Box = { min: [0, 0, 0], max: across === 'x' ? [w.thick, run, long] : [run, w.thick, long] };
  // Each flank leans from half the kerf at the thin end to half the thickness at the thick end.
  const rise = (w.thick - w.kerf) / 2 / long;
  const flank = (sign: 1 | -1): Feature => {
    const normal = unit(across === 'x' ? [sign, 0, -rise] : [0, sign, -rise]);
    const p: Vec3 = scale(axisVec(across), w.thick / 2 + (sign * w.kerf) / 2);
    return {
      name: sign > 0 ? 'flank high' : 'flank low',
      op: 'shape',
      at: HOME,
      why: 'shape',
      solid: { kind: 'half', normal, off: normal[0] * p[0] + normal[1] * p[1] },
      faces: { flank: { of: 'plane' } },
    };
  };
  const moved = more.map((f): Feature => ({ ...f, at: seenFrom(at, f.at) }));
  return { name, words, record: partRecord(stock, 'z', wood, [flank(1), flank(-1), ...moved]), at, enters: [0, 0, -1] };
}
/** Both flanks of a wedge against its kerf in the role named. `index` is the wedge's among the extras. */
export function wedgeContacts(w: WedgeSpec, name: string, kerf: string, index: number, role: string, hold: Hold): Contact[] {
  const rise = (w.thick - w.kerf) / 2 / (w.tip - w.root);
  return ([-1, 1] as const).map((sign) => {
    const n: Vec3 = w.spread === 'x' ? [sign, 0, -rise] : [0, sign, -rise];
    const o: Vec3 = w.spread === 'x' ? [w.at + (sign * w.kerf) / 2, w.span[0], w.root] : [w.span[0], w.at + (sign * w.kerf) / 2, w.root];
    const frame = frameAlong(o, n, w.spread === 'x' ? [0, 1, 0] : [1, 0, 0]);
    // The patch's x runs across the tenon, its y along the wedge, whichever way the frame turned out to look.
    const long = (w.tip - w.root) * Math.hypot(1, rise) * (frame.y[2] > 0 ? 1 : -1);
    const run = w.span[1] - w.span[0];
    const word = flankName(w, sign);
    return flatContact({
      name: `${name} ${word}`,
      a: { role: 'extra', index, feature: word, face: 'flank' },
      b: { role, feature: kerf, face: word },
      on: {
        frame,
        patch: [
          [0, 0],
          [run, 0],
          [run, long],
          [0, long],
        ],
      },
      fit: 'press',
      hold,
      glue: 'long',
    });
  });
}
