/**
 * Timbers as published: shrinkage, moisture coefficients, density and strength, each figure with its basis and source. Figures whose
 * basis is 'memory' or 'memory-uncertain' were not checked against a copy of the publication; no test asserts the uncertain ones.
 * The kind of grain (ring-porous and so on) is general wood anatomy, from memory throughout.
 */

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

const WH_SHRINK = 'Wood Handbook FPL-GTR-190 Table 4-3';
const WH_IMPORT = 'Wood Handbook FPL-GTR-190 Table 4-4';
const WH_CHANGE = 'Wood Handbook FPL-GTR-190 Table 13-5';
const WH_STRENGTH = 'Wood Handbook FPL-GTR-190 Table 5-3a/b';
const PANEL = 'Hoadley in Dardes & Rothe (eds), The Structural Conservation of Panel Paintings, Getty 1998, Table 1 (genus averages)';
const DIN_CHANGE = 'DIN 68100-type table of differential shrinkage (% per % MC / 100)';
const DIN_STRENGTH = 'DIN 68364 / Wagenfuehr Holzatlas, order of magnitude';

const fig = (value: number, basis: Basis, source: string): Figure => ({ value, basis, source });
const shrinkage = (radial: number, tangential: number, volumetric: number | null, basis: Basis, source: string): Species['shrinkage'] => ({
  radial: fig(radial, basis, source),
  tangential: fig(tangential, basis, source),
  volumetric: volumetric === null ? null : fig(volumetric, basis, source),
});

type Rest = Omit<Species, 'id' | 'name' | 'botanical' | 'group' | 'region' | 'grain' | 'movesBelow'> & { readonly movesBelow?: number };
const row = (
  id: string,
  name: string,
  botanical: string,
  group: Species['group'],
  region: Species['region'],
  grain: GrainKind,
  rest: Rest,
): Species => ({ id, name, botanical, group, region, grain, movesBelow: 30, ...rest });

export const SPECIES: readonly Species[] = [
  row('white_oak', 'white oak', 'Quercus alba', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(5.6, 10.5, 16.3, 'read', WH_SHRINK),
    change: {
      radial: fig(0.0018, 'read', `${WH_CHANGE} row "White Oak, commercial" (a group; not Q. alba alone)`),
      tangential: fig(0.00365, 'read', `${WH_CHANGE} row "White Oak, commercial" (a group; not Q. alba alone)`),
    },
    gravity: fig(0.68, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(12300, 'read-secondhand', WH_STRENGTH),
    bending: fig(105, 'read-secondhand', WH_STRENGTH),
    hardness: fig(6000, 'memory', WH_STRENGTH),
    note: 'Table 13-5 lists the commercial group; S_T 10.5 alone would give 0.00376, so use the printed group value',
  }),
  row('northern_red_oak', 'northern red oak', 'Quercus rubra', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4, 8.6, 13.7, 'memory', WH_SHRINK),
    change: {
      radial: fig(0.00158, 'read', `${WH_CHANGE} row "Red Oak, commercial" (a group)`),
      tangential: fig(0.00369, 'read', `${WH_CHANGE} row "Red Oak, commercial" (a group)`),
    },
    gravity: fig(0.63, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(12500, 'memory', WH_STRENGTH),
    bending: fig(99, 'read-secondhand', WH_STRENGTH),
    hardness: fig(5700, 'memory', WH_STRENGTH),
    note: 'group coefficient is larger than Q. rubra shrinkage implies (0.00304): do not assert C from S here',
  }),
  row('sugar_maple', 'sugar (hard) maple', 'Acer saccharum', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(4.8, 9.9, 14.7, 'read-secondhand', WH_SHRINK),
    change: { radial: fig(0.00165, 'read', WH_CHANGE), tangential: fig(0.00353, 'read', WH_CHANGE) },
    gravity: fig(0.63, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(12600, 'read-secondhand', WH_STRENGTH),
    bending: fig(109, 'read-secondhand', WH_STRENGTH),
    hardness: fig(6400, 'read-secondhand', WH_STRENGTH),
  }),
  row('red_maple', 'red (soft) maple', 'Acer rubrum', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(4, 8.2, 12.6, 'memory', WH_SHRINK),
    change: { radial: fig(0.00137, 'read', WH_CHANGE), tangential: fig(0.00289, 'read', WH_CHANGE) },
    gravity: fig(0.54, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(11300, 'read-secondhand', WH_STRENGTH),
    bending: fig(92, 'memory', WH_STRENGTH),
    hardness: fig(4200, 'memory', WH_STRENGTH),
  }),
  row('silver_maple', 'silver maple', 'Acer saccharinum', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(3, 7.2, 12.0, 'memory', WH_SHRINK),
    change: { radial: fig(0.00102, 'read', WH_CHANGE), tangential: fig(0.00252, 'read', WH_CHANGE) },
    gravity: fig(0.47, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(7900, 'memory', WH_STRENGTH),
    bending: fig(61, 'read-secondhand', WH_STRENGTH),
    hardness: fig(3100, 'memory', WH_STRENGTH),
  }),
  row('black_walnut', 'black walnut', 'Juglans nigra', 'hardwood', 'north america', 'semi-ring-porous', {
    shrinkage: shrinkage(5.5, 7.8, 12.8, 'read', WH_SHRINK),
    change: { radial: fig(0.0019, 'read', WH_CHANGE), tangential: fig(0.00274, 'read', WH_CHANGE) },
    gravity: fig(0.55, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(11600, 'read-secondhand', WH_STRENGTH),
    bending: fig(101, 'read-secondhand', WH_STRENGTH),
    hardness: fig(4500, 'memory', WH_STRENGTH),
  }),
  row('black_cherry', 'black cherry', 'Prunus serotina', 'hardwood', 'north america', 'semi-ring-porous', {
    shrinkage: shrinkage(3.7, 7.1, 11.5, 'read', WH_SHRINK),
    change: { radial: fig(0.00126, 'read', WH_CHANGE), tangential: fig(0.00248, 'read', WH_CHANGE) },
    gravity: fig(0.5, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(10300, 'read-secondhand', WH_STRENGTH),
    bending: fig(85, 'read-secondhand', WH_STRENGTH),
    hardness: fig(4200, 'read-secondhand', WH_STRENGTH),
  }),
  row('white_ash', 'white ash', 'Fraxinus americana', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.9, 7.8, 13.3, 'read', WH_SHRINK),
    change: { radial: fig(0.00169, 'read', WH_CHANGE), tangential: fig(0.00274, 'read', WH_CHANGE) },
    gravity: fig(0.6, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(12000, 'read-secondhand', WH_STRENGTH),
    bending: fig(103, 'read-secondhand', WH_STRENGTH),
    hardness: fig(5900, 'read-secondhand', WH_STRENGTH),
  }),
  row('yellow_birch', 'yellow birch', 'Betula alleghaniensis', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(7.3, 9.5, 16.8, 'read', WH_SHRINK),
    change: { radial: fig(0.00256, 'read', WH_CHANGE), tangential: fig(0.00338, 'read', WH_CHANGE) },
    gravity: fig(0.62, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(13900, 'read-secondhand', WH_STRENGTH),
    bending: fig(114, 'read-secondhand', WH_STRENGTH),
    hardness: fig(5600, 'memory', WH_STRENGTH),
  }),
  row('american_beech', 'American beech', 'Fagus grandifolia', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(5.5, 11.9, 17.2, 'read', WH_SHRINK),
    change: { radial: fig(0.0019, 'read', WH_CHANGE), tangential: fig(0.00431, 'read', WH_CHANGE) },
    gravity: fig(0.64, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(11900, 'read-secondhand', WH_STRENGTH),
    bending: fig(103, 'read-secondhand', WH_STRENGTH),
    hardness: fig(5800, 'memory', WH_STRENGTH),
  }),
  row('yellow_poplar', 'yellow-poplar (tulipwood)', 'Liriodendron tulipifera', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(4.6, 8.2, 12.7, 'read', WH_SHRINK),
    change: { radial: fig(0.00158, 'memory', WH_CHANGE), tangential: fig(0.00289, 'memory', WH_CHANGE) },
    gravity: fig(0.42, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(10900, 'read-secondhand', WH_STRENGTH),
    bending: fig(70, 'read-secondhand', WH_STRENGTH),
    hardness: fig(2400, 'memory', WH_STRENGTH),
  }),
  row('shagbark_hickory', 'hickory, true (shagbark)', 'Carya ovata', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(7, 10.5, 16.7, 'memory', WH_SHRINK),
    change: {
      radial: fig(0.00259, 'memory', `${WH_CHANGE} row "Hickory, true"; C_T reprinted by NWFA A200`),
      tangential: fig(0.00411, 'read-secondhand', `${WH_CHANGE} row "Hickory, true"; C_T reprinted by NWFA A200`),
    },
    gravity: fig(0.72, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(14900, 'read-secondhand', WH_STRENGTH),
    bending: fig(139, 'memory', WH_STRENGTH),
    hardness: fig(8400, 'memory-uncertain', WH_STRENGTH),
    note: 'other members of the group (mockernut) S 7.7/11.0/17.8 read',
  }),
  row('pecan_hickory', 'hickory, pecan', 'Carya illinoinensis', 'hardwood', 'north america', 'semi-ring-porous', {
    shrinkage: shrinkage(4.9, 8.9, 13.6, 'read', WH_SHRINK),
    change: { radial: fig(0.00169, 'read', WH_CHANGE), tangential: fig(0.00315, 'read', WH_CHANGE) },
    gravity: fig(0.66, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(11900, 'read-secondhand', WH_STRENGTH),
    bending: fig(94, 'memory', WH_STRENGTH),
    hardness: fig(8100, 'memory', WH_STRENGTH),
  }),
  row('basswood', 'basswood, American', 'Tilia americana', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(6.6, 9.3, 15.8, 'read', WH_SHRINK),
    change: { radial: fig(0.0023, 'read', WH_CHANGE), tangential: fig(0.0033, 'read', WH_CHANGE) },
    gravity: fig(0.37, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(10100, 'read-secondhand', WH_STRENGTH),
    bending: fig(60, 'memory', WH_STRENGTH),
    hardness: fig(1800, 'memory', WH_STRENGTH),
  }),
  row('sycamore_us', 'American sycamore', 'Platanus occidentalis', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(5, 8.4, 14.1, 'read', WH_SHRINK),
    change: { radial: fig(0.00172, 'read', WH_CHANGE), tangential: fig(0.00296, 'read', WH_CHANGE) },
    gravity: fig(0.49, 'memory', WH_STRENGTH),
    stiffness: fig(9800, 'memory', WH_STRENGTH),
    bending: fig(69, 'memory', WH_STRENGTH),
    hardness: fig(3400, 'memory', WH_STRENGTH),
  }),
  row('american_elm', 'American elm', 'Ulmus americana', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.2, 9.5, 14.6, 'read', WH_SHRINK),
    change: { radial: fig(0.00144, 'read', WH_CHANGE), tangential: fig(0.00338, 'read', WH_CHANGE) },
    gravity: fig(0.5, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(9200, 'read-secondhand', WH_STRENGTH),
    bending: fig(81, 'memory', WH_STRENGTH),
    hardness: fig(3700, 'memory', WH_STRENGTH),
  }),
  row('quaking_aspen', 'quaking aspen', 'Populus tremuloides', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(3.5, 6.7, 11.5, 'read', WH_SHRINK),
    change: { radial: fig(0.00119, 'read', WH_CHANGE), tangential: fig(0.00234, 'read', WH_CHANGE) },
    gravity: fig(0.38, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(8100, 'read-secondhand', WH_STRENGTH),
    bending: fig(58, 'memory', WH_STRENGTH),
    hardness: fig(1600, 'memory', WH_STRENGTH),
  }),
  row('butternut', 'butternut', 'Juglans cinerea', 'hardwood', 'north america', 'semi-ring-porous', {
    shrinkage: shrinkage(3.4, 6.4, 10.6, 'read', WH_SHRINK),
    change: { radial: fig(0.00116, 'read', WH_CHANGE), tangential: fig(0.00223, 'read', WH_CHANGE) },
    gravity: fig(0.38, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(8100, 'read-secondhand', WH_STRENGTH),
    bending: fig(56, 'memory', WH_STRENGTH),
    hardness: fig(2200, 'memory', WH_STRENGTH),
  }),
  row('red_alder', 'red alder', 'Alnus rubra', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(4.4, 7.3, 12.6, 'read', WH_SHRINK),
    change: { radial: fig(0.00151, 'read', WH_CHANGE), tangential: fig(0.00256, 'read', WH_CHANGE) },
    gravity: fig(0.41, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(9500, 'read-secondhand', WH_STRENGTH),
    bending: fig(68, 'memory', WH_STRENGTH),
    hardness: fig(2600, 'memory', WH_STRENGTH),
  }),
  row('sweetgum', 'sweetgum', 'Liquidambar styraciflua', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(5.3, 10.2, 15.8, 'read', WH_SHRINK),
    change: { radial: fig(0.00183, 'read', WH_CHANGE), tangential: fig(0.00365, 'read', WH_CHANGE) },
    gravity: fig(0.52, 'memory', WH_STRENGTH),
    stiffness: fig(11300, 'memory', WH_STRENGTH),
    bending: fig(86, 'memory', WH_STRENGTH),
    hardness: fig(3800, 'memory', WH_STRENGTH),
  }),
  row('american_chestnut', 'American chestnut', 'Castanea dentata', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(3.4, 6.7, 11.6, 'read', WH_SHRINK),
    change: { radial: fig(0.00116, 'read', WH_CHANGE), tangential: fig(0.00234, 'read', WH_CHANGE) },
    gravity: fig(0.43, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(8500, 'read-secondhand', WH_STRENGTH),
    bending: fig(59, 'memory', WH_STRENGTH),
    hardness: fig(2400, 'memory', WH_STRENGTH),
  }),
  row('eastern_white_pine', 'eastern white pine', 'Pinus strobus', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(2.1, 6.1, 8.2, 'memory', WH_SHRINK),
    change: { radial: fig(0.00071, 'memory', WH_CHANGE), tangential: fig(0.00212, 'memory', WH_CHANGE) },
    gravity: fig(0.35, 'memory', WH_STRENGTH),
    stiffness: fig(8500, 'memory', WH_STRENGTH),
    bending: fig(59, 'memory', WH_STRENGTH),
    hardness: fig(1700, 'memory', WH_STRENGTH),
  }),
  row('loblolly_pine', 'southern yellow pine (loblolly)', 'Pinus taeda', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(4.8, 7.4, 12.3, 'memory', WH_SHRINK),
    change: { radial: fig(0.00165, 'memory', WH_CHANGE), tangential: fig(0.00259, 'memory', WH_CHANGE) },
    gravity: fig(0.51, 'memory', WH_STRENGTH),
    stiffness: fig(12300, 'memory', WH_STRENGTH),
    bending: fig(88, 'memory', WH_STRENGTH),
    hardness: fig(3100, 'memory', WH_STRENGTH),
    note: 'NWFA reprint gives 0.00265 for "southern yellow pine" as a group (read)',
  }),
  row('longleaf_pine', 'longleaf pine', 'Pinus palustris', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(5.1, 7.5, 12.2, 'memory', WH_SHRINK),
    change: {
      radial: fig(0.00176, 'memory', `${WH_CHANGE}; C_T as "heart pine 0.00263" in NWFA A200 reprint`),
      tangential: fig(0.00263, 'read-secondhand', `${WH_CHANGE}; C_T as "heart pine 0.00263" in NWFA A200 reprint`),
    },
    gravity: fig(0.59, 'read-secondhand', WH_STRENGTH),
    stiffness: fig(13700, 'read-secondhand', WH_STRENGTH),
    bending: fig(100, 'read-secondhand', WH_STRENGTH),
    hardness: fig(3900, 'memory', WH_STRENGTH),
  }),
  row('douglas_fir_coast', 'Douglas-fir (coast)', 'Pseudotsuga menziesii', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(4.8, 7.6, 12.4, 'read', WH_SHRINK),
    change: {
      radial: fig(0.00165, 'memory', `${WH_CHANGE}; C_T reprinted by NWFA A200`),
      tangential: fig(0.00267, 'read-secondhand', `${WH_CHANGE}; C_T reprinted by NWFA A200`),
    },
    gravity: fig(0.48, 'read-secondhand', `${WH_STRENGTH}, as given by Oregon State University`),
    stiffness: fig(13400, 'read-secondhand', `${WH_STRENGTH}, as given by Oregon State University`),
    bending: fig(85, 'read-secondhand', `${WH_STRENGTH}, as given by Oregon State University`),
    hardness: fig(3200, 'read-secondhand', `${WH_STRENGTH}, as given by Oregon State University`),
  }),
  row('western_redcedar', 'western redcedar', 'Thuja plicata', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(2.4, 5, 6.8, 'read', WH_SHRINK),
    change: { radial: fig(0.00111, 'memory', WH_CHANGE), tangential: fig(0.00234, 'memory', WH_CHANGE) },
    movesBelow: 22,
    gravity: fig(0.32, 'memory', WH_STRENGTH),
    stiffness: fig(7700, 'memory', WH_STRENGTH),
    bending: fig(51.7, 'memory', WH_STRENGTH),
    hardness: fig(1600, 'memory', WH_STRENGTH),
    note: 'Table 13-5 starts shrinkage at 22% MC for this species (memory; C reproduces exactly with 22)',
  }),
  row('redwood_old', 'redwood, old growth', 'Sequoia sempervirens', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(2.6, 4.4, 6.8, 'memory', WH_SHRINK),
    change: { radial: fig(0.0012, 'memory', WH_CHANGE), tangential: fig(0.00205, 'memory', WH_CHANGE) },
    movesBelow: 22,
    gravity: fig(0.4, 'read', WH_STRENGTH),
    stiffness: fig(9200, 'read', WH_STRENGTH),
    bending: fig(69, 'read', WH_STRENGTH),
    hardness: fig(2100, 'memory', WH_STRENGTH),
    note: 'shrinkage starts at 22% MC in Table 13-5',
  }),
  row('redwood_young', 'redwood, young growth', 'Sequoia sempervirens', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(2.2, 4.9, 7.0, 'memory', WH_SHRINK),
    change: { radial: fig(0.00101, 'memory', WH_CHANGE), tangential: fig(0.00229, 'memory', WH_CHANGE) },
    movesBelow: 22,
    gravity: fig(0.35, 'read', WH_STRENGTH),
    stiffness: fig(7600, 'read', WH_STRENGTH),
    bending: fig(54, 'read', WH_STRENGTH),
    hardness: fig(1900, 'memory', WH_STRENGTH),
  }),
  row('sitka_spruce', 'Sitka spruce', 'Picea sitchensis', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(4.3, 7.5, 11.5, 'memory', WH_SHRINK),
    change: { radial: fig(0.00148, 'memory', WH_CHANGE), tangential: fig(0.00263, 'memory', WH_CHANGE) },
    gravity: fig(0.4, 'memory-uncertain', 'Wood Handbook FPL-GTR-113 (1999) Table 4-3a'),
    stiffness: fig(10800, 'memory-uncertain', 'Wood Handbook FPL-GTR-113 (1999) Table 4-3a'),
    bending: fig(70, 'memory-uncertain', 'Wood Handbook FPL-GTR-113 (1999) Table 4-3a'),
    hardness: fig(2300, 'memory-uncertain', 'Wood Handbook FPL-GTR-113 (1999) Table 4-3a'),
    note: 'strength row is the 1999 edition from memory; the 2010 edition prints lower values; do not assert',
  }),
  row('red_pine', 'red pine', 'Pinus resinosa', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(3.8, 7.2, 11.3, 'memory', WH_SHRINK),
    gravity: fig(0.46, 'read', WH_STRENGTH),
    stiffness: fig(11200, 'read', WH_STRENGTH),
    bending: fig(76, 'read', WH_STRENGTH),
  }),
  row('ponderosa_pine', 'ponderosa pine', 'Pinus ponderosa', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(3.9, 6.2, 9.7, 'memory', WH_SHRINK),
    gravity: fig(0.4, 'read', WH_STRENGTH),
    stiffness: fig(8900, 'read', WH_STRENGTH),
    bending: fig(65, 'read', WH_STRENGTH),
  }),
  row('mahogany', 'mahogany, true', 'Swietenia macrophylla', 'hardwood', 'imported', 'diffuse-porous', {
    shrinkage: shrinkage(3, 4.1, 7.8, 'read', WH_IMPORT),
    change: {
      radial: fig(0.00172, 'memory', `${WH_CHANGE} (older, larger shrinkage figures lie behind this row)`),
      tangential: fig(0.00238, 'memory', `${WH_CHANGE} (older, larger shrinkage figures lie behind this row)`),
    },
    gravity: fig(
      0.45,
      'read-secondhand',
      'Wood Handbook FPL-GTR-190 Table 5-5a/b via a quoted 1999 Table 4-5b (11,500 psi; 1.50e6 psi; 800 lbf)',
    ),
    stiffness: fig(
      10300,
      'read-secondhand',
      'Wood Handbook FPL-GTR-190 Table 5-5a/b via a quoted 1999 Table 4-5b (11,500 psi; 1.50e6 psi; 800 lbf)',
    ),
    bending: fig(
      79.3,
      'read-secondhand',
      'Wood Handbook FPL-GTR-190 Table 5-5a/b via a quoted 1999 Table 4-5b (11,500 psi; 1.50e6 psi; 800 lbf)',
    ),
    hardness: fig(
      3560,
      'read-secondhand',
      'Wood Handbook FPL-GTR-190 Table 5-5a/b via a quoted 1999 Table 4-5b (11,500 psi; 1.50e6 psi; 800 lbf)',
    ),
    note: 'SG is at green volume. C row does not follow from 3.0/4.1 (it fits 3.7/5.1 with 22%): keep the two sets apart',
  }),
  row('teak', 'teak', 'Tectona grandis', 'hardwood', 'imported', 'ring-porous', {
    shrinkage: shrinkage(2.5, 5.8, 7.0, 'memory', WH_IMPORT),
    change: {
      radial: fig(0.00101, 'memory', `${WH_CHANGE}; C_T reprinted by NWFA A200`),
      tangential: fig(0.00186, 'read-secondhand', `${WH_CHANGE}; C_T reprinted by NWFA A200`),
    },
    movesBelow: 22,
    gravity: fig(0.55, 'read', 'Wood Handbook FPL-GTR-190 Table 5-5a/b (14,600 psi; 1.55e6 psi; 1,000 lbf)'),
    stiffness: fig(10700, 'read', 'Wood Handbook FPL-GTR-190 Table 5-5a/b (14,600 psi; 1.55e6 psi; 1,000 lbf)'),
    bending: fig(100.7, 'read', 'Wood Handbook FPL-GTR-190 Table 5-5a/b (14,600 psi; 1.55e6 psi; 1,000 lbf)'),
    hardness: fig(4450, 'read', 'Wood Handbook FPL-GTR-190 Table 5-5a/b (14,600 psi; 1.55e6 psi; 1,000 lbf)'),
    note: 'SG at green volume. C row fits the older S 2.2/4.0 with 22% (0.00101/0.00186), not 2.5/5.8',
  }),
  row('sapele', 'sapele', 'Entandrophragma cylindricum', 'hardwood', 'imported', 'diffuse-porous', {
    shrinkage: shrinkage(
      4.6,
      7.4,
      14.0,
      'read',
      'Chudnoff 1984, Tropical Timbers of the World, USDA Ag. Handbook 607; same in Wood Handbook Table 4-4 (memory)',
    ),
    gravity: fig(0.55, 'read', 'Chudnoff 1984 (16,500 psi; 1.70e6 psi; Janka 1,500 lbf; 2-cm specimens)'),
    stiffness: fig(11700, 'read', 'Chudnoff 1984 (16,500 psi; 1.70e6 psi; Janka 1,500 lbf; 2-cm specimens)'),
    bending: fig(113.8, 'read', 'Chudnoff 1984 (16,500 psi; 1.70e6 psi; Janka 1,500 lbf; 2-cm specimens)'),
    hardness: fig(6670, 'read', 'Chudnoff 1984 (16,500 psi; 1.70e6 psi; Janka 1,500 lbf; 2-cm specimens)'),
    note: 'SG at green volume. DIN 68100 differential: 0.24 radial / 0.32 tangential % per % MC (read)',
  }),
  row('iroko', 'iroko', 'Milicia excelsa / M. regia', 'hardwood', 'imported', 'diffuse-porous', {
    shrinkage: shrinkage(3.5, 5.4, null, 'read', 'CIRAD Tropix sheet IROKO'),
    change: { radial: fig(0.00153, 'memory-uncertain', WH_CHANGE), tangential: fig(0.00205, 'memory-uncertain', WH_CHANGE) },
    movesBelow: 23,
    gravity: fig(0.64, 'read', 'CIRAD Tropix sheet IROKO (density g/cm3 at 12%; static bending; mean values)'),
    stiffness: fig(12840, 'read', 'CIRAD Tropix sheet IROKO (density g/cm3 at 12%; static bending; mean values)'),
    bending: fig(87, 'read', 'CIRAD Tropix sheet IROKO (density g/cm3 at 12%; static bending; mean values)'),
    note: 'Wood Handbook Table 4-4 gives 2.8/3.8/8.8 (memory); Tropix FSP 23%. DIN 68100 differential 0.19/0.28 (read)',
  }),
  row('european_oak', 'European oak', 'Quercus robur / Q. petraea', 'hardwood', 'europe', 'ring-porous', {
    shrinkage: shrinkage(4.3, 8.9, null, 'read', 'DIN 68100 total shrinkage ranges R 4.0-4.6, T 7.8-10.0 (mid-points used)'),
    change: { radial: fig(0.0016, 'read', DIN_CHANGE), tangential: fig(0.0036, 'read', DIN_CHANGE) },
    gravity: fig(0.71, 'memory-uncertain', DIN_STRENGTH),
    stiffness: fig(13000, 'memory-uncertain', DIN_STRENGTH),
    bending: fig(95, 'memory-uncertain', DIN_STRENGTH),
    note: 'mid-points of the published ranges',
  }),
  row('european_beech', 'European beech', 'Fagus sylvatica', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(5.8, 11.8, null, 'read', `${PANEL}; the same 5.8/11.8 in the DIN 68100 list (read)`),
    change: { radial: fig(0.002, 'read', DIN_CHANGE), tangential: fig(0.0041, 'read', DIN_CHANGE) },
    gravity: fig(0.71, 'memory-uncertain', DIN_STRENGTH),
    stiffness: fig(14000, 'memory-uncertain', DIN_STRENGTH),
    bending: fig(120, 'memory-uncertain', DIN_STRENGTH),
  }),
  row('european_ash', 'European ash', 'Fraxinus excelsior', 'hardwood', 'europe', 'ring-porous', {
    shrinkage: shrinkage(5.2, 8.3, null, 'read', `${PANEL}; DIN 68100 ranges R 4.6-5.0, T 8.0-8.4 (read)`),
    change: { radial: fig(0.0021, 'read', DIN_CHANGE), tangential: fig(0.0038, 'read', DIN_CHANGE) },
    gravity: fig(0.7, 'memory-uncertain', DIN_STRENGTH),
    stiffness: fig(13000, 'memory-uncertain', DIN_STRENGTH),
    bending: fig(105, 'memory-uncertain', DIN_STRENGTH),
  }),
  row('scots_pine', 'Scots pine (European redwood)', 'Pinus sylvestris', 'softwood', 'europe', 'softwood', {
    shrinkage: shrinkage(4, 7.7, null, 'read', `${PANEL}; DIN 68100 ranges R 3.3-4.5, T 7.5-8.7 (read)`),
    change: { radial: fig(0.0019, 'read', DIN_CHANGE), tangential: fig(0.0036, 'read', DIN_CHANGE) },
    gravity: fig(0.52, 'memory-uncertain', DIN_STRENGTH),
    stiffness: fig(11000, 'memory-uncertain', DIN_STRENGTH),
    bending: fig(85, 'memory-uncertain', DIN_STRENGTH),
  }),
  row('norway_spruce', 'Norway/European spruce', 'Picea abies', 'softwood', 'europe', 'softwood', {
    shrinkage: shrinkage(3.6, 7.4, null, 'read', `${PANEL}; DIN 68100 ranges R 3.5-3.7, T 7.8-8.0 (read)`),
    change: { radial: fig(0.0019, 'read', DIN_CHANGE), tangential: fig(0.0039, 'read', DIN_CHANGE) },
    gravity: fig(0.46, 'memory-uncertain', DIN_STRENGTH),
    stiffness: fig(11000, 'memory-uncertain', DIN_STRENGTH),
    bending: fig(80, 'memory-uncertain', DIN_STRENGTH),
  }),
  row('lime', 'lime (linden)', 'Tilia spp.', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(6.8, 9.5, null, 'read', PANEL),
  }),
  row('european_walnut', 'European walnut', 'Juglans regia', 'hardwood', 'europe', 'semi-ring-porous', {
    shrinkage: shrinkage(4.3, 6.4, null, 'read', `${PANEL}; DIN 68100 ~5.4/~7.5 (read)`),
    change: { radial: fig(0.0018, 'read', DIN_CHANGE), tangential: fig(0.0029, 'read', DIN_CHANGE) },
  }),
  row('european_larch', 'European larch', 'Larix decidua', 'softwood', 'europe', 'softwood', {
    shrinkage: shrinkage(3.3, 7.8, null, 'read', `${PANEL} (Larix spp.)`),
    change: { radial: fig(0.0014, 'read', DIN_CHANGE), tangential: fig(0.003, 'read', DIN_CHANGE) },
  }),
  row('european_elm', 'elm', 'Ulmus spp.', 'hardwood', 'europe', 'ring-porous', {
    shrinkage: shrinkage(5.2, 9.1, null, 'read', `${PANEL}; DIN 68100 ranges R 4.6-4.8, T 6.9-8.3 (read)`),
    change: { radial: fig(0.002, 'read', DIN_CHANGE), tangential: fig(0.0023, 'read', DIN_CHANGE) },
  }),
  row('european_birch', 'European birch', 'Betula pendula / B. pubescens', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(5.3, 7.8, null, 'read', 'DIN 68100 list, ~5.3/~7.8'),
    change: { radial: fig(0.0029, 'read', DIN_CHANGE), tangential: fig(0.0041, 'read', DIN_CHANGE) },
  }),
  row('sycamore_eu', 'European sycamore/maple', 'Acer pseudoplatanus', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(3, 8, null, 'read', 'DIN 68100 list "Ahorn" ~3.0/~8.0'),
  }),
  row('black_locust', 'black locust', 'Robinia pseudoacacia', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.6, 7.2, 10.2, 'memory', WH_SHRINK),
    gravity: fig(0.69, 'memory', WH_STRENGTH),
  }),
  row('honeylocust', 'honeylocust', 'Gleditsia triacanthos', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.2, 6.6, 10.8, 'memory', WH_SHRINK),
    gravity: fig(0.6, 'memory-uncertain', WH_STRENGTH),
  }),
  row('hackberry', 'hackberry', 'Celtis occidentalis', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.8, 8.9, 13.8, 'memory', WH_SHRINK),
    gravity: fig(0.53, 'memory', WH_STRENGTH),
  }),
  row('sassafras', 'sassafras', 'Sassafras albidum', 'hardwood', 'north america', 'ring-porous', {
    shrinkage: shrinkage(4.0, 6.2, 10.3, 'memory', WH_SHRINK),
    gravity: fig(0.46, 'memory', WH_STRENGTH),
  }),
  row('american_holly', 'American holly', 'Ilex opaca', 'hardwood', 'north america', 'diffuse-porous', {
    shrinkage: shrinkage(4.8, 9.9, 16.9, 'memory', WH_SHRINK),
    gravity: fig(0.56, 'memory', WH_STRENGTH),
  }),
  row('persimmon', 'persimmon', 'Diospyros virginiana', 'hardwood', 'north america', 'semi-ring-porous', {
    shrinkage: shrinkage(7.9, 11.2, 19.1, 'memory', WH_SHRINK),
    gravity: fig(0.74, 'memory-uncertain', WH_STRENGTH),
  }),
  row('eastern_redcedar', 'eastern redcedar', 'Juniperus virginiana', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(3.1, 4.7, 7.8, 'memory', WH_SHRINK),
    gravity: fig(0.47, 'memory', WH_STRENGTH),
  }),
  row('baldcypress', 'baldcypress', 'Taxodium distichum', 'softwood', 'north america', 'softwood', {
    shrinkage: shrinkage(3.8, 6.2, 10.5, 'memory', WH_SHRINK),
    gravity: fig(0.46, 'memory', WH_STRENGTH),
  }),
  row('pear', 'pear', 'Pyrus communis', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(3.9, 11.3, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.69, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
  row('apple', 'apple', 'Malus domestica', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(5.6, 10.1, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.75, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
  row('european_cherry', 'European cherry', 'Prunus avium', 'hardwood', 'europe', 'semi-ring-porous', {
    shrinkage: shrinkage(5.0, 8.6, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.6, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
  row('hornbeam', 'hornbeam', 'Carpinus betulus', 'hardwood', 'europe', 'diffuse-porous', {
    shrinkage: shrinkage(6.8, 11.5, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.73, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
  row('sweet_chestnut', 'sweet chestnut', 'Castanea sativa', 'hardwood', 'europe', 'ring-porous', {
    shrinkage: shrinkage(4.3, 6.4, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.56, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
  row('yew', 'yew', 'Taxus baccata', 'softwood', 'europe', 'softwood', {
    shrinkage: shrinkage(3.7, 5.3, null, 'memory-uncertain', 'trade and botanical literature, from memory'),
    gravity: fig(0.67, 'memory-uncertain', 'trade and botanical literature, from memory'),
  }),
];
