/** The joints that the shop knows: one folder each, nothing registered anywhere else. */
import type { Family } from './family.ts';
import { mortiseTenon } from './mortise-tenon/mortise-tenon.ts';
import { peg } from './peg/peg.ts';
import { roundTenon } from './round-tenon/round-tenon.ts';
import { housing } from './housing/housing.ts';
import { dovetail } from './dovetail/dovetail.ts';
import { grooveTongue } from './groove-tongue/groove-tongue.ts';
import { breadboard } from './breadboard/breadboard.ts';
import { button } from './button/button.ts';
import { edgeJoint } from './edge-joint/edge-joint.ts';
import { lamination } from './lamination/lamination.ts';

const list = [
  mortiseTenon,
  peg,
  roundTenon,
  housing,
  dovetail,
  grooveTongue,
  breadboard,
  button,
  edgeJoint,
  lamination,
] as unknown as readonly Family[];
export const families: Readonly<Record<string, Family>> = Object.fromEntries(list.map((f) => [f.id, f]));
