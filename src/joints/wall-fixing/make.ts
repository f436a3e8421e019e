import type { Vec3 } from '../../geom/vec3.ts';
import { flatAt, flatContact } from '../blocks.ts';
import type { Contact, Made, Place } from '../family.ts';
import { screwContacts } from '../screw-contacts.ts';
import { type RowGround, specOf } from '../screw-rows.ts';
import { intoFeatures, screwExtras, throughFeatures } from '../screws.ts';
import { ground, spotsOf } from './lay.ts';
import type { WallFixing } from './params.ts';

export function make(p: Place<WallFixing>, s: WallFixing): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a rail lies flat on its wall: propose refuses the others');
  const [spec, spots] = [specOf(s), spotsOf(g, s)];
  const extras = screwExtras(g.bed, spec, spots);
  const out: Vec3 = [0, 0, -1];
  return {
    features: { rail: throughFeatures(g.bed, spec, spots), wall: intoFeatures(g.bed, spec, spots) },
    extras,
    contacts: [lies(g), ...screwContacts(g.bed, spec, spots)],
    frees: [...extras.toReversed().map((e) => ({ moves: [e.name], along: out })), { moves: ['rail'], along: out }],
    holds: 'dry',
  };
}
function lies(g: RowGround): Contact {
  const [x, y] = g.row === 'x' ? [g.run, g.wide] : [g.wide, g.run];
  return flatContact({
    name: 'rail on the wall',
    a: { role: 'rail', feature: 'stock', face: g.bed.through.side.end },
    b: { role: 'wall', feature: 'stock', face: g.bed.into.side.end },
    on: flatAt('z+', 0, x, y),
    apart: g.gap,
    fit: 'slip',
    hold: 'pinned',
    glue: 'never',
  });
}
