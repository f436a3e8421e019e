import type { Operation, Place } from '../family.ts';
import { ground, isRabbeted, layOut } from './lay.ts';
import type { GlazingBar } from './params.ts';

const ROUTER = 'Unplug it to change the bit; slim bars are worked on the edge of a wide board and sawn off last; eye and ear protection.';

export function bench(p: Place<GlazingBar>, s: GlazingBar, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const l = layOut(g, s);
  const shape: Operation[] = (['over', 'under'] as const).flatMap((role) => [
    ...(isRabbeted(s)
      ? [
          {
            role,
            words: `Rabbet both sides from behind, {mm:${s.rabbet_wide}} wide and {mm:${s.rabbet_deep}} deep.`,
            tool: hand ? 'filletster or rebate plane' : 'router table',
            caution: hand ? 'Hold the bar in a sticking board, not in the hand.' : ROUTER,
          },
        ]
      : []),
    ...(l.size > 0
      ? [
          {
            role,
            words: `Mould both front arrises over {mm:${l.size}}: ${s.moulding === 'chamfer' ? 'a chamfer' : 'a quarter round'}.`,
            tool: hand ? 'plane or scratch stock' : 'router table',
            caution: hand ? 'Hold the bar in a sticking board, not in the hand.' : ROUTER,
          },
        ]
      : []),
  ]);
  return [
    ...shape,
    {
      role: 'over',
      words: `Mark the crossing from the under bar; from behind cut the notch for it down to {mm:${l.lap}} below the face.`,
      tool: 'fine saw and chisel',
      caution: 'Clamp the bar on a flat board; both hands behind the edge.',
    },
    {
      role: 'under',
      words: `From the front cut the notch for the over bar, {mm:${l.lap}} deep${l.size > 0 ? ', its sides scribed to the moulding: a mitre of 45 degrees on each arris' : ''}.`,
      tool: l.size > 0 ? 'fine saw, mitre template and chisel' : 'fine saw and chisel',
      caution: 'Clamp the bar on a flat board; both hands behind the edge.',
    },
    { role: 'over', words: 'Try once; bars this slim are spoiled by trying often.', tool: 'none' },
  ];
}
