import { type Vec3, axisVec } from '../../geom/vec3.ts';
import { flatAt, flatContact } from '../blocks.ts';
import type { Contact, Made, Place } from '../family.ts';
import { screwContacts } from '../screw-contacts.ts';
import { type RowGround, specOf } from '../screw-rows.ts';
import { intoFeatures, screwExtras, throughFeatures } from '../screws.ts';
import { ground, sizesOf, spotsOf } from './lay.ts';
import type { SlottedCleat } from './params.ts';

export function make(p: Place<SlottedCleat>, s: SlottedCleat): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a batten lies square on its board: propose refuses the others');
  const [spec, spots] = [specOf(sizesOf(s)), spotsOf(g, s)];
  const extras = screwExtras(g.bed, spec, spots);
  const out: Vec3 = [0, 0, -1];
  return {
    features: { cleat: throughFeatures(g.bed, spec, spots), board: intoFeatures(g.bed, spec, spots) },
    extras,
    contacts: [lies(g, s), ...screwContacts(g.bed, spec, spots)],
    frees: [...extras.map((e) => ({ moves: [e.name], along: out })), { moves: ['cleat'], along: out }],
    holds: 'slides',
  };
}
function lies(g: RowGround, s: SlottedCleat): Contact {
  const [x, y] = g.row === 'x' ? [g.run, g.wide] : [g.wide, g.run];
  return flatContact({
    name: 'batten on the board',
    a: { role: 'cleat', feature: 'stock', face: g.bed.through.side.end },
    b: { role: 'board', feature: 'stock', face: g.bed.into.side.end },
    on: flatAt('z+', 0, x, y),
    apart: g.gap,
    fit: 'slip',
    hold: 'sliding',
    glue: 'never',
    travel: { along: axisVec(g.row), low: -s.allow, high: s.allow },
  });
}
