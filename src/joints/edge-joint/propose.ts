import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, settle } from '../reasons.ts';
import { laidTogether } from './make.ts';
import type { EdgeJoint } from './params.ts';

export function propose(
  p: Place<EdgeJoint>,
  _shop: Cutting,
): { readonly sizes: EdgeJoint; readonly because: Readonly<Record<keyof EdgeJoint, Reason>> } | Refusal<EdgeJoint> {
  if (!laidTogether(p.meeting)) return { cannot: 'the two edges do not lie flat against each other', limit: 0, asked: p.meeting.gap };
  return settle<EdgeJoint>(p.set, {
    hold: ['glued', byBook('long grain glued edge to edge is as strong as the wood', 'Wood Handbook, bonding of wood')],
  });
}
