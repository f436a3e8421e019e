import { isWood } from '../../wood/woods.ts';
import { dot } from '../../geom/vec3.ts';
import type { Contact, Hold } from '../family.ts';
import { faceToward, flatAt, flatContact } from '../blocks.ts';
import type { Ground, Lay, Span } from './lay.ts';
import type { GrooveTongue } from './params.ts';

/** Both cheeks of the tongue, its tip with the room behind it, and its shoulders. */
export function contacts(g: Ground, l: Lay, s: GrooveTongue): Contact[] {
  const y: Span = [Math.max(l.tongue[0], l.groove[0]), Math.min(l.tongue[1], l.groove[1])];
  return [cheek(g, l, s, y, -1), cheek(g, l, s, y, 1), tip(g, l, s, y), ...shoulder(g, l, s, -1), ...shoulder(g, l, s, 1)];
}
/** Boards edge to edge along one grain may be glued; a solid panel whose grain crosses the frame's, or that floats, must not be. */
function glueOf(g: Ground, s: GrooveTongue): Contact['glue'] {
  if (s.hold === 'loose') return 'never';
  const stable = !isWood(g.enter.wood) || !isWood(g.into.wood);
  return stable || Math.abs(dot(g.enter.grain, g.into.grain)) > 0.99 ? 'long' : 'never';
}
const holdOf = (s: GrooveTongue): Hold => (s.hold === 'glued' ? 'glued' : 'sliding');
function cheek(g: Ground, l: Lay, s: GrooveTongue, y: Span, sign: 1 | -1): Contact {
  const dir = [sign, 0, 0] as const;
  return flatContact({
    name: `${faceToward(g.enter, dir)} cheek of the tongue`,
    a: { role: 'enter', feature: 'tongue', face: `cheek ${faceToward(g.enter, dir)}` },
    b: { role: 'into', feature: 'groove', face: `wall ${faceToward(g.into, dir)}` },
    on: flatAt(sign > 0 ? 'x+' : 'x-', sign > 0 ? l.x[1] : l.x[0], y, [0, l.long]),
    fit: s.hold === 'glued' ? 'slip' : 'loose',
    hold: holdOf(s),
    glue: glueOf(g, s),
    grain: g.enter.grain,
    ...(s.hold === 'loose' ? { travel: { along: [0, 0, 1], low: -s.spare, high: s.spare } } : {}),
  });
}
const tip = (g: Ground, l: Lay, s: GrooveTongue, y: Span): Contact =>
  flatContact({
    name: 'tip of the tongue over the bottom of the groove',
    a: { role: 'enter', feature: 'tongue', face: 'tip' },
    b: { role: 'into', feature: 'groove', face: 'bottom' },
    on: flatAt('z+', l.long, l.x, y),
    fit: s.spare > 0 ? 'gap' : 'slip',
    meant: s.spare,
    apart: s.spare + g.gap,
    hold: s.hold === 'loose' ? 'sliding' : 'dry',
    glue: 'never',
  });
function shoulder(g: Ground, l: Lay, s: GrooveTongue, sign: 1 | -1): Contact[] {
  const x: Span = sign > 0 ? [l.x[1], Math.min(g.x[1], g.into.box.max[0])] : [Math.max(g.x[0], g.into.box.min[0]), l.x[0]];
  if (x[1] - x[0] < 1e-6) return [];
  const face = faceToward(g.enter, [sign, 0, 0]);
  const own = s.clear > 0 ? { feature: `shoulder room ${face}`, face: 'shoulder' } : { feature: 'stock', face: g.enter.end };
  return [
    flatContact({
      name: `${face} shoulder`,
      a: { role: 'enter', ...own },
      b: { role: 'into', feature: 'stock', face: g.into.end },
      on: flatAt('z+', -s.clear, x, g.y),
      fit: s.clear > 0 ? 'gap' : 'slip',
      meant: s.clear,
      apart: s.clear + g.gap,
      hold: s.hold === 'glued' && s.clear === 0 && glueOf(g, s) === 'long' ? 'glued' : s.hold === 'glued' ? 'dry' : 'sliding',
      glue: glueOf(g, s),
      grain: g.enter.grain,
    }),
  ];
}
