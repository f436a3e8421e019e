/** What joints with a shaped edge share: profiles with rounds swept along an axis, and the face that shows. */
import type { Frame } from '../geom/frame.ts';
import type { Loop } from '../geom/loop.ts';
import { type Axis, axisVec } from '../geom/vec3.ts';
import { FACES, type Face } from '../model/ids.ts';
import type { FaceRef, Feature, FeatureOp } from '../model/record.ts';
import { signAlong } from './blocks.ts';
import type { MeetSide } from './meeting.ts';

export type Run = readonly [number, number];
/** The two axes of the meeting that a profile is drawn in; it is swept along the third. */
export type Drawn = { readonly u: Axis; readonly v: Axis };
const third = ({ u, v }: Drawn): Axis => (['x', 'y', 'z'] as const).find((a) => a !== u && a !== v) ?? 'z';

/** A profile, rounds and all, swept between two coordinates of the meeting; `sides` names the side after each corner. */
export function sweptProfile(
  name: string,
  op: FeatureOp,
  on: Drawn,
  profile: Loop,
  run: Run,
  sides: readonly (string | null)[],
  ends?: readonly [string, string],
): Feature {
  const at: Frame = { o: [0, 0, 0], x: axisVec(on.u), y: axisVec(on.v), z: axisVec(third(on)) };
  const faces: Record<string, FaceRef> = {};
  sides.forEach((word, corner) => {
    if (word) faces[word] = { of: 'side', corner };
  });
  if (ends) [faces[ends[0]], faces[ends[1]]] = [{ of: 'from' }, { of: 'to' }];
  return { name, op, at, why: 'joint', solid: { kind: 'prism', profile: [profile], from: run[0], to: run[1] }, faces };
}

/**
 * The face of a part that shows, among those that look along `axis` of the meeting: the one that its mark 'face' names, else the first of the words
 * given that looks along it, else `otherwise`.
 */
export function showing(side: MeetSide, axis: Axis, first: readonly Face[], otherwise: Face): Face {
  const mark = signAlong(side, 'face', axis);
  const marked = mark === null ? undefined : FACES.find((f) => signAlong(side, f, axis) === mark);
  return marked ?? first.find((f) => signAlong(side, f, axis) !== null) ?? otherwise;
}
/** What a form says of each face where the face that shows is asked for. */
export const SHOWING: Readonly<Record<Face, string>> = {
  top: 'its top shows',
  bottom: 'its bottom shows',
  front: 'its front shows',
  back: 'its back shows',
  left: 'its left face shows',
  right: 'its right face shows',
};
