/** Plain glue lines: two flat faces laid together, nothing cut. Joints of boards use them, and the staves and layers of one part. */
import type { Box } from '../geom/box.ts';
import { polygonArea } from '../geom/loop.ts';
import { type Axis, type Vec3, AXES, axisIndex, dot } from '../geom/vec3.ts';
import { type FaceName, type FlatPatch, flatAt, flatContact, sharedSpan } from './blocks.ts';
import type { Contact, Hold } from './family.ts';

export type GlueSide = FaceName & { readonly grain: Vec3 };
export type GlueLine = {
  readonly name: string;
  readonly a: GlueSide;
  readonly b: GlueSide;
  /** The patch's normal looks out of `a`. */
  readonly on: FlatPatch;
  /** How far apart the faces lie as built, mm. */
  readonly apart?: number;
  readonly hold?: Hold;
};
/**
 * Which sort of grain meets: end grain on either side hardly holds; long grain to long grain holds as well as the wood, if both
 * run one way; crossed, it must not be glued over any width.
 */
function glueOf(on: FlatPatch, a: Vec3, b: Vec3): Contact['glue'] {
  const steep = (g: Vec3): boolean => Math.abs(dot(on.frame.z, g)) > 0.7;
  if (steep(a) || steep(b)) return 'end';
  return Math.abs(dot(a, b)) > Math.cos((20 * Math.PI) / 180) ? 'long' : 'never';
}
export const glueLine = (l: GlueLine): Contact =>
  flatContact({
    name: l.name,
    a: sideName(l.a),
    b: sideName(l.b),
    on: l.on,
    ...(l.apart === undefined ? {} : { apart: l.apart }),
    fit: 'slip',
    hold: l.hold ?? 'glued',
    glue: glueOf(l.on, l.a.grain, l.b.grain),
    grain: l.a.grain,
  });
const sideName = ({ role, index, feature, face }: GlueSide): FaceName => ({
  role,
  feature,
  face,
  ...(index === undefined ? {} : { index }),
});

/** Area of a flat contact, mm²; 0 for a round one. */
export function contactArea(c: Contact): number {
  const s = c.between[0].surface;
  return 'plane' in s ? Math.abs(polygonArea(s.patch)) : 0;
}
/**
 * Where two boxes of one frame lie face on face, as neighbouring staves and layers do: the axis that their seam stands across and
 * the patch, its normal out of `a`. null when they share no face.
 */
export function seamOf(a: Box, b: Box, near = 1e-4): { readonly axis: Axis; readonly on: FlatPatch } | null {
  for (const axis of AXES) {
    const i = axisIndex(axis);
    const sign = Math.abs(a.max[i] - b.min[i]) <= near ? 1 : Math.abs(a.min[i] - b.max[i]) <= near ? -1 : 0;
    if (sign === 0) continue;
    const [u, v] = AXES.filter((k) => k !== axis) as [Axis, Axis];
    const [first, second] = [sharedSpan(a, b, u), sharedSpan(a, b, v)];
    if (first[1] - first[0] > near && second[1] - second[0] > near)
      return { axis, on: flatAt(sign > 0 ? `${axis}+` : `${axis}-`, sign > 0 ? a.max[i] : a.min[i], first, second) };
  }
  return null;
}
/** The glue lines between all neighbouring pieces that one part is glued up from; boxes and grain in the part's record frame. */
export function seamsOf(pieces: readonly { readonly name: string; readonly box: Box }[], grain: Vec3): Contact[] {
  return pieces.flatMap((a, i) =>
    pieces.slice(i + 1).flatMap((b, k) => {
      const seam = seamOf(a.box, b.box);
      const side = (index: number, face: string): GlueSide => ({ role: 'piece', index, feature: 'stock', face, grain });
      if (!seam) return [];
      const up = seam.on.frame.z[axisIndex(seam.axis)] > 0;
      return [
        glueLine({
          name: `${a.name} to ${b.name}`,
          a: side(i, faceOn(seam.axis, up)),
          b: side(i + 1 + k, faceOn(seam.axis, !up)),
          on: seam.on,
        }),
      ];
    }),
  );
}
const faceOn = (axis: Axis, high: boolean): string =>
  ({ x: ['left', 'right'], y: ['front', 'back'], z: ['bottom', 'top'] })[axis][high ? 1 : 0] ?? 'left';
