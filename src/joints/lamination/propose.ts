import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, settle } from '../reasons.ts';
import { laidOn } from './make.ts';
import type { Lamination } from './params.ts';

export function propose(
  p: Place<Lamination>,
  _shop: Cutting,
): { readonly sizes: Lamination; readonly because: Readonly<Record<keyof Lamination, Reason>> } | Refusal<Lamination> {
  if (!laidOn(p.meeting)) return { cannot: 'the two faces do not lie flat on each other', limit: 0, asked: p.meeting.gap };
  return settle<Lamination>(p.set, {
    hold: ['glued', byBook('layers of one grain glued face to face move as one piece', 'Wood Handbook, bonding of wood')],
  });
}
