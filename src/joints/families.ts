/** The joints that the shop knows: one folder each, nothing registered anywhere else. */
import type { Family } from './family.ts';
import { mortiseTenon } from './mortise-tenon/mortise-tenon.ts';
import { tuskTenon } from './tusk-tenon/tusk-tenon.ts';
import { looseTenon } from './loose-tenon/loose-tenon.ts';
import { bridle } from './bridle/bridle.ts';
import { peg } from './peg/peg.ts';
import { roundTenon } from './round-tenon/round-tenon.ts';
import { housing } from './housing/housing.ts';
import { slidingDovetail } from './sliding-dovetail/sliding-dovetail.ts';
import { rabbet } from './rabbet/rabbet.ts';
import { dovetail } from './dovetail/dovetail.ts';
import { grooveTongue } from './groove-tongue/groove-tongue.ts';
import { looseSpline } from './loose-spline/loose-spline.ts';
import { breadboard } from './breadboard/breadboard.ts';
import { button } from './button/button.ts';
import { hinge } from './hinge/hinge.ts';
import { edgeJoint } from './edge-joint/edge-joint.ts';
import { lamination } from './lamination/lamination.ts';
import { ruleJoint } from './rule-joint/rule-joint.ts';
import { lap } from './lap/lap.ts';
import { cockBead } from './cock-bead/cock-bead.ts';
import { mitre } from './mitre/mitre.ts';
import { glazingBar } from './glazing-bar/glazing-bar.ts';
import { screw } from './screw/screw.ts';
import { slottedCleat } from './slotted-cleat/slotted-cleat.ts';
import { glueBlock } from './glue-block/glue-block.ts';
import { shelfPeg } from './shelf-peg/shelf-peg.ts';
import { bedBolt } from './bed-bolt/bed-bolt.ts';
import { wallFixing } from './wall-fixing/wall-fixing.ts';
import { bracketFoot } from './bracket-foot/bracket-foot.ts';
import { moulding } from './moulding/moulding.ts';

const list = [
  mortiseTenon,
  tuskTenon,
  looseTenon,
  bridle,
  peg,
  roundTenon,
  housing,
  dovetail,
  slidingDovetail,
  rabbet,
  grooveTongue,
  looseSpline,
  breadboard,
  button,
  hinge,
  edgeJoint,
  lamination,
  ruleJoint,
  lap,
  cockBead,
  mitre,
  glazingBar,
  screw,
  slottedCleat,
  glueBlock,
  shelfPeg,
  bedBolt,
  wallFixing,
  bracketFoot,
  moulding,
] as unknown as readonly Family[];
export const families: Readonly<Record<string, Family>> = Object.fromEntries(list.map((f) => [f.id, f]));
