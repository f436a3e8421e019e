import type { Operation, Place } from '../family.ts';
import { ground, lay, spanIn } from './lay.ts';
import type { Rabbet } from './params.ts';

const CHISEL = 'Clamp the board; both hands behind the edge.';
const ROUTER =
  'Unplug it to change the bit; feed against the turn of the cutter, push blocks, guard in place; eye and ear protection; follow the maker’s manual.';
const SAW =
  'Guard and riving knife where the saw’s manual asks for them; push stick; stand aside of the cut; the strip that comes off must not be caught between blade and fence.';

/** Figures are in braces so that they print in the maker's units. */
export function bench(p: Place<Rabbet>, s: Rabbet, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const l = lay(g, s);
  const wide = spanIn(l.cut, g.bed.axis);
  const size = `{mm:${wide[1] - wide[0]}} wide and {mm:${s.depth + s.spare}} deep`;
  const stopped = l.stopped[0] || l.stopped[1];
  return [
    {
      role: 'into',
      words: `Gauge the rabbet ${size} from the face side and the edge${stopped ? ', and mark where it stops' : ''}.`,
      tool: 'cutting gauge',
    },
    hand
      ? {
          role: 'into',
          words: `Plane the rabbet to both lines${stopped ? ', its stopped ends chopped first' : ''}; across the grain knife the wall before.`,
          tool: 'rebate plane',
          caution: CHISEL,
        }
      : {
          role: 'into',
          words: stopped
            ? 'Rout the rabbet between stops and square its ends with a chisel.'
            : 'Cut the rabbet in two passes, the wall first.',
          tool: stopped ? 'router table' : 'router table or saw bench',
          caution: stopped ? ROUTER : `${ROUTER} ${SAW}`,
        },
    ...(s.inner > 0 || s.outer > 0
      ? [
          {
            role: 'enter',
            words: `Rabbet the board ${[s.outer > 0 ? `{mm:${s.outer}} on its outside` : '', s.inner > 0 ? `{mm:${s.inner}} on its inside` : ''].filter(Boolean).join(' and ')}, so that a tongue of {mm:${g.board - s.inner - s.outer}} is left.`,
            tool: hand ? 'rebate plane' : 'router table',
            caution: hand ? CHISEL : ROUTER,
          },
        ]
      : []),
    s.hold === 'glued'
      ? {
          role: 'enter',
          words: 'Glue bed and wall, clamp square, and pin through the board where it does not show.',
          tool: 'clamps and pins',
          caution: 'Keep to the glue maker’s sheet for pressure, warmth and time.',
        }
      : {
          role: 'enter',
          words: 'Lay the board in without glue and screw or pin it through its face; a solid board at the middle of its width alone.',
          tool: 'screwdriver or hammer',
        },
  ];
}
