import type { Loop } from '../../geom/loop.ts';
import { type Vec2, axisIndex, axisVec } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { block, boxOf, faceToward, looking } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR } from '../features.ts';
import { sweptProfile } from '../profile.ts';
import { contacts } from './contacts.ts';
import { type Bar, type Laid, type Span, arris, depths, ground, isRabbeted, layOut, tongue, zAt } from './lay.ts';
import type { GlazingBar } from './params.ts';

const SIGNS = [-1, 1] as const;
export function make(p: Place<GlazingBar>, s: GlazingBar): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('glazing bars cross square and flush: propose refuses the others');
  const l = layOut(g, s);
  return {
    features: {
      over: [...section(l, g.over), overNotch(l)],
      under: [...section(l, g.under), underNotch(l)],
    },
    extras: [],
    contacts: contacts(l),
    frees: [{ moves: ['over'], along: [0, 0, l.face] }],
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
const faceOn = (b: Bar, sign: 1 | -1): string => faceToward(b.side, axisVec(b.across, sign));
const runOf = (b: Bar): Span => {
  const i = axisIndex(b.along);
  return [b.side.box.min[i] - CLEAR, b.side.box.max[i] + CLEAR];
};
/** Rabbets and moulding, over the whole length of the bar. */
function section(l: Laid, b: Bar): Feature[] {
  const rabbets = isRabbeted(l.s) ? SIGNS.map((sign) => rabbet(l, b, sign)) : [];
  const mouldings = l.size > 0 ? SIGNS.map((sign) => moulding(l, b, sign)) : [];
  return [...rabbets, ...mouldings];
}
function rabbet(l: Laid, b: Bar, sign: 1 | -1): Feature {
  const inner = sign > 0 ? tongue(l, b)[1] : tongue(l, b)[0];
  const outer = (sign > 0 ? b.at[1] : b.at[0]) + sign * CLEAR;
  return block(`rabbet ${faceOn(b, sign)}`, 'remove', flatBox(b, [inner, outer], runOf(b), depths(l, l.lap, l.g.thick + CLEAR)), {
    [looking(b.across, sign > 0 ? -1 : 1)]: 'tongue',
    [looking('z', l.face)]: 'ledge',
  });
}
/** A box from its span across a bar, along it, and in z. */
const flatBox = (b: Bar, across: Span, along: Span, z: Span) =>
  b.along === 'y'
    ? boxOf(across[0], across[1], along[0], along[1], z[0], z[1])
    : boxOf(along[0], along[1], across[0], across[1], z[0], z[1]);
function moulding(l: Laid, b: Bar, sign: 1 | -1): Feature {
  const [from, to] = arris(l, b, sign);
  const out = (sign > 0 ? b.at[1] : b.at[0]) + sign * CLEAR;
  const above = zAt(l, -CLEAR);
  const profile: Loop = [from, to, { at: [out, to.at[1]] }, { at: [out, above] }, { at: [from.at[0], above] }];
  return sweptProfile(`moulding ${faceOn(b, sign)}`, 'remove', { u: b.across, v: 'z' }, profile, runOf(b), [
    'moulding',
    null,
    null,
    null,
    null,
  ]);
}
/** The under bar's tongue goes through the over bar from behind. */
function overNotch(l: Laid): Feature {
  const { over, under } = l.g;
  const box = flatBox(over, [over.at[0] - CLEAR, over.at[1] + CLEAR], tongue(l, under), depths(l, l.lap, l.g.thick + CLEAR));
  return block('notch', 'remove', box, {
    [looking('z', l.face)]: 'bottom',
    'y-': `wall ${faceToward(over.side, [0, -1, 0])}`,
    'y+': `wall ${faceToward(over.side, [0, 1, 0])}`,
  });
}
/** The over bar's front, moulding and all, goes through the under bar: its sides are scribed to that section. */
function underNotch(l: Laid): Feature {
  const { over, under } = l.g;
  const [low, high] = [arris(l, over, -1), arris(l, over, 1)];
  const [above, bottom] = [zAt(l, -CLEAR), zAt(l, l.lap)];
  // Counted round from the low side: down its arris, across the bottom, and up the high one, whose round runs the other way.
  const via = high[0].via;
  const walls: Loop =
    l.size > 0
      ? [
          low[0],
          low[1],
          { at: [over.at[0], bottom] },
          { at: [over.at[1], bottom] },
          { at: high[1].at, ...(via ? { via } : {}) },
          { at: high[0].at },
        ]
      : [{ at: [over.at[0], bottom] }, { at: [over.at[1], bottom] }];
  const first = walls[0]?.at[0] ?? 0;
  const last = walls.at(-1)?.at[0] ?? 0;
  const profile: Loop = [{ at: [first, above] as Vec2 }, ...walls, { at: [last, above] as Vec2 }];
  const [wallLow, wallHigh] = SIGNS.map((sign) => `wall ${faceToward(under.side, [sign, 0, 0])}`) as [string, string];
  const names =
    l.size > 0 ? [null, 'scribed low', wallLow, 'bottom', wallHigh, 'scribed high', null, null] : [wallLow, 'bottom', wallHigh, null];
  return sweptProfile(
    'notch',
    'remove',
    { u: 'x', v: 'z' },
    profile,
    [under.at[0] - CLEAR, under.at[1] + CLEAR],
    names.map((n) => own(l, n)),
  );
}
/** 'low' and 'high' as the under bar's own faces. */
const own = (l: Laid, name: string | null): string | null =>
  name === 'scribed low'
    ? `scribed ${faceToward(l.g.under.side, [-1, 0, 0])}`
    : name === 'scribed high'
      ? `scribed ${faceToward(l.g.under.side, [1, 0, 0])}`
      : name;
