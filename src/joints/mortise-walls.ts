/** Wood that must be left round a mortise, whatever tenon goes into it: at its sides, towards the end of the part, under its bottom. */
import type { Warning } from './family.ts';
import { HABIT } from './reasons.ts';
import { type Ground, type Span, runsAlongGrain } from './tenons.ts';

/** Least wood beside a mortise, and under a blind one, mm: thinner, it splits when the tenon is driven in. */
const WALL = 4;
export const BOTTOM = 3;
/** Play in comparing with a limit, mm, so that 1/3 typed as a decimal passes. */
export const PLAY = 0.05;

type Cures = Warning['cures'];
/** The mortise's mouth: all tenons together. */
export type Mouth = { readonly x: Span; readonly y: Span };
const middle = (s: Span): number => (s[0] + s[1]) / 2;

export function beside(rule: string, g: Ground, m: Mouth, cures: Cures): Warning[] {
  if (!g.into.square) return [];
  const low = m.x[0] - g.into.box.min[0];
  const high = g.into.box.max[0] - m.x[1];
  const [room, at] = high < low ? [high, m.x[1]] : [low, m.x[0]];
  if (room >= WALL - PLAY) return [];
  return [
    {
      rule,
      grade: room <= 0 ? 'stops' : 'trouble',
      title: room <= 0 ? 'The mortise breaks out at the side' : 'Thin wood beside the mortise',
      why:
        room <= 0
          ? `The mortise reaches {mm:${-room}} past the side of the receiving part.`
          : `Only {mm:${room}} is left between the mortise and the side of the receiving part.`,
      measured: Math.max(0, room),
      limit: WALL,
      unit: 'mm',
      source: HABIT,
      at: [at, middle(m.y), g.gap],
      roles: ['into'],
      cures,
    },
  ];
}
/** Short grain between the mortise and the end of its part; `open` ends may be meant (a groove's, a stub's). */
export function nearEnd(rule: string, g: Ground, m: Mouth, least: number, openMeant: boolean, cures: Cures): Warning[] {
  if (!g.into.square || !runsAlongGrain(g)) return [];
  const rooms = [
    [m.y[0] - g.into.box.min[1], m.y[0]],
    [g.into.box.max[1] - m.y[1], m.y[1]],
  ] as const;
  return rooms.flatMap(([room, at]): Warning[] => {
    const open = room <= PLAY;
    if (room >= least - PLAY || (open && openMeant)) return [];
    return [
      {
        rule,
        grade: 'trouble',
        title: open ? 'The mortise is open at the end' : 'Short wood above the mortise',
        why: open
          ? 'The mortise runs out at the end of the receiving part: nothing keeps the tenon from lifting out.'
          : `Only {mm:${room}} of short grain is left between the mortise and the end of the receiving part; it breaks out when the joint is driven home.`,
        measured: Math.max(0, room),
        limit: least,
        unit: 'mm',
        source: HABIT,
        at: [middle(m.x), at, g.gap],
        roles: ['into'],
        cures,
      },
    ];
  });
}
/** Wood under a blind mortise `depth` deep. */
export function under(rule: string, g: Ground, m: Mouth, depth: number, cures: Cures): Warning[] {
  const left = g.deep - depth;
  if (left >= BOTTOM - PLAY) return [];
  return [
    {
      rule,
      grade: left <= 0 ? 'stops' : 'trouble',
      title: left <= 0 ? 'The blind mortise comes out at the back' : 'Thin bottom under the mortise',
      why:
        left <= 0
          ? `The mortise is {mm:${depth}} deep in wood {mm:${g.deep}} thick.`
          : `Only {mm:${left}} is left under a mortise {mm:${depth}} deep.`,
      measured: depth,
      limit: g.deep - BOTTOM,
      unit: 'mm',
      source: HABIT,
      at: [middle(m.x), middle(m.y), g.gap + depth],
      roles: ['into', 'enter'],
      cures,
    },
  ];
}
