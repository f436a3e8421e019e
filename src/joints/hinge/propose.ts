import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { withNearest } from '../nearest.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, FLUSH, ground } from './lay.ts';
import type { Hinge } from './params.ts';

type Proposed = { readonly sizes: Hinge; readonly because: Readonly<Record<keyof Hinge, Reason>> };
/** Lengths in which butt hinges are sold, mm (1 to 4 in by halves); common practice. */
const LENGTHS = [25, 38, 51, 64, 76, 89, 102] as const;
/** Wood that stays behind a recess, in from its end and under it, mm. */
export const WALL = 3;
/** Least gap that hinges close to, mm. */
const LEAST_GAP = 0.2;
/** Least wood between two hinges, mm. */
const BETWEEN = 5;
/** Length that a row of hinges takes when each stands its own length from the end. */
const taken = (count: number, l: number): number => (count + 2) * l + (count - 1) * BETWEEN;
/** A door longer than this has a third hinge, mm; common practice. */
export const TALL = 1200;

export const propose = (p: Place<Hinge>, _shop: Cutting): Proposed | Refusal<Hinge> => withNearest(p.set, (set) => ask({ ...p, set }));
function ask(p: Place<Hinge>): Proposed | Refusal<Hinge> {
  const g = ground(p.meeting, p.set.side) ?? null;
  const plain = g ?? ground(p.meeting, undefined);
  if (!plain) return { cannot: 'the door does not lie square beside the part that it hangs on', limit: 0, asked: 0 };
  if (!g)
    return { cannot: `the ${p.set.side ?? ''} of the door is no side for the knuckle`, limit: 0, asked: 0, nearest: { side: plain.side } };
  const long = g.y[1] - g.y[0];
  const count = p.set.count ?? (long > TALL ? 3 : 2);
  const fits = (l: number): boolean => l <= Math.max(25, long / 8) && taken(count, l) <= long;
  const length = p.set.length ?? LENGTHS.reduce<number>((best, l) => (fits(l) ? l : best), Math.min(25, long / 4));
  const thick = p.set.thick ?? Math.min(1.8, g.behind / 3);
  const knuckle = Math.max(5, 2 * thick + g.gap);
  const out = settle<Hinge>(p.set, {
    count: [long > TALL ? 3 : 2, byHabit('two; a third on a door over about 1.2 m', [2, 3])],
    inset: [
      Math.max(0, Math.min(length, (long - count * length - (count - 1) * BETWEEN) / 2)),
      byHabit('a hinge’s own length from the end'),
    ],
    length: [length, byHabit('about an eighth of the door, as hinges are sold', [long / 10, long / 6])],
    wide: [
      tenths(Math.min(25, Math.max(2, Math.min(g.deep - WALL, (g.deep * 3) / 4)))),
      byHabit('three quarters of the thinner part at most'),
    ],
    thick: [thick, byHabit('as the leaf is thick: it lies flush')],
    knuckle: [knuckle, byHabit('thick enough for both leaves and the gap between them')],
    proud: [(p.set.knuckle ?? knuckle) / 2, byHabit('the knuckle stands free of the face', [0, knuckle])],
    side: [g.side, byHabit('where the two faces are flush')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: Ground, s: Hinge): Refusal<Hinge> | null {
  const long = g.y[1] - g.y[0];
  if (g.gap < LEAST_GAP) return { cannot: 'a door needs a gap to turn in', limit: LEAST_GAP, asked: g.gap };
  const off = Math.abs(g.other - g.face);
  if (off > FLUSH) return { cannot: 'the two faces must be flush where the knuckle stands', limit: FLUSH, asked: off };
  const least = Math.min(s.length, s.wide, s.thick, s.knuckle);
  if (!(least > 0.1)) return { cannot: 'a hinge has a length, width and thickness', limit: 0.1, asked: least, nearest: safe(g) };
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 20)
    return { cannot: 'the number of hinges is a whole number from 1', limit: 1, asked: s.count, nearest: { count: 2, ...room(long) } };
  if (!(s.inset >= 0) || s.count * s.length + 2 * s.inset + (s.count - 1) * BETWEEN > long + 1e-9)
    return {
      cannot: 'so many hinges have no room along the door',
      limit: (long - 2 * s.inset) / s.count,
      asked: s.length,
      nearest: { count: 2, ...room(long) },
    };
  if (s.wide > g.deep - 0.5)
    return {
      cannot: 'the leaf would come out at the far face',
      limit: g.deep - 0.5,
      asked: s.wide,
      nearest: { wide: Math.max(0.2, (g.deep * 2) / 3) },
    };
  if (s.thick > g.behind - 1) return { cannot: 'the recess would go through', limit: g.behind - 1, asked: s.thick, nearest: safe(g) };
  if (s.knuckle < 2 * s.thick + g.gap - 1e-9)
    return {
      cannot: 'the knuckle must hold both leaves and the gap',
      limit: 2 * s.thick + g.gap,
      asked: s.knuckle,
      nearest: { knuckle: 2 * s.thick + g.gap, proud: s.thick + g.gap / 2 },
    };
  if (s.proud < s.knuckle / 2 - 1e-9 || s.proud > 100)
    return { cannot: 'the knuckle must stand clear of the faces', limit: s.knuckle / 2, asked: s.proud, nearest: { proud: s.knuckle / 2 } };
  return null;
}
const room = (long: number): Partial<Hinge> => ({ length: Math.min(51, long / 6), inset: long / 8 });
/** Sizes that always go. */
function safe(g: Ground): Partial<Hinge> {
  const thick = Math.min(1.8, g.behind / 3);
  const knuckle = Math.max(5, 2 * thick + g.gap);
  return { count: 2, ...room(g.y[1] - g.y[0]), wide: (g.deep * 2) / 3, thick, knuckle, proud: knuckle / 2 };
}
