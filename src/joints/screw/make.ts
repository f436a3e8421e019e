import { type Vec3, axisVec } from '../../geom/vec3.ts';
import { flatAt, flatContact } from '../blocks.ts';
import type { Contact, Made, Place } from '../family.ts';
import { screwContacts } from '../screw-contacts.ts';
import { type RowGround, slotWay, specOf } from '../screw-rows.ts';
import { intoFeatures, screwExtras, throughFeatures } from '../screws.ts';
import { ground, spotsOf } from './lay.ts';
import type { Screw } from './params.ts';

export function make(p: Place<Screw>, s: Screw): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('screws need two parts that lie on each other: propose refuses the others');
  const [spec, spots] = [specOf(s), spotsOf(g, s)];
  const extras = screwExtras(g.bed, spec, spots);
  const out: Vec3 = [0, 0, -1];
  return {
    features: { through: throughFeatures(g.bed, spec, spots), into: intoFeatures(g.bed, spec, spots) },
    extras,
    contacts: [lies(g, s), ...screwContacts(g.bed, spec, spots)],
    // Plugs come out first, then the screws, then the part itself.
    frees: [...extras.toReversed().map((e) => ({ moves: [e.name], along: out })), { moves: ['through'], along: out }],
    holds: s.travel > 0 ? 'slides' : 'dry',
  };
}
/** The two faces that the screws draw together. */
function lies(g: RowGround, s: Screw): Contact {
  const { through, into } = g.bed;
  const [x, y] = g.row === 'x' ? [g.run, g.wide] : [g.wide, g.run];
  return flatContact({
    name: 'first part on the second',
    a: { role: 'through', feature: 'stock', face: through.side.end },
    b: { role: 'into', feature: 'stock', face: into.side.end },
    on: flatAt('z+', 0, x, y),
    apart: g.gap,
    fit: 'slip',
    hold: s.travel > 0 ? 'sliding' : 'pinned',
    glue: 'never',
    ...(s.travel > 0 ? { travel: { along: axisVec(slotWay(g)), low: -s.travel, high: s.travel } } : {}),
  });
}
