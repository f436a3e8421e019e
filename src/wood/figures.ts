/** What a published figure of a timber is, where it comes from, and how one row of a table is written down. */

/** How a figure is known. read-secondhand: in a reprint or quotation of the publication. */
export type Basis = 'read' | 'read-secondhand' | 'memory' | 'memory-uncertain';
export type Figure = { readonly value: number; readonly basis: Basis; readonly source: string };
export type GrainKind = 'ring-porous' | 'semi-ring-porous' | 'diffuse-porous' | 'softwood';

export type Species = {
  readonly id: string;
  readonly name: string;
  readonly botanical: string;
  readonly group: 'hardwood' | 'softwood';
  readonly region: 'north america' | 'europe' | 'imported';
  readonly grain: GrainKind;
  /** Green to oven-dry, per cent of the green size. */
  readonly shrinkage: { readonly radial: Figure; readonly tangential: Figure; readonly volumetric: Figure | null };
  /** Change of size per per cent of moisture content, as a share of the size at 10 % or so; only where published. */
  readonly change?: { readonly radial: Figure; readonly tangential: Figure };
  /** Moisture content, per cent, below which it moves. */
  readonly movesBelow: number;
  /** Density relative to water at 12 % moisture content, unless the note says otherwise. */
  readonly gravity?: Figure;
  /** Modulus of elasticity in bending, 12 % moisture content, MPa. */
  readonly stiffness?: Figure;
  /** Modulus of rupture, 12 % moisture content, MPa. Guidance, never a rating. */
  readonly bending?: Figure;
  /** Side hardness, N. */
  readonly hardness?: Figure;
  readonly note?: string;
};

export const WH_SHRINK = 'Wood Handbook FPL-GTR-190 Table 4-3';
export const WH_IMPORT = 'Wood Handbook FPL-GTR-190 Table 4-4';
export const WH_CHANGE = 'Wood Handbook FPL-GTR-190 Table 13-5';
export const WH_STRENGTH = 'Wood Handbook FPL-GTR-190 Table 5-3a/b';
export const PANEL =
  'Hoadley in Dardes & Rothe (eds), The Structural Conservation of Panel Paintings, Getty 1998, Table 1 (genus averages)';
export const DIN_CHANGE = 'DIN 68100-type table of differential shrinkage (% per % MC / 100)';
export const DIN_STRENGTH = 'DIN 68364 / Wagenfuehr Holzatlas, order of magnitude';

export const fig = (value: number, basis: Basis, source: string): Figure => ({ value, basis, source });
export const shrinkage = (
  radial: number,
  tangential: number,
  volumetric: number | null,
  basis: Basis,
  source: string,
): Species['shrinkage'] => ({
  radial: fig(radial, basis, source),
  tangential: fig(tangential, basis, source),
  volumetric: volumetric === null ? null : fig(volumetric, basis, source),
});

type Rest = Omit<Species, 'id' | 'name' | 'botanical' | 'group' | 'region' | 'grain' | 'movesBelow'> & { readonly movesBelow?: number };
export const row = (
  id: string,
  name: string,
  botanical: string,
  group: Species['group'],
  region: Species['region'],
  grain: GrainKind,
  rest: Rest,
): Species => ({ id, name, botanical, group, region, grain, movesBelow: 30, ...rest });
