import type { Frame } from '../../geom/frame.ts';
import { type Vec2, type Vec3, cross, scale, sub, unit } from '../../geom/vec3.ts';
import type { Contact } from '../family.ts';
import { type FlatPatch, faceToward, flatContact } from '../blocks.ts';
import { type Corner, type Drawn, type Layout, type Mitre, type Span, mitres, ruler } from './lay.ts';

/** Both cheeks of every tail glue long grain to long grain; the backs of tails and pins are end grain and only close. */
export function contacts(d: Drawn): Contact[] {
  const { c, l } = d;
  return [
    ...l.tails.flatMap((t, i) => [cheek(c, l, i, -1, t.low), cheek(c, l, i, 1, t.high), tailBack(c, l, i)]),
    ...pinBacks(c, l),
    ...(c.lap > 0 ? l.tails.map((_, i) => tailEnd(c, l, i)) : []),
    ...mitres(d).flatMap((m) => [mitreFace(c, m), mitreSide(c, l, m)]),
  ];
}
/** The slanted side of tail i, low or high; `edge` is where it comes out at the outer face. */
function cheek(c: Corner, l: Layout, i: number, sign: 1 | -1, edge: number): Contact {
  const { to } = ruler(c);
  const inner: Vec3 = [c.x[0], to(edge - sign * l.rise), c.z[0]];
  const outer: Vec3 = [c.x[0], to(edge), c.z[1]];
  const along = sub(outer, inner);
  const run = Math.hypot(along[1], along[2]);
  const y = unit(along);
  const across = cross([1, 0, 0], y);
  // Out of the tail's wood: away from the tail's middle.
  const away = Math.sign(to(edge + sign) - to(edge));
  const frame: Frame = { o: inner, x: [1, 0, 0], y, z: scale(across, Math.sign(across[1]) === away ? 1 : -1) };
  const thick = c.x[1] - c.x[0];
  const word = sign > 0 ? 'high' : 'low';
  return flatContact({
    name: `tail ${i + 1}, ${word} cheek`,
    // The pin socket beyond a tail's high side has it on its own low side.
    a: { role: 'tails', feature: `pin socket ${sign > 0 ? i + 2 : i + 1}`, face: sign > 0 ? 'cheek low' : 'cheek high' },
    b: { role: 'pins', feature: `tail socket ${i + 1}`, face: `cheek ${word}` },
    on: {
      frame,
      patch: [
        [0, 0],
        [thick, 0],
        [thick, run],
        [0, run],
      ],
    },
    fit: 'tap',
    hold: 'glued',
    glue: 'long',
    grain: c.tails.grain,
  });
}
/** A region of the yz plane or, for the pins, of the xy plane, as a patch whose normal looks out of the tail board. */
function tailBack(c: Corner, l: Layout, i: number): Contact {
  const { to } = ruler(c);
  const t = l.tails[i] ?? { low: 0, high: 0 };
  const patch: Vec2[] = [
    [to(t.low + l.rise), c.z[0]],
    [to(t.high - l.rise), c.z[0]],
    [to(t.high), c.z[1]],
    [to(t.low), c.z[1]],
  ];
  const dir: Vec3 = [c.inward, 0, 0];
  const at = c.inward > 0 ? c.x[1] : c.x[0];
  return close(`back of tail ${i + 1}`, faceToward(c.tails, dir), `tail socket ${i + 1}`, {
    frame: { o: [at, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: dir },
    patch,
  });
}
function pinBacks(c: Corner, l: Layout): Contact[] {
  const { to } = ruler(c);
  const marks = [l.edges[0], ...l.tails.flatMap((t) => [t.low + l.rise, t.high - l.rise]), l.edges[1]];
  return Array.from({ length: l.tails.length + 1 }, (_, k) => {
    const y: Span = [to(marks[2 * k] ?? 0), to(marks[2 * k + 1] ?? 0)];
    const patch: Vec2[] = [
      [c.x[0], y[0]],
      [c.x[1], y[0]],
      [c.x[1], y[1]],
      [c.x[0], y[1]],
    ];
    return flatContact({
      name: `back of pin ${k + 1}`,
      a: { role: 'tails', feature: `pin socket ${k + 1}`, face: 'base' },
      b: { role: 'pins', feature: 'stock', face: faceToward(c.pins, [0, 0, -1]) },
      on: { frame: { o: [0, 0, c.z[0]], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }, patch },
      fit: 'slip',
      hold: 'dry',
      glue: 'end',
    });
  });
}
const close = (name: string, face: string, socket: string, on: FlatPatch): Contact =>
  flatContact({
    name,
    a: { role: 'tails', feature: 'stock', face },
    b: { role: 'pins', feature: socket, face: 'base' },
    on,
    fit: 'slip',
    hold: 'dry',
    glue: 'end',
  });
/** Where the tails are lapped: the end of each on the wood that hides it. */
function tailEnd(c: Corner, l: Layout, i: number): Contact {
  const { to } = ruler(c);
  const t = l.tails[i] ?? { low: 0, high: 0 };
  const cut = c.tails.box.max[2] > c.z[1] + 1e-6;
  const at = cut ? c.z[1] : c.tails.box.max[2];
  return flatContact({
    name: `end of tail ${i + 1} on the lap`,
    a: cut ? { role: 'tails', feature: 'end', face: 'end' } : { role: 'tails', feature: 'stock', face: faceToward(c.tails, [0, 0, 1]) },
    b: { role: 'pins', feature: `tail socket ${i + 1}`, face: 'lap' },
    on: {
      frame: { o: [0, 0, at], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
      patch: [
        [c.x[0], to(t.low)],
        [c.x[1], to(t.low)],
        [c.x[1], to(t.high)],
        [c.x[0], to(t.high)],
      ],
    },
    apart: c.z[1] - at,
    fit: 'slip',
    hold: 'dry',
    glue: 'end',
  });
}
/** The mitre itself: end grain on both boards, from the inner corner to the outer one. */
function mitreFace(c: Corner, m: Mitre): Contact {
  const { to } = ruler(c);
  const [inX, outX] = c.inward > 0 ? [c.x[1], c.x[0]] : [c.x[0], c.x[1]];
  const y = unit([outX - inX, 0, c.z[1] - c.z[0]]);
  const long = Math.hypot(outX - inX, c.z[1] - c.z[0]);
  // Out of the tail board: towards the inside of the pin board and its end.
  const z = unit([c.inward * (c.z[1] - c.z[0]), 0, Math.abs(outX - inX)]);
  return flatContact({
    name: m.name,
    a: { role: 'tails', feature: m.name, face: 'mitre' },
    b: { role: 'pins', feature: m.name, face: 'mitre' },
    on: {
      frame: { o: [inX, 0, c.z[0]], x: [0, 1, 0], y, z },
      patch: [
        [to(m.span[0]), 0],
        [to(m.span[1]), 0],
        [to(m.span[1]), long],
        [to(m.span[0]), long],
      ],
    },
    fit: 'slip',
    hold: 'glued',
    glue: 'end',
    grain: c.tails.grain,
  });
}
/** Beside the mitre the tail board's corner lies on the upright side of the half pin. */
function mitreSide(c: Corner, l: Layout, m: Mitre): Contact {
  const { to } = ruler(c);
  const at = to(m.at === 'low' ? m.span[1] : m.span[0]);
  const [inX, outX] = c.inward > 0 ? [c.x[1], c.x[0]] : [c.x[0], c.x[1]];
  const dir: Vec3 = [0, Math.sign(to(m.at === 'low' ? 1 : 0) - to(m.at === 'low' ? 0 : 1)), 0];
  return flatContact({
    name: `side of the ${m.name}`,
    a: { role: 'tails', feature: `pin socket ${m.at === 'low' ? 1 : l.tails.length + 1}`, face: `side ${m.at}` },
    b: { role: 'pins', feature: m.name, face: 'side' },
    on: {
      frame: { o: [0, at, 0], x: [1, 0, 0], y: [0, 0, 1], z: dir },
      patch: [
        [inX, c.z[0]],
        [outX, c.z[0]],
        [outX, c.z[1]],
      ],
    },
    fit: 'slip',
    hold: 'glued',
    glue: 'long',
    grain: c.tails.grain,
  });
}
