import type { JointPlace } from '../build/part.ts';
import { type Box, boxAround } from '../geom/box.ts';
import { type Frame, compose, outPoint, seenFrom } from '../geom/frame.ts';
import { loopPoints } from '../geom/loop.ts';
import type { Vec3 } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import { QUADS } from '../model/ids.ts';
import {
  type Check,
  type Facts,
  finding,
  jointName,
  lengthText,
  lengthTick,
  partsOf,
  placesByPart,
  reachOf,
  remedy,
  setPatch,
  the,
  whereAt,
} from './check.ts';

/** A groove that runs out at the end of a dovetailed board where no tail covers it: it shows as a hole at the corner. */
export const grooveShows: Check = {
  id: 'groove-shows',
  wave: 1,
  words: 'A groove shows at a dovetailed corner.',
  run: (facts) => {
    const { all } = placesByPart(facts.built.built);
    return facts.built.built.places.flatMap((corner) => {
      const [pins] = corner.roles['pins'] ?? [];
      if (corner.family.id !== 'dovetail' || !corner.made || pins === undefined) return [];
      const covers = tailSpans(corner);
      const shows = (all.get(pins) ?? [])
        .flatMap((g) => (g.roles['into']?.[0] === pins ? grooves(corner, g).map((box) => ({ g, box })) : []))
        .find(({ box }) => !covers.some(([low, high]) => low <= box.min[1] + NEAR && box.max[1] - NEAR <= high));
      return shows ? [describe(facts, corner, shows.g, shows.box)] : [];
    });
  },
};
const NEAR = 1e-3;

/** Where the tails cover the end of the pin board over its whole thickness: low and high along the corner's width, in the meeting frame. */
function tailSpans(corner: JointPlace): (readonly [number, number])[] {
  return (corner.made?.features['pins'] ?? []).flatMap((f) => {
    const ys = [...new Set(points(f).map((p) => Math.round(p[1] * 1e6) / 1e6))].sort((a, b) => a - b);
    // A mitre hides the end of the pin board over its whole width.
    if (f.name.startsWith('mitre')) return [[ys[0] ?? 0, ys.at(-1) ?? 0] as const];
    const [low, high] = [ys[1], ys.at(-2)];
    return f.name.startsWith('tail socket') && low !== undefined && high !== undefined ? [[low, high] as const] : [];
  });
}
/** The grooves of another joint in the pin board that reach this corner, as boxes in its meeting frame. */
function grooves(corner: JointPlace, g: JointPlace): Box[] {
  const [from, to] = spanX(corner);
  const there: Frame = seenFrom(corner.meeting.frame, g.meeting.frame);
  return (g.made?.features['into'] ?? []).flatMap((f) => {
    const box = f.op === 'remove' && f.name.startsWith('groove') ? boxAround(points(f).map((p) => outPoint(there, p))) : null;
    return box && box.max[0] > from + NEAR && box.min[0] < to - NEAR ? [box] : [];
  });
}
/** The tail board's thickness along the pin board. */
function spanX(corner: JointPlace): readonly [number, number] {
  const box = corner.meeting.sides['tails']?.[0]?.box;
  return box ? [box.min[0], box.max[0]] : [0, 0];
}
function points(f: Feature): Vec3[] {
  const s = f.solid;
  if (s.kind !== 'prism') return [];
  return (s.profile[0] ? loopPoints(s.profile[0], 16).points : []).flatMap((q): Vec3[] =>
    [s.from, s.to].map((z) => outPoint(compose(f.at, { o: [0, 0, z], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }), [q[0], q[1], 0])),
  );
}
function describe(facts: Facts, corner: JointPlace, g: JointPlace, box: Box): ReturnType<typeof finding> {
  const [tails, pins] = partsOf(corner);
  const board = partsOf(g)[0] ?? '';
  const side = corner.meeting.sides['tails']?.[0];
  const axis = side
    ? ([0, 1, 2] as const).find((i) => Math.abs([side.frame.x, side.frame.y, side.frame.z][i]?.[1] ?? 0) > 0.99)
    : undefined;
  const wide = box.max[1] - box.min[1];
  const patches =
    axis === undefined
      ? []
      : [
          ...setPatch(facts.doc, corner.joint, 'tail_over', `${board}.${QUADS[axis].mid}`),
          ...setPatch(facts.doc, corner.joint, 'over_size', lengthText(wide + lengthTick(facts.doc.units) * 0.99, facts.doc.units)),
        ];
  return finding({
    rule: 'groove-shows',
    grade: 'note',
    title: 'A groove shows at the corner',
    parts: [tails ?? '', pins ?? '', board],
    joint: jointName(corner),
    where: whereAt(corner.meeting.frame, reachOf(corner)),
    measured: wide,
    limit: 0,
    unit: 'mm',
    basis: 'computed',
    why: `The groove of ${the(facts, board)} runs out at the end of ${the(facts, pins ?? '')} between two tails of ${the(facts, tails ?? '')}: it shows as a hole. Under a tail it is hidden; or stop the groove.`,
    source: { name: 'common practice: a groove is hidden under a tail', basis: 'common practice' },
    remedies: patches.length ? [remedy('Lay a tail over the groove', patches, 'The tails move a little.')] : [],
  });
}
