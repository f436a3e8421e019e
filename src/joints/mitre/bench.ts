import type { Operation, Place } from '../family.ts';
import { alongMitre, splineAt } from './lay.ts';
import { drawn, sawSettings } from './make.ts';
import type { Mitre } from './params.ts';

const SAW =
  'Guard and riving knife in place; clamp the work to the fence; hands well clear of the cut, and away until the blade stands still. Follow the saw’s manual.';
const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';
const CHISEL = 'Clamp the work; both hands behind the edge.';

export function bench(p: Place<Mitre>, s: Mitre, hand: boolean): readonly Operation[] {
  const c = drawn(p);
  const cut = ([c.first, c.second] as const).flatMap((a): Operation[] => {
    const set = sawSettings(c, a);
    const [gauge, blade] = [Math.round(set.gauge * 100) / 100, Math.round(set.blade * 100) / 100];
    const how =
      blade < 0.01
        ? `${gauge} degrees from square`
        : gauge < 0.01
          ? `the blade leaning ${blade} degrees`
          : `${gauge} degrees from square and the blade leaning ${blade} degrees`;
    const saw: Operation = {
      role: a.role,
      words: `Saw the mitre with the part flat on the table, ${how}, leaving the long point on the outer face.`,
      tool: hand ? 'mitre box and saw' : 'mitre saw',
      ...(hand ? {} : { caution: SAW }),
    };
    return hand
      ? [saw, { role: a.role, words: 'Shoot the mitre until it closes without light.', tool: 'plane and mitre shooting board' }]
      : [saw];
  });
  const glue: Operation = {
    role: 'first',
    words:
      s.hold === 'glued'
        ? 'Size the end grain with thin glue, let it draw in, then glue and clamp all corners of the frame together, checking for square.'
        : 'Try the corner dry against a square.',
    tool: s.hold === 'glued' ? 'mitre clamps or a band clamp' : 'square',
  };
  return s.form === 'splined'
    ? [...cut, ...splineWork(p, s, hand), glue]
    : s.form === 'keyed'
      ? [...cut, glue, ...keyWork(s, hand)]
      : [...cut, glue];
}
function splineWork(p: Place<Mitre>, s: Mitre, hand: boolean): Operation[] {
  const c = drawn(p);
  const where = alongMitre(c)
    ? 'along the middle of the mitre, from the outer corner to the inner'
    : `across the mitre, its middle {mm:${splineAt(c)}} from the inner corner`;
  return [
    {
      role: 'first',
      words: `Groove both mitres {mm:${s.thick}} wide and {mm:${s.depth}} deep, ${where}, from the same face of both parts.`,
      tool: hand ? 'mitre saw and chisel' : 'router table and grooving cutter, the part clamped in a cradle',
      caution: hand ? CHISEL : ROUTER,
    },
    {
      role: 'first',
      words: `Make the spline {mm:${s.thick}} thick with its grain across the joint; cut it from the end of a wide board.`,
      tool: 'saw and plane',
    },
  ];
}
const keyWork = (s: Mitre, hand: boolean): Operation[] => [
  {
    role: 'second',
    words: `When the glue is hard, cut ${s.count === 1 ? 'the kerf' : `${s.count} kerfs`} {mm:${s.thick}} wide across the outer corner, {mm:${s.depth}} deep along the mitre.`,
    tool: hand ? 'tenon saw' : 'saw bench with the piece in a cradle',
    ...(hand ? {} : { caution: SAW }),
  },
  {
    role: 'second',
    words: 'Glue in the keys, grain across the corner, and pare them flush towards the wood.',
    tool: 'chisel and block plane',
    caution: CHISEL,
  },
];
