import { isSoftwood } from '../../wood/woods.ts';
import { bounds } from '../kit/bounds.ts';
import type { Opening, Settings, Trouble } from '../kit/maker.ts';
import type { Values } from '../kit/settings.ts';

export const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'case' },
  wood: { kind: 'wood', words: 'wood of the case', initial: 'oak' },
  thick: { kind: 'length', words: 'thickness of sides, top and bottom', initial: { mm: '20 mm', in: '3/4 in' }, least: 9, most: 60 },
  widest: { kind: 'length', words: 'widest board that is glued up', initial: { mm: '120 mm', in: '5 in' }, least: 40 },
  corners: {
    kind: 'choice',
    words: 'corners',
    initial: 'dovetail',
    options: { dovetail: 'dovetailed through', housing: 'top and bottom housed between the sides' },
  },
  past: {
    kind: 'length',
    words: 'how far the sides run past where top and bottom are housed',
    initial: { mm: '25 mm', in: '1 in' },
    least: 10,
  },
  back: {
    kind: 'choice',
    words: 'back',
    initial: 'panel',
    options: { none: 'open', panel: 'one panel or sheet', boards: 'tongued boards laid level' },
  },
  back_in: {
    kind: 'choice',
    words: 'how the back is let in',
    initial: 'groove',
    options: { groove: 'in grooves, before the case is closed', rabbet: 'in rabbets from behind, pinned' },
  },
  back_wood: { kind: 'wood', words: 'wood or sheet of the back', initial: 'plywood' },
  back_thick: { kind: 'length', words: 'thickness of the back', initial: { mm: '6 mm', in: '1/4 in' }, least: 3, most: 30 },
  back_set: { kind: 'length', words: 'how far the back lies in from the rear edges', initial: { mm: '12 mm', in: '1/2 in' }, least: 5 },
  inside: {
    kind: 'choice',
    words: 'inside',
    initial: 'none',
    options: { none: 'empty', shelves: 'fixed shelves', dividers: 'upright dividers' },
  },
  count: { kind: 'count', words: 'number of shelves or dividers', initial: '2', least: 1, most: 30 },
  inside_thick: { kind: 'length', words: 'thickness of shelves or dividers', initial: { mm: '18 mm', in: '3/4 in' }, least: 6, most: 60 },
  stop: { kind: 'length', words: 'how far housings stop short of the front', initial: { mm: '10 mm', in: '3/8 in' }, least: 3, most: 40 },
} as const satisfies Settings;
export type CaseSettings = Values<typeof settings> & { readonly solid: boolean };

/** Least clear room between two shelves or dividers, mm: a hand's breadth is not needed, but a tool must get in; common practice. */
const ROOM = 30;
/** Least depth inside, mm. */
const DEEP = 40;
/** Rise of a tail over its thickness, as the joint proposes it, and the half pin that may not be thinner. */
const half = (s: CaseSettings): number => s.thick.mm / (isSoftwood(s.wood) ? 6 : 8) + 3;

/** What the space and the settings do not allow together. */
export function checkCase(space: Opening, s: CaseSettings): Trouble[] {
  const { add, all, most, least } = bounds(space.units, settings);
  const housed = s.corners === 'housing';
  most('thick', 'the sides would fill the space', Math.min(space.width, space.height) / 6, s.thick.mm);
  if (housed) most('past', 'top and bottom would meet', (space.height - 2 * s.thick.mm - ROOM) / 2, s.past.mm);
  if (s.back !== 'none') {
    most('back_thick', 'the groove of the back would weaken the case', s.thick.mm, s.back_thick.mm);
    const rabbeted = s.back_in === 'rabbet';
    if (rabbeted && (s.solid || s.back === 'boards'))
      add({ setting: 'back_in', cannot: 'a back of solid wood moves: it lies in grooves', limit: 0, asked: 0, nearest: 'groove' });
    least(
      'back_set',
      housed ? 'the groove needs wood behind it' : 'a tail must cover the groove of the back',
      housed || rabbeted ? 5 : half(s),
      s.back_set.mm,
    );
    most('back_set', 'nothing is left inside', space.depth - s.back_thick.mm - DEEP, rabbeted ? 0 : s.back_set.mm);
    if (s.solid) least('thick', 'a back of solid wood needs a groove deep enough to move in', 12, s.thick.mm);
    if (s.solid) least('back_thick', 'a solid back is no thinner than this', s.back === 'boards' ? 9 : 5, s.back_thick.mm);
    if (!s.solid && s.back === 'boards')
      add({ setting: 'back', cannot: 'a sheet is not laid as boards', limit: 0, asked: 0, nearest: 'panel' });
    if (s.solid && s.back === 'panel' && space.height > 600)
      add({
        setting: 'back',
        cannot: 'so high a panel of solid wood moves too much for its grooves',
        limit: 600,
        asked: space.height,
        nearest: 'boards',
      });
  }
  return [...all(), ...checkInside(space, s)];
}
function checkInside(space: Opening, s: CaseSettings): Trouble[] {
  if (s.inside === 'none') return [];
  const past = s.corners === 'housing' ? 2 * s.past.mm : 0;
  const clear = (s.inside === 'shelves' ? space.height - past : space.width) - 2 * s.thick.mm;
  const each = (clear - s.count * s.inside_thick.mm) / (s.count + 1);
  if (each >= ROOM) return [];
  const fits = Math.floor((clear - ROOM) / (ROOM + s.inside_thick.mm));
  return [
    {
      setting: 'count',
      cannot: `between them {mm:${ROOM}} must stay clear`,
      limit: ROOM,
      asked: each,
      ...(fits >= 1 ? { nearest: String(fits) } : {}),
    },
    ...(fits >= 1 ? [] : [{ setting: 'inside', cannot: 'there is no room for one', limit: ROOM, asked: each, nearest: 'none' }]),
  ];
}
