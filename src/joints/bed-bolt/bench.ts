import type { Operation, Place } from '../family.ts';
import { ground } from './lay.ts';
import type { BedBolt } from './params.ts';

const DRILL = 'Clamp the work; no gloves; eye protection.';
export function bench(p: Place<BedBolt>, s: BedBolt, hand: boolean): readonly Operation[] {
  if (!ground(p.meeting)) return [];
  const stub: Operation[] =
    s.stub > 0
      ? [
          {
            role: 'rail',
            words: `Cut two stub tenons {mm:${s.stub}} long and {mm:${s.stub_width}} wide, and their mortises {mm:${s.stub + 1}} deep; they stay dry.`,
            tool: hand ? 'tenon saw and chisel' : 'table saw and mortiser',
            caution: hand ? 'Clamp the work; both hands behind the chisel.' : 'Guards on; follow the makers’ manuals.',
          },
        ]
      : [];
  return [
    ...stub,
    {
      role: 'post',
      words: `Bore from the outer face: the counterbore {mm:${s.bore}} wide and {mm:${s.sink}} deep first, then {mm:${s.hole}} right through, square to the face.`,
      tool: hand ? 'brace, centre bit and square' : 'drill press',
      caution: DRILL,
    },
    {
      role: 'rail',
      words: `With rail and post clamped together, bore on through the post into the end of the rail, {mm:${s.depth}} deep.`,
      tool: 'drill and long bit',
      caution: `${DRILL} Draw the bit often: it binds in end grain.`,
    },
    {
      role: 'rail',
      words:
        s.nut === 'square'
          ? `Mortise from the ${s.from} face for the nut, {mm:${s.nut_size}} wide, its middle {mm:${s.back}} from the end; leave the wall towards the end clean and square: the nut bears on it.`
          : `Bore from the ${s.from} face for the barrel, {mm:${s.nut_size}} wide, its middle {mm:${s.back}} from the end.`,
      tool: s.nut === 'square' ? 'mortise chisel' : 'drill press and fence',
      caution: DRILL,
    },
    {
      role: 'rail',
      words: 'Mark every rail end and its post with the same number, put nut and bolt in and draw the shoulder up; no glue.',
      tool: 'spanner or bed key',
      caution:
        'A bed carries people: try it under load before it is used and draw the bolts up again after a season. For bunks, cots and guard rails the standards for such beds decide, not this joint.',
    },
  ];
}
