import { isSquare, sideIn } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { glueLine } from '../glue-line.ts';
import type { Meeting } from '../meeting.ts';
import type { EdgeJoint } from './params.ts';

export const laidTogether = (m: Meeting): boolean => isSquare(m) && m.patch.length > 2;
/** Nothing is cut: the joint is the patch that both touch by. */
export function make(p: Place<EdgeJoint>, s: EdgeJoint): Made {
  const m = p.meeting;
  const [enter, into] = [sideIn(m, 'enter'), sideIn(m, 'into')];
  const glued = s.hold === 'glued';
  return {
    features: { enter: [], into: [] },
    extras: [],
    contacts: [
      glueLine({
        name: 'edge to edge',
        a: { role: 'enter', feature: 'stock', face: enter.end, grain: enter.grain },
        b: { role: 'into', feature: 'stock', face: into.end, grain: into.grain },
        on: { frame: { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }, patch: m.patch },
        apart: m.gap,
        hold: glued ? 'glued' : 'dry',
      }),
    ],
    frees: [{ moves: ['enter'], along: [0, 0, -1] }],
    holds: glued ? 'glue' : 'dry',
  };
}
