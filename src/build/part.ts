/** What the build floor hands up: parts in place with their records, and joints as made. */
import type { Box } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import type { Axis, Vec3 } from '../geom/vec3.ts';
import type { ExtraPart, Family, Made, Place, Reason, Refusal } from '../joints/family.ts';
import type { Meeting } from '../joints/meeting.ts';
import type { PartDoc } from '../model/document.ts';
import type { Problem } from '../model/problem.ts';
import type { Feature, PartRecord } from '../model/record.ts';
import type { ShapeSays } from '../shapes/shape.ts';
import type { Instance, Instances } from './instances.ts';
import type { Resolution, Resolved } from './resolve.ts';

/** A part before any joint: its stock, trims and shapes in its record frame, which stands at its datum corner. */
export type StockPart = {
  readonly resolved: Resolved;
  readonly doc: PartDoc;
  /** The record frame seen from the world. */
  readonly frame: Frame;
  /** The record frame's origin in the part's own frame. */
  readonly datum: Vec3;
  readonly grain: Axis;
  readonly stock: Box;
  readonly features: readonly Feature[];
  readonly says: readonly ShapeSays[];
  /** Equal numbers: equal wood with equal marks, shaped alike. */
  readonly blank: number;
};
/** Where a feature of a record came from; null for shapes and trims. */
export type Origin = { readonly joint: string; readonly place: number } | null;
/** A part in its place. `box` is its box in its own frame; `record` lives in the record frame, whose place in the world is `frame`. */
export type Part = {
  readonly path: string;
  readonly id: string;
  readonly words: string;
  readonly wood: string;
  readonly instance: Instance;
  readonly doc: PartDoc;
  readonly group: string | null;
  readonly resolved: Resolved;
  readonly record: PartRecord;
  /** Record frame seen from the world; may be left-handed. */
  readonly frame: Frame;
  /** For each feature of the record, in its order. */
  readonly origins: readonly Origin[];
  /** Boxes of the pieces it is glued up from, in the record frame; one when it is of one piece. */
  readonly pieces: readonly Box[];
  /** What its shapes tell a maker to set tools by: 'angle from the face left straight', 'radius of the arch'. */
  readonly says: readonly ShapeSays[];
  /** As built from its frozen record: what the document would make of it now, when that differs. */
  readonly frozen?: { readonly on: string; readonly now: PartRecord };
};
/** A peg, wedge, button or screw that a joint brings along. */
export type Extra = {
  readonly path: string;
  readonly words: string;
  readonly joint: string;
  readonly place: number;
  readonly record: PartRecord;
  readonly frame: Frame;
  readonly hardware: boolean;
  readonly enters: Vec3;
  readonly part: ExtraPart;
};
export type JointPlace = {
  readonly joint: string;
  /** From 1, through all places of the joint, stars expanded. */
  readonly place: number;
  /** Which entry of the document's list it comes from. */
  readonly entry: number;
  readonly family: Family;
  readonly roles: Readonly<Record<string, readonly string[]>>;
  readonly meeting: Meeting;
  readonly input: Place<Record<string, unknown>>;
  readonly sizes: Record<string, unknown> | null;
  readonly because: Readonly<Record<string, Reason>> | null;
  readonly made: Made | null;
  /** Why it could not be made: refused by the family, or the parts do not meet: how far apart they are, mm; below 0 how deep one stands in the other. */
  readonly refused: Refusal<Record<string, unknown>> | { readonly apart: number } | null;
};
export type Build = {
  readonly parts: ReadonlyMap<string, Part>;
  readonly extras: ReadonlyMap<string, Extra>;
  readonly places: readonly JointPlace[];
  readonly resolution: Resolution;
  readonly instances: Instances;
  readonly problems: readonly Problem[];
};
export const placePath = (p: { readonly joint: string; readonly place: number }): string => `${p.joint}/${p.place}`;
/** 'enter', or 'through#1' where a role has many parts: how Made names them. */
export const roleKey = (family: Family, role: string, index: number): string =>
  family.roles[role]?.count === 'many' ? `${role}#${index}` : role;
