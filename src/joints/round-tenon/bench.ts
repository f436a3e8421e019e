import type { Operation, Place } from '../family.ts';
import { layOut } from './lay.ts';
import type { RoundTenon } from './params.ts';

const DRILL = 'Clamp the work; no gloves; no loose sleeves; take the key out of the chuck.';
const LATHE = 'Face shield; rest close to the work and turned by hand once before starting; no gloves; follow the lathe’s manual.';
const KNIFE = 'Both hands behind the edge; work away from yourself or against a breast bib.';

export function bench(p: Place<RoundTenon>, s: RoundTenon, hand: boolean): readonly Operation[] {
  const l = layOut(p.meeting, s);
  const lean = Math.hypot(p.meeting.angle.rake, p.meeting.angle.splay);
  const angle = Math.round((lean * 1800) / Math.PI) / 10;
  const through = s.through === 'yes';
  return [
    {
      role: 'into',
      words: `Bore {mm:${s.diameter}} ${through ? 'right through, backed by scrap' : `{mm:${l.floor - l.g.gap}} deep`}${angle > 0.05 ? `, leaning ${angle}° from square as the bevel shows` : ''}.`,
      tool: hand ? 'brace and bit with a sliding bevel' : 'drill press with a tilted table or a ramp',
      caution: DRILL,
    },
    {
      role: 'enter',
      words: `Bring the end to a round of {mm:${s.diameter}}, {mm:${l.tip}} long${l.back > 0 ? `, its shoulder {mm:${l.back}} short of the stock’s end` : ''}; try it in a hole bored in scrap.`,
      tool: hand ? 'drawknife and tenon cutter' : 'lathe and caliper',
      caution: hand ? KNIFE : LATHE,
    },
    ...(l.wedge
      ? [
          {
            role: 'enter',
            words: 'Saw the kerf two thirds down the tenon, so that it will stand across the grain of the part with the hole.',
            tool: 'fine saw',
          },
        ]
      : []),
    ...(l.wedge
      ? [
          {
            role: 'enter',
            words: 'Drive the parts home, glue and drive the wedge, listen for the change of sound and stop.',
            tool: 'mallet',
          },
        ]
      : []),
    ...(through
      ? [
          {
            role: 'enter',
            words: s.proud > 0 ? `Leave the end {mm:${s.proud}} proud and chamfer it.` : 'Trim the end flush when the glue is dry.',
            tool: 'flush saw and gouge',
            caution: KNIFE,
          },
        ]
      : []),
  ];
}
