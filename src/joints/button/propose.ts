import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, bite, ground, height, slides, slotDepth } from './lay.ts';
import type { Button } from './params.ts';

const WOODCRAFT = 'woodcraft.com and Woodcraft Magazine 2010, fastening table tops';
const MOVES = 'woodworkingtips.com: up to 1/8 in of movement for each 12 in of width';
/** Usual lengths of wood screws, mm; common practice. */
const LENGTHS = [16, 20, 25, 30, 35, 40, 45, 50, 60] as const;
const INCH = 25.4;
/** Share of a width that a top may move each way from its middle. */
export const SHARE = 1 / 96;
type Proposed = { readonly sizes: Button; readonly because: Readonly<Record<keyof Button, Reason>> };

export function propose(p: Place<Button>, _shop: Cutting): Proposed | Refusal<Button> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the rail does not lie square under the top, with room for a button beside it', limit: 0, asked: 0 };
  const { set } = p;
  const long = g.run[1] - g.run[0];
  const inset = set.inset ?? tenths(Math.min(2 * INCH, long / 5));
  const width = set.width ?? Math.min(30, tenths(long / 6));
  const room = set.room ?? (g.movesAcross > 0 ? Math.max(1, tenths(g.movesAcross * SHARE)) : 0);
  const allow = set.allow ?? Math.max(1, tenths(g.movesAlong * SHARE));
  const body = { lip: 10, tongue: 9, draw: INCH / 32, ...set };
  const count = Math.max(2, Math.ceil((long - 2 * inset) / (20 * INCH) - 1e-6) + 1);
  const out = settle<Button>(set, {
    count: [count, byBook('about 20 in apart, at least two', WOODCRAFT)],
    inset: [inset, byBook('about 2 in from the corners', WOODCRAFT)],
    width: [width, byHabit('about 30 mm')],
    length: [25, byHabit('room for the screw and short grain behind it', [20, 40])],
    tongue: [9, byHabit('about half of the button')],
    reach: [tenths(2 * room + 6), byHabit('6 mm in the slot when the top is at its middle, 3 at its driest')],
    lip: [Math.min(10, tenths(g.railHigh / 4)), byHabit('enough of the rail above the slot that it does not break', [8, 13])],
    room: [
      room,
      g.movesAcross > 0
        ? byBook('1/8 in for each 12 in from the middle of the top', MOVES)
        : byBook('fully home where the top does not move across the rail', WOODCRAFT),
    ],
    allow: [allow, g.movesAlong > 0 ? byBook('1/8 in for each 12 in from the middle of the top', MOVES) : byHabit('a little play')],
    draw: [INCH / 32, byBook('the slot 1/32 in lower than the tongue, so that it draws down', WOODCRAFT, [INCH / 32, INCH / 16])],
    slot: ['mortises', byHabit('a mortise for each button leaves the rail strong')],
    stop: [
      Math.max(0, tenths(Math.min(40, inset - width / 2 - Math.max(allow, g.movesAlong * SHARE + 1)))),
      byHabit('a groove stops before the tenons of the rail, as far as the buttons let it'),
    ],
    grain: ['along', byHabit('the grain runs from the screw to the tongue, or the tongue breaks off')],
    screw: [4, byHabit('about 4 mm')],
    screw_length: [screwLength(g, body.lip + body.tongue), byHabit('as long as two thirds of the top allow')],
  });
  return refuse(g, out.sizes) ?? out;
}
const screwLength = (g: Ground, through: number): number =>
  LENGTHS.reduce<number>((best, l) => (l - through - g.gap <= (g.topThick * 2) / 3 ? l : best), LENGTHS[0]);

function refuse(g: Ground, s: Button): Refusal<Button> | null {
  const long = g.run[1] - g.run[0];
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 100)
    return { cannot: 'the number of buttons is a whole number from 1', limit: 1, asked: s.count, nearest: { count: 2 } };
  const least = Math.min(s.width, s.length, s.tongue, s.reach, s.lip, s.screw, s.screw_length);
  if (!(least > 0) || !(s.room >= 0) || !(s.allow >= 0) || !(s.inset >= 0))
    return {
      cannot: 'sizes of buttons are above nothing, room not below it',
      limit: 0,
      asked: Math.min(least, s.room, s.allow, s.inset),
      nearest: { width: 30, length: 25, tongue: 9, reach: 12, lip: 10, screw: 4, screw_length: 25, room: 1, allow: 1, inset: long / 5 },
    };
  const pitch = s.count > 1 ? (long - 2 * s.inset) / (s.count - 1) : long - 2 * s.inset;
  const taken = s.width + 2 * s.allow;
  if (s.count > 1 && pitch < taken + 1)
    return {
      cannot: 'the slots would run into each other',
      limit: taken + 1,
      asked: pitch,
      nearest: { count: Math.max(1, Math.floor((long - 2 * s.inset) / (taken + 1))) },
    };
  if (s.inset < taken / 2)
    return {
      cannot: 'the first slot would run out at the end of the rail',
      limit: taken / 2,
      asked: s.inset,
      nearest: { inset: taken / 2 + 1 },
    };
  if (!(s.stop >= 0) || (s.slot === 'groove' && slides(g, s) < -1e-6))
    return {
      cannot: 'the groove stops before the outermost button',
      limit: Math.max(0, s.inset - s.width / 2),
      asked: s.stop,
      nearest: { stop: 0 },
    };
  if (slotDepth(s) - s.room > g.railThick - 1)
    return {
      cannot: 'the slots would come through the rail',
      limit: g.railThick - 2 + s.room,
      asked: s.reach,
      nearest: { reach: Math.max(1, g.railThick / 2 - 1) },
    };
  if (s.lip + s.tongue + 2 > g.railHigh)
    return {
      cannot: 'the slot would come out below the rail',
      limit: g.railHigh - s.tongue - 2,
      asked: s.lip,
      nearest: { lip: g.railHigh / 4, tongue: g.railHigh / 4 },
    };
  if (s.draw < 0 || s.draw > s.lip / 2)
    return {
      cannot: 'the screw draws the button up between nothing and half of the lip',
      limit: s.draw < 0 ? 0 : s.lip / 2,
      asked: s.draw,
      nearest: { draw: INCH / 32 },
    };
  if (s.reach <= s.room)
    return { cannot: 'the tongue must reach into the slot', limit: s.room, asked: s.reach, nearest: { reach: 2 * s.room + 6 } };
  return refuseScrew(g, s);
}
function refuseScrew(g: Ground, s: Button): Refusal<Button> | null {
  const deep = bite(g, s);
  const through = height(s) + s.draw + g.gap;
  if (deep < 1)
    return {
      cannot: 'the screw does not reach the top',
      limit: through + 1,
      asked: s.screw_length,
      nearest: { screw_length: screwLength(g, s.lip + s.tongue) },
    };
  if (s.screw > Math.min(s.width, s.length) / 2)
    return { cannot: 'so thick a screw splits the button', limit: Math.min(s.width, s.length) / 2, asked: s.screw, nearest: { screw: 4 } };
  if (deep > g.topThick - 1)
    return {
      cannot: 'the screw would come through the top',
      limit: through + g.topThick - 1,
      asked: s.screw_length,
      nearest: { screw_length: screwLength(g, s.lip + s.tongue) },
    };
  return null;
}
