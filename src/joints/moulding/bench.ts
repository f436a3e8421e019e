import type { Operation, Place } from '../family.ts';
import { bite, ground, layOut } from './lay.ts';
import type { Moulding } from './params.ts';

const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';
const CLAMP = 'Clamp the work; no gloves at the drill.';

export function bench(p: Place<Moulding>, s: Moulding, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const l = layOut(g, s);
  const mitre: Operation[] = l.mitres.length
    ? [
        {
          role: 'moulding',
          words: 'Cut the mitre first, the front piece beside it; leave the other end long until the mitre closes.',
          tool: 'mitre saw and shooting board',
        },
      ]
    : [];
  if (s.hold === 'glued')
    return [...mitre, { role: 'moulding', words: 'Glue it over its whole length, the front mitre first.', tool: 'clamps' }];
  const held: Operation[] =
    s.hold === 'keys'
      ? [
          {
            role: 'moulding',
            words: `Cut a dovetailed groove in its back {mm:${s.key_deep + 0.5}} deep, from the back end to {mm:${s.glued}} behind the mitre.`,
            tool: hand ? 'saw and side rebate plane' : 'router table and dovetail bit',
            caution: hand ? 'Clamp the moulding; both hands behind the edge.' : ROUTER,
          },
          {
            role: 'side',
            words: `Screw ${s.count} keys to the side in one line, {mm:${bite(g, s)}} into it; the moulding slides on from the front under hand pressure.`,
            tool: 'straightedge, drill with a depth stop and screwdriver',
            caution: CLAMP,
          },
        ]
      : [
          {
            role: 'side',
            words: `From inside cut ${s.count} slots {mm:${2 * s.room + s.screw + 0.5}} long along the moulding, {mm:${s.screw + 0.5}} wide, through the side.`,
            tool: hand ? 'drill and file' : 'router and straight bit',
            caution: hand ? CLAMP : ROUTER,
          },
          {
            role: 'moulding',
            words: `Bore pilot holes {mm:${bite(g, s)}} deep, no deeper than the profile allows; set the screws in the middle of their slots, with washers, and a quarter turn back.`,
            tool: 'drill with a depth stop and screwdriver',
            caution: CLAMP,
          },
        ];
  return [
    ...mitre,
    ...held,
    { role: 'moulding', words: `Glue the mitre and the first {mm:${s.glued}} behind it; nothing farther back.`, tool: 'clamps or tape' },
  ];
}
