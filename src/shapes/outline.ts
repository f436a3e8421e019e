import { sizeOf } from '../geom/box.ts';
import { type Corner, type Loop, circle } from '../geom/loop.ts';
import type { Axis } from '../geom/vec3.ts';
import { outside, sectionFrame } from './section.ts';
import { type ShapeKind, lengthIn } from './shape.ts';

/** The outline of a seat or top, seen along its thinnest way: round, or with rounded corners. */
export const outline: ShapeKind = {
  id: 'outline',
  version: 1,
  title: 'Outline',
  words: 'Cuts a seat or a top to a round outline, or rounds its corners.',
  params: { round: { kind: 'length', words: 'diameter of the round' }, corners: { kind: 'length', words: 'radius of the corners' } },
  required: [],
  make: ({ stock }, set) => {
    const round = lengthIn(set, 'round');
    const corners = lengthIn(set, 'corners');
    const size = sizeOf(stock);
    const along = (['x', 'y', 'z'] as const)[size.indexOf(Math.min(...size))] as Axis;
    const { half } = sectionFrame(stock, along);
    if (round !== undefined && corners !== undefined) return { ok: false, problem: 'an outline is either round or has rounded corners.' };
    if (round !== undefined)
      return round > 0
        ? { ok: true, features: [outside('outline', stock, along, circle(0, 0, round / 2))] }
        : { ok: false, problem: 'the diameter of an outline must be above 0.' };
    if (corners === undefined) return { ok: false, problem: 'an outline needs "round" or "corners".' };
    const most = Math.min(half[0], half[1]);
    if (!(corners > 0) || corners >= most)
      return { ok: false, problem: `the radius of the corners must be above 0 and below ${most.toFixed(1)} mm, half the narrower side.` };
    return { ok: true, features: [outside('outline', stock, along, rounded(half[0], half[1], corners))] };
  },
};

function rounded(x: number, y: number, r: number): Loop {
  const k = r * (1 - Math.SQRT1_2);
  const corner = (sx: number, sy: number): Corner[] => {
    const a: Corner['at'] = sx * sy > 0 ? [sx * x, sy * (y - r)] : [sx * (x - r), sy * y];
    const b: Corner['at'] = sx * sy > 0 ? [sx * (x - r), sy * y] : [sx * x, sy * (y - r)];
    return [{ at: a, via: [sx * (x - k), sy * (y - k)] }, { at: b }];
  };
  return [...corner(1, 1), ...corner(-1, 1), ...corner(-1, -1), ...corner(1, -1)];
}
