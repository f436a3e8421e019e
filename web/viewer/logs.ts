/** For each part what the wood program must know: its axes, its staves and layers, its tones, and a steady seed for its pith. */
import type { ShaderMaterial } from 'three';
import { type Vec3, axisVec } from '../../src/geom/vec3.ts';
import type { PartView } from '../../src/piece/view.ts';
import { type Colour, toLinear } from '../../src/wood/shade.ts';
import { toneOf } from './species.ts';
import { setNumbers, setUniform } from './uniforms.ts';
import { MOST_CUTS, MOST_LAYERS, NO_CUT } from './woodShader.ts';

/** mm from ring to ring and how sharply late wood ends, by kind of grain; chosen by eye. */
const RINGS = {
  'ring-porous': [2.8, 2.2],
  'semi-ring-porous': [3.1, 2.6],
  'diffuse-porous': [3.4, 3.2],
  softwood: [3, 3.4],
  none: [3, 2],
} as const;

/** Small whole number from a name: the same part keeps its figure through every edit. */
function seedOf(text: string): number {
  let h = 2166136261;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 16777619);
  return (h >>> 0) % 997;
}
export function describeWood(material: ShaderMaterial, part: PartView): void {
  const tone = toneOf(part.wood);
  const along = part.grain === 'x' ? 0 : part.grain === 'y' ? 1 : 2;
  const size = (i: number): number => (part.stock.max[i] ?? 0) - (part.stock.min[i] ?? 0);
  const [across, through] = ([0, 1, 2] as const).filter((i) => i !== along).sort((a, b) => size(b) - size(a)) as [number, number];
  const unit = (i: number): Vec3 => axisVec((['x', 'y', 'z'] as const)[i] ?? 'x');
  setNumbers(material, 'uAlong', unit(along));
  setNumbers(material, 'uAcross', unit(across));
  setNumbers(material, 'uThrough', unit(through));
  setNumbers(material, 'uEarly', linear(tone.early));
  setNumbers(material, 'uLate', linear(tone.late));
  const [spacing, sharp] = RINGS[tone.grain];
  setUniform(material, 'uSpacing', spacing);
  setUniform(material, 'uSharp', sharp);
  setUniform(material, 'uRings', part.kind === 'hardware' || tone.grain === 'none' ? 0 : 1);
  setUniform(material, 'uSeed', seedOf(part.path));
  const a = cuts(part, across, MOST_CUTS);
  const b = cuts(part, through, MOST_LAYERS);
  const four = (name: string, v: readonly number[], from = 0): void =>
    setNumbers(
      material,
      name,
      [0, 1, 2, 3].map((k) => v[from + k] ?? NO_CUT),
    );
  four('uCutsA0', a);
  four('uCutsA1', a, 4);
  four('uCutsA2', a, 8);
  four('uCutsB', b);
  four('uEnds', [part.stock.min[across] ?? 0, part.stock.max[across] ?? 0, part.stock.min[through] ?? 0, part.stock.max[through] ?? 0]);
}
/** Where the pieces it is glued up from meet along one axis, inside the stock. */
function cuts(part: PartView, axis: number, most: number): number[] {
  const ends = part.pieces.flatMap((p) => [p.min[axis] ?? 0, p.max[axis] ?? 0]).sort((x, y) => x - y);
  const inside = (v: number): boolean => v > (part.stock.min[axis] ?? 0) + 0.5 && v < (part.stock.max[axis] ?? 0) - 0.5;
  return ends.filter((v, i) => inside(v) && v - (ends[i - 1] ?? -Infinity) > 0.5).slice(0, most);
}
const linear = (c: Colour): Vec3 => [toLinear(c[0]), toLinear(c[1]), toLinear(c[2])];
