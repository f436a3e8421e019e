/** Timbers of Europe, and others that the trade imports. */
import { type Species, WH_IMPORT, WH_CHANGE, PANEL, DIN_CHANGE, DIN_STRENGTH, fig, row, shrinkage } from './figures.ts';

export const ABROAD: readonly Species[] = [
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
