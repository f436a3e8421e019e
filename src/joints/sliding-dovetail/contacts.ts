import type { Vec3 } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact, Hold } from '../family.ts';
import { slant } from '../slant.ts';
import type { Ground, Lay, Span } from './lay.ts';
import type { SlidingDovetail } from './params.ts';

/** Both flanks of the tail against the walls, its tip on the bottom, its shoulders; each cut in two where only one end is glued. */
export function contacts(g: Ground, l: Lay, s: SlidingDovetail): Contact[] {
  const along = stretches(l, s).flatMap((t) => [flank(g, l, s, t, 0), flank(g, l, s, t, 1), tip(g, l, s, t), ...shoulders(g, l, s, t)]);
  return s.stop > 0 ? [...along, atStop(g, l, s)] : along;
}
/** A length of the slide that is held one way: its ends along y, its low end first. */
type Stretch = { readonly y: Span; readonly words: string; readonly glued: boolean };
function stretches(l: Lay, s: SlidingDovetail): Stretch[] {
  const span = (a: number, b: number): Span => (a < b ? [a, b] : [b, a]);
  if (s.hold !== 'end') return [{ y: span(l.first, l.last), words: '', glued: s.hold === 'glued' }];
  const mid = l.first + l.sign * s.glued;
  return [
    { y: span(l.first, mid), words: ' at the glued end', glued: true },
    { y: span(mid, l.last), words: ', free', glued: false },
  ];
}
const holdOf = (s: SlidingDovetail, t: Stretch): Hold => (t.glued ? 'glued' : s.hold === 'end' ? 'sliding' : 'dry');
function flank(g: Ground, l: Lay, s: SlidingDovetail, t: Stretch, side: 0 | 1): Contact {
  const dir: Vec3 = [side === 0 ? -1 : 1, 0, 0];
  const at = (y: number, z: 'neck' | 'tip'): Vec3 => [l[z](y)[side], y, z === 'neck' ? 0 : s.depth];
  const on = slant([at(t.y[0], 'neck'), at(t.y[1], 'neck'), at(t.y[1], 'tip'), at(t.y[0], 'tip')], dir);
  const face = faceToward(g.enter, dir);
  return flatContact({
    name: `${face} flank of the tail${t.words}`,
    a: { role: 'enter', feature: 'tail', face: `flank ${face}` },
    b: { role: 'into', feature: 'socket', face: `wall ${faceToward(g.into, dir)}` },
    on,
    // A board that stands off pulls its walls onto the undercut tail.
    apart: g.gap * on.frame.z[2],
    fit: s.taper > 0 ? 'tap' : 'slip',
    hold: holdOf(s, t),
    glue: glueAcross(dir, g.enter.grain, g.into.grain),
    grain: g.enter.grain,
  });
}
function tip(g: Ground, l: Lay, s: SlidingDovetail, t: Stretch): Contact {
  const at = (y: number, side: 0 | 1): Vec3 => [l.tip(y)[side], y, s.depth];
  return flatContact({
    name: `tip of the tail on the bottom of the socket${t.words}`,
    a: { role: 'enter', feature: 'tail', face: 'tip' },
    b: { role: 'into', feature: 'socket', face: 'bottom' },
    on: slant([at(t.y[0], 0), at(t.y[1], 0), at(t.y[1], 1), at(t.y[0], 1)], [0, 0, 1]),
    apart: g.gap,
    fit: 'slip',
    hold: s.hold === 'end' ? 'sliding' : 'dry',
    glue: glueAcross([0, 0, 1], g.enter.grain, g.into.grain),
  });
}
/** Where they lie on the other board all along: the widest strip beside the neck. */
function shoulders(g: Ground, l: Lay, s: SlidingDovetail, t: Stretch): Contact[] {
  const narrow = l.neck(l.last);
  const strips: readonly (readonly [Span, 1 | -1])[] = [
    [[Math.max(g.x[0], g.into.box.min[0]), narrow[0]], -1],
    [[narrow[1], Math.min(g.x[1], g.into.box.max[0])], 1],
  ];
  return strips
    .filter(([x]) => x[1] - x[0] > 1e-6)
    .map(([x, sign]) => closing(g, s, `${faceToward(g.enter, [sign, 0, 0])} shoulder${t.words}`, x, t.y));
}
/** Beyond a stopped socket the whole thickness of the board closes on the face. */
function atStop(g: Ground, l: Lay, s: SlidingDovetail): Contact {
  const far = l.first - l.sign * s.stop;
  const x: Span = [Math.max(g.x[0], g.into.box.min[0]), Math.min(g.x[1], g.into.box.max[0])];
  return closing(g, s, 'shoulder at the stop', x, l.sign > 0 ? [far, l.first] : [l.first, far]);
}
const closing = (g: Ground, s: SlidingDovetail, name: string, x: Span, y: Span): Contact =>
  flatContact({
    name,
    a: { role: 'enter', feature: 'stock', face: g.enter.end },
    b: { role: 'into', feature: 'stock', face: g.into.end },
    on: flatAt('z+', 0, x, y),
    apart: g.gap,
    fit: 'slip',
    hold: s.hold === 'end' ? 'sliding' : 'dry',
    glue: glueAcross([0, 0, 1], g.enter.grain, g.into.grain),
  });
