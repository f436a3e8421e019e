import { AXES, type Axis, axisVec } from '../../geom/vec3.ts';
import { type FlatPatch, faceToward, flatAt, looking } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type GlueSide, glueLine } from '../glue-line.ts';
import { type Ground, type Sign, type Span, end, mitres } from './lay.ts';
import type { CockBead } from './params.ts';

/** The bead's inner face on the bed, and its edge against the back of the rabbet where there is one. */
export function contacts(g: Ground, s: CockBead): Contact[] {
  const bed = line(g, s, 'bead on its bed', 'bed', g.edge, -g.out as Sign);
  return g.behind > 0 ? [bed, line(g, s, 'bead against the back of its rabbet', 'back', g.deep, -g.face as Sign)] : [bed];
}
function line(g: Ground, s: CockBead, name: string, face: string, axis: Axis, sign: Sign): Contact {
  const own = faceToward(g.bead, axisVec(axis, sign));
  const a: GlueSide = { role: 'bead', feature: 'stock', face: own, grain: g.bead.grain };
  const b: GlueSide = { role: 'front', feature: 'rabbet', face, grain: g.front.grain };
  const glued = glueLine({ name, a, b, on: patch(g, s, axis, sign), hold: s.hold === 'glued' ? 'glued' : 'pinned' });
  // Across the grain of the front's face a strip is left dry there: its bed holds it.
  return glued.hold === 'glued' && glued.glue === 'never' ? { ...dry(glued), hold: 'dry' } : glued;
}
function dry(c: Contact): Contact {
  const { gluedLength: _none, ...rest } = c;
  return rest;
}
/** A mitred end is short on its inner side. */
function patch(g: Ground, s: CockBead, axis: Axis, sign: Sign): FlatPatch {
  const ends = mitres(g, s) ?? [false, false];
  const less = g.thick;
  const shared = g.shared[g.along];
  const run: Span = [shared[0] + (ends[0] ? less : 0), shared[1] - (ends[1] ? less : 0)];
  const [u, v] = AXES.filter((x) => x !== axis) as [Axis, Axis];
  const spanOf = (x: Axis): Span => (x === g.along ? run : g.shared[x]);
  return flatAt(looking(axis, sign), end(g.bead.box, axis, sign), spanOf(u), spanOf(v));
}
