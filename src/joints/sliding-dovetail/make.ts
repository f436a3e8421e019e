import type { Feature } from '../../model/record.ts';
import { ROOT, faceToward } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR } from '../features.ts';
import type { MeetSide } from '../meeting.ts';
import { loft } from '../slant.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Lay, ground, lay, outline } from './lay.ts';
import type { SlidingDovetail } from './params.ts';

export function make(p: Place<SlidingDovetail>, s: SlidingDovetail): Made {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) throw new Error(`no sliding dovetail can be laid for ${JSON.stringify(s)}: propose refuses this`);
  const ways = s.taper > 1e-6 || !l.through ? [l.sign] : ([l.sign, -l.sign] as const);
  return {
    features: { enter: [tail(g, l, s)], into: [socket(g, l, s)] },
    extras: [],
    contacts: contacts(g, l, s),
    frees: ways.map((way) => ({ moves: ['enter'], along: [0, way, 0] as const })),
    holds: s.hold === 'dry' ? 'dry' : 'glue',
  };
}
/** Names of the four upright sides by the part's own faces, in the order of `outline`. */
const sidesOf = (side: MeetSide, word: string, tip: string): (string | null)[] => {
  const [low, high] = [faceToward(side, [-1, 0, 0]), faceToward(side, [1, 0, 0])];
  return [null, null, `${word} ${high}`, tip, `${word} ${low}`, null];
};
const endsOf = (side: MeetSide, word: string): [string, string] => [
  `${word} ${faceToward(side, [0, -1, 0])}`,
  `${word} ${faceToward(side, [0, 1, 0])}`,
];
const ordered = (a: number, b: number): readonly [number, number] => (a < b ? [a, b] : [b, a]);

/** The length that the board grows by, rooted in it under the neck. */
function tail(g: Ground, l: Lay, s: SlidingDovetail): Feature {
  const [low, high] = ordered(l.first, l.last);
  const at = (y: number) => ({ y, outline: outline(l, y, -ROOT, 0, s.depth) });
  return loft('tail', 'add', [at(low), at(high)], sidesOf(g.enter, 'flank', 'tip'), endsOf(g.enter, 'end'));
}
/** Measured from the board's own face, and open at its edge: the tail comes in there. */
function socket(g: Ground, l: Lay, s: SlidingDovetail): Feature {
  const out = l.mouth + l.sign * CLEAR;
  const [low, high] = ordered(l.through ? l.first - l.sign * CLEAR : l.first, out);
  const at = (y: number) => ({ y, outline: outline(l, y, g.gap - CLEAR, g.gap, s.depth) });
  return loft('socket', 'remove', [at(low), at(high)], sidesOf(g.into, 'wall', 'bottom'), endsOf(g.into, 'end'));
}
