/**
 * The joints that the shop knows: one folder each, nothing registered anywhere else. Each is loaded when a piece first has it, so that a
 * piece waits for its own joints only, however many there are.
 */
import type { Family } from './family.ts';

const loaders = {
  mortise_tenon: async () => (await import('./mortise-tenon/mortise-tenon.ts')).mortiseTenon,
  tusk_tenon: async () => (await import('./tusk-tenon/tusk-tenon.ts')).tuskTenon,
  loose_tenon: async () => (await import('./loose-tenon/loose-tenon.ts')).looseTenon,
  bridle: async () => (await import('./bridle/bridle.ts')).bridle,
  peg: async () => (await import('./peg/peg.ts')).peg,
  round_tenon: async () => (await import('./round-tenon/round-tenon.ts')).roundTenon,
  housing: async () => (await import('./housing/housing.ts')).housing,
  dovetail: async () => (await import('./dovetail/dovetail.ts')).dovetail,
  sliding_dovetail: async () => (await import('./sliding-dovetail/sliding-dovetail.ts')).slidingDovetail,
  rabbet: async () => (await import('./rabbet/rabbet.ts')).rabbet,
  groove_tongue: async () => (await import('./groove-tongue/groove-tongue.ts')).grooveTongue,
  loose_spline: async () => (await import('./loose-spline/loose-spline.ts')).looseSpline,
  breadboard: async () => (await import('./breadboard/breadboard.ts')).breadboard,
  button: async () => (await import('./button/button.ts')).button,
  hinge: async () => (await import('./hinge/hinge.ts')).hinge,
  edge_joint: async () => (await import('./edge-joint/edge-joint.ts')).edgeJoint,
  lamination: async () => (await import('./lamination/lamination.ts')).lamination,
  rule_joint: async () => (await import('./rule-joint/rule-joint.ts')).ruleJoint,
  lap: async () => (await import('./lap/lap.ts')).lap,
  cock_bead: async () => (await import('./cock-bead/cock-bead.ts')).cockBead,
  mitre: async () => (await import('./mitre/mitre.ts')).mitre,
  glazing_bar: async () => (await import('./glazing-bar/glazing-bar.ts')).glazingBar,
  screw: async () => (await import('./screw/screw.ts')).screw,
  slotted_cleat: async () => (await import('./slotted-cleat/slotted-cleat.ts')).slottedCleat,
  glue_block: async () => (await import('./glue-block/glue-block.ts')).glueBlock,
  shelf_peg: async () => (await import('./shelf-peg/shelf-peg.ts')).shelfPeg,
  bed_bolt: async () => (await import('./bed-bolt/bed-bolt.ts')).bedBolt,
  wall_fixing: async () => (await import('./wall-fixing/wall-fixing.ts')).wallFixing,
  bracket_foot: async () => (await import('./bracket-foot/bracket-foot.ts')).bracketFoot,
  moulding: async () => (await import('./moulding/moulding.ts')).moulding,
};
/** Id of a family → what loads it. */
export const familyLoaders = loaders as unknown as Readonly<Record<string, () => Promise<Family>>>;
