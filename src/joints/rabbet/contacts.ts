import type { Box } from '../../geom/box.ts';
import { type Axis, AXES } from '../../geom/vec3.ts';
import { type ContactSpec, type FlatPatch, faceToward, flatAt, flatContact, glueAcross, looking } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type Ground, type Lay, type Span, type Way, boxBy, faceAt, spanIn, spans, vecOf } from './lay.ts';
import type { Rabbet } from './params.ts';

/** The edge against the wall, the face on the bed, a lip over the outside, the shoulders, and the ends where the rabbet stops. */
export function contacts(g: Ground, l: Lay, s: Rabbet): Contact[] {
  const out = back(g.bed);
  return [
    inside(g, l, s, g.tip, 'edge of the board on the wall', { meant: s.spare, apart: s.spare + off(g), fit: s.spare > 0 ? 'gap' : 'slip' }),
    inside(g, l, s, g.bed, 'face of the board on the bed', { fit: 'slip' }),
    ...(s.outer > 0 ? [inside(g, l, s, out, 'outside of the tongue under the lip', { fit: 'slip' })] : []),
    ...shoulder(g, l, s, 'inside', s.inner, g.bed),
    ...shoulder(g, l, s, 'outside', s.outer, out),
    ...(l.stopped[0] ? [inside(g, l, s, { axis: g.run, sign: -1 }, 'stopped', { fit: 'loose' })] : []),
    ...(l.stopped[1] ? [inside(g, l, s, { axis: g.run, sign: 1 }, 'stopped', { fit: 'loose' })] : []),
  ];
}
const back = (w: Way): Way => ({ axis: w.axis, sign: w.sign > 0 ? -1 : 1 });
const off = (g: Ground): number => (g.shared ? 0 : g.gap);
/** One face of a box as a patch that looks out of it. */
function faceOf(box: Box, w: Way): FlatPatch {
  const [u, v] = AXES.filter((k) => k !== w.axis) as [Axis, Axis];
  return flatAt(looking(w.axis, w.sign), faceAt(spanIn(box, w.axis), w.sign), spanIn(box, u), spanIn(box, v));
}
function inside(g: Ground, l: Lay, s: Rabbet, w: Way, name: string, more: Pick<ContactSpec, 'fit'> & Partial<ContactSpec>): Contact {
  const face = faceToward(g.enter, vecOf(w));
  const cut = w.axis === g.bed.axis && g.shared ? (w.sign === g.bed.sign ? s.inner : s.outer) : 0;
  // A board drawn in its rabbet brings its own faces, and those of its shoulders look back at it from the cut.
  const own = !g.shared
    ? { feature: 'let-in edge', face: `side ${face}` }
    : cut > 1e-6
      ? { feature: `${w.sign === g.bed.sign ? 'inside' : 'outside'} shoulder`, face: `side ${faceToward(g.enter, vecOf(back(w)))}` }
      : { feature: 'stock', face };
  const stop = w.axis === g.run;
  const glued = s.hold === 'glued' && !stop && (more.meant ?? 0) === 0;
  return flatContact({
    name: stop ? `${name} ${face} end` : name,
    a: { role: 'enter', ...own },
    b: { role: 'into', feature: 'rabbet', face: `wall ${faceToward(g.into, vecOf(w))}` },
    on: faceOf(l.board, w),
    hold: glued ? 'glued' : 'dry',
    glue: glueAcross(vecOf(w), g.enter.grain, g.into.grain),
    grain: g.enter.grain,
    ...more,
  });
}
/** The body of the board beside its tongue, on the face of the other part. */
function shoulder(g: Ground, l: Lay, s: Rabbet, word: string, size: number, w: Way): Contact[] {
  if (size < 1e-6) return [];
  const face = faceAt(spanIn(g.enter.box, w.axis), w.sign);
  const slab: Span = w.sign > 0 ? [face - size, face] : [face, face + size];
  const reach = spanIn(g.into.box, w.axis);
  const on: Span = [Math.max(slab[0], reach[0]), Math.min(slab[1], reach[1])];
  if (on[1] - on[0] < 1e-6) return [];
  const box = boxBy(spans(g, [l.mouth, l.mouth] as Span, on, spanIn(l.board, g.run)));
  const tip = faceToward(g.enter, vecOf(g.tip));
  return [
    flatContact({
      name: `${word} shoulder`,
      a: {
        role: 'enter',
        ...(g.shared
          ? { feature: `${word} shoulder`, face: `side ${faceToward(g.enter, vecOf(back(g.tip)))}` }
          : { feature: 'stock', face: tip }),
      },
      b: { role: 'into', feature: 'stock', face: faceToward(g.into, vecOf(back(g.tip))) },
      on: faceOf(box, g.tip),
      apart: off(g),
      fit: 'slip',
      hold: s.hold === 'glued' ? 'glued' : 'dry',
      glue: glueAcross(vecOf(g.tip), g.enter.grain, g.into.grain),
      grain: g.enter.grain,
    }),
  ];
}
