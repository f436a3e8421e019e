import type { Frame } from '../../geom/frame.ts';
import { type Vec2, type Vec3, dot } from '../../geom/vec3.ts';
import { type FlatPatch, flatContact, glueAcross } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type Arm, type Corner, alongMitre, dirOf, keySpots, onMitre, splineAt } from './lay.ts';
import type { Mitre } from './params.ts';

/** The mitre itself; both sides of a spline in each part and its edges; both sides of each key and its inner edge. */
export function contacts(c: Corner, s: Mitre): Contact[] {
  const arms = [c.first, c.second];
  if (s.form === 'splined')
    return [mitre(c, s), ...arms.flatMap((a) => [...([-1, 1] as const).map((sign) => splineSide(c, s, a, sign)), splineEdge(c, s, a)])];
  if (s.form === 'keyed')
    return [
      mitre(c, s),
      ...keySpots(c, s.count).flatMap((w, i) =>
        arms.flatMap((a) => [...([-1, 1] as const).map((sign) => keySide(c, s, a, w, i, sign)), keyEdge(c, s, a, w, i)]),
      ),
    ];
  return [mitre(c, s)];
}
const mitre = (c: Corner, s: Mitre): Contact =>
  flatContact({
    name: 'mitre',
    a: { role: 'first', feature: 'mitre', face: 'mitre' },
    b: { role: 'second', feature: 'mitre', face: 'mitre' },
    on: { frame: c.frame, patch: c.patch },
    fit: 'slip',
    hold: s.hold,
    glue: glueAcross(c.frame.z, c.first.side.grain, c.second.side.grain),
    grain: c.first.side.grain,
  });
/** Which way along n a part lies from the mitre. */
const into = (a: Arm): 1 | -1 => (a.role === 'first' ? -1 : 1);
/** A plane through a point of the mitre, x along `x`, y along `y` of the mitre's own axes, looking along `z`. */
function planeOn(c: Corner, at: Vec3, x: Vec3, y: Vec3, z: Vec3): Frame {
  return { o: onMitre(c, ...at), x: dirOf(c, x), y: dirOf(c, y), z: dirOf(c, z) };
}
/** A wall at 45 degrees to the grain is no end grain yet: it glues, which is what a spline is for. */
const wallGlue = (a: Arm, z: Vec3): Contact['glue'] => (Math.abs(dot(a.side.grain, z)) > 0.75 ? 'end' : 'long');
function splineSide(c: Corner, s: Mitre, a: Arm, sign: 1 | -1): Contact {
  const frame = alongMitre(c);
  const mid = (c.span[0] + c.span[1]) / 2;
  const on: FlatPatch = frame
    ? { frame: planeOn(c, [0, mid + (sign * s.thick) / 2, 0], [1, 0, 0], [0, 0, into(a)], [0, sign, 0]), patch: splineOutline(c, s, a) }
    : {
        frame: planeOn(c, [splineAt(c) + (sign * s.thick) / 2, c.span[0], 0], [0, 1, 0], [0, 0, into(a)], [sign, 0, 0]),
        patch: rectangle(c.span[1] - c.span[0], s.depth),
      };
  const looks = frame ? faceOf(sign, 'front', 'back') : faceOf(sign, 'left', 'right');
  return flatContact({
    name: `${looks} of the spline in the ${a.role} part`,
    a: { role: 'extra', index: 0, feature: 'stock', face: looks },
    b: { role: a.role, feature: 'groove', face: sign > 0 ? 'wall high' : 'wall low' },
    on,
    fit: 'slip',
    hold: s.hold,
    glue: wallGlue(a, on.frame.z),
    grain: c.frame.z,
  });
}
const faceOf = (sign: 1 | -1, low: string, high: string): string => (sign > 0 ? high : low);
const rectangle = (x: number, y: number): Vec2[] => [
  [0, 0],
  [x, 0],
  [x, y],
  [0, y],
];
/** Along the mitre and into the part: the outer corner is cut flush with the outer face. */
function splineOutline(c: Corner, s: Mitre, a: Arm): Vec2[] {
  const cut = c.long - s.depth / a.rise;
  return cut > 1e-6
    ? [
        [0, 0],
        [c.long, 0],
        [cut, s.depth],
        [0, s.depth],
      ]
    : [
        [0, 0],
        [c.long, 0],
        [0, c.long * a.rise],
      ];
}
/** The far edge of the spline closes on the bottom of its groove; it is end grain and not counted on. */
function splineEdge(c: Corner, s: Mitre, a: Arm): Contact {
  const frame = alongMitre(c);
  const n = into(a) * s.depth;
  const mid = (c.span[0] + c.span[1]) / 2;
  const on: FlatPatch = frame
    ? {
        frame: planeOn(c, [0, mid - s.thick / 2, n], [1, 0, 0], [0, 1, 0], [0, 0, into(a)]),
        patch: rectangle(Math.max(1e-3, c.long - s.depth / a.rise), s.thick),
      }
    : {
        frame: planeOn(c, [splineAt(c) - s.thick / 2, c.span[0], n], [1, 0, 0], [0, 1, 0], [0, 0, into(a)]),
        patch: rectangle(s.thick, c.span[1] - c.span[0]),
      };
  return edge(`edge of the spline in the ${a.role} part`, 0, a.role === 'first' ? 'bottom' : 'top', a, 'groove', `bottom ${a.role}`, on);
}
const edge = (name: string, index: number, face: string, a: Arm, feature: string, bottom: string, on: FlatPatch): Contact =>
  flatContact({
    name,
    a: { role: 'extra', index, feature: 'stock', face },
    b: { role: a.role, feature, face: bottom },
    on,
    fit: 'slip',
    hold: 'dry',
    glue: 'end',
  });
function keySide(c: Corner, s: Mitre, a: Arm, w: number, i: number, sign: 1 | -1): Contact {
  const patch: Vec2[] = [
    [0, 0],
    [s.depth, 0],
    [0, s.depth * a.rise],
  ];
  const frame = planeOn(c, [c.long - s.depth, w + (sign * s.thick) / 2, 0], [1, 0, 0], [0, 0, into(a)], [0, sign, 0]);
  const looks = faceOf(sign, 'front', 'back');
  return flatContact({
    name: `${looks} of key ${i + 1} in the ${a.role} part`,
    a: { role: 'extra', index: i, feature: 'stock', face: looks },
    b: { role: a.role, feature: `kerf ${i + 1}`, face: sign > 0 ? 'wall high' : 'wall low' },
    on: { frame, patch },
    fit: 'slip',
    hold: s.hold,
    glue: wallGlue(a, frame.z),
    grain: c.frame.z,
  });
}
const keyEdge = (c: Corner, s: Mitre, a: Arm, w: number, i: number): Contact =>
  edge(`inner edge of key ${i + 1} in the ${a.role} part`, i, 'left', a, `kerf ${i + 1}`, 'bottom', {
    frame: planeOn(c, [c.long - s.depth, w - s.thick / 2, 0], [0, 0, into(a)], [0, 1, 0], [-1, 0, 0]),
    patch: rectangle(s.depth * a.rise, s.thick),
  });
