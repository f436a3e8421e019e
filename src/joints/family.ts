/** The contract that every joint family fills: one folder each, pure functions and data. */
import type { Axis3 } from './surface.ts';
import type { Frame } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';
import type { Finding, Json, Source } from '../model/finding.ts';
import type { Feature, PartRecord } from '../model/record.ts';
import type { Meeting, Plane, Polygon } from './meeting.ts';

/** A parameter of a family. Lengths and angles reach the family in mm and radians, after their expressions are resolved. */
export type Field = {
  /** 'place' is a coordinate that the entering part reads on its own axes; it reaches the family as the meeting's y. */
  readonly kind: 'length' | 'place' | 'angle' | 'count' | 'ratio' | 'choice';
  /** In the maker's words: 'tenon thickness'. */
  readonly words: string;
  /** For choices, the values and what each means; the first is the default where the family proposes none. */
  readonly options?: Readonly<Record<string, string>>;
};
export type Fields<P> = {
  readonly [K in keyof P]: Field;
};
/** Old parameters to new ones, with a sample that a test puts through. */
export type FamilyUpgrade = {
  readonly to: number;
  readonly up: (old: Record<string, Json>) => Record<string, Json>;
  readonly sample: Record<string, Json>;
};

/** Why a size was proposed: the rule in words, its source, and the range where sources differ. */
export type Reason = { readonly rule: string; readonly source: Source; readonly range?: readonly [number, number] };
/** The joint cannot be made so: becomes a finding, its `nearest` a remedy. Numbers in mm, radians or counts. */
export type Refusal<P> = { readonly cannot: string; readonly limit: number; readonly asked: number; readonly nearest?: Partial<P> };
export const isRefusal = <P>(x: object): x is Refusal<P> => 'cannot' in x;

/** The cutters and habits of the shop that change geometry: part of the document, with sourced defaults. */
export type Cutting = {
  /** Mortise chisels and router bits owned, mm across. */
  readonly mortiseWidths: readonly number[];
  /** Round bits and dowel sizes owned, mm. */
  readonly bits: readonly number[];
  /** Groove and housing cutters owned, mm. */
  readonly grooveWidths: readonly number[];
};
/** One place of a joint as the family sees it. Siblings: places of the same joint in the same receiving part; their meetings, seen in this meeting's frame. */
export type Place<P> = { readonly meeting: Meeting; readonly siblings: readonly Meeting[]; readonly set: Partial<P> };

export type FitClass = 'press' | 'tap' | 'slip' | 'loose' | 'gap';
/** One of the two surfaces of a contact, in the meeting frame. */
export type Side = {
  readonly role: string;
  /** Index within a role of count 'many', or of the extra part when role is 'extra'. */
  readonly index?: number;
  readonly feature: string;
  readonly face: string;
  readonly surface:
    | { readonly plane: Plane; readonly patch: Polygon; readonly patchFrame: Frame }
    | { readonly round: Axis3; readonly r: number; readonly length: number };
};
/** How a contact is held: glued along its length, dry, pinned by a peg, free to slide. */
export type Hold = 'glued' | 'dry' | 'pinned' | 'sliding';
export type Contact = {
  readonly name: string;
  readonly between: readonly [Side, Side];
  /** How tight it is meant to be. */
  readonly fit: FitClass;
  /** Distance meant between the two surfaces, mm (0 touching; a mortise's spare depth is above 0). */
  readonly meant: number;
  readonly hold: Hold;
  /** Which sort of grain meets here: long grain glues, end grain hardly, 'never' must not be glued. */
  readonly glue: 'long' | 'end' | 'never';
  /** Where it is glued, the length over which it is, across the grain of the first side; mm. */
  readonly gluedLength?: number;
  readonly travel?: { readonly along: Vec3; readonly low: number; readonly high: number };
};
/** Pegs, wedges, keys, buttons, screws that the joint brings along. `record` is in its own frame; `at` that frame seen in the meeting frame. */
export type ExtraPart = {
  readonly name: string;
  readonly words: string;
  readonly record: PartRecord;
  readonly at: Frame;
  readonly hardware?: boolean;
  /** The direction it goes in, in the meeting frame. */
  readonly enters: Vec3;
};
/** A motion that takes the joint apart: these roles (or extras) move along this direction of the meeting frame, the others stay. */
export type Free = { readonly moves: readonly string[]; readonly along: Vec3 };
/** A finding of the family's own, before the piece's words are put round it. */
export type Warning = {
  readonly rule: string;
  readonly grade: 'stops' | 'trouble' | 'note';
  readonly title: string;
  readonly why: string;
  readonly measured: number;
  readonly limit: number;
  readonly unit: Finding['unit'];
  readonly source: Source;
  /** Where, in the meeting frame. */
  readonly at: Vec3;
  readonly roles: readonly string[];
  /** Cures: parameters of the joint to set (text as a maker would write it), each with its label. */
  readonly cures: readonly { readonly label: string; readonly set: Readonly<Record<string, string | null>> }[];
};
export type Made = {
  /** Key: the role, or role#n for roles of count 'many'. `at` of each feature is seen from the meeting frame. */
  readonly features: Readonly<Record<string, readonly Feature[]>>;
  readonly extras: readonly ExtraPart[];
  readonly contacts: readonly Contact[];
  readonly frees: readonly Free[];
  readonly holds: 'glue' | 'dry' | 'slides' | 'loose';
};
/**
 * A rule of the trade on what was made; pure, never throws. `tells` marks what a check of the whole piece would also find, so that it is
 * said once: two entering parts in the same wood of the receiver, or glue where none should be.
 */
export type Rule<P> = {
  readonly id: string;
  readonly words: string;
  readonly tells?: 'collision' | 'glue';
  readonly run: (place: Place<P>, sizes: P, made: Made) => readonly Warning[];
};
/** What is done at the bench for one role, in order. */
export type Operation = { readonly role: string; readonly words: string; readonly tool: string; readonly caution?: string };
/**
 * A small piece that shows the joint: a whole document, used four times (contract test, golden drawing, gallery, documentation).
 * `removed`: volume that the joint cuts from the part at each path, mm³, worked out by hand; `added` likewise.
 */
export type Example = {
  readonly name: string;
  readonly words: string;
  readonly document: Json;
  readonly removed: Readonly<Record<string, number>>;
  readonly added?: Readonly<Record<string, number>>;
  /** true when every face is flat, so volumes are exact. */
  readonly planar: boolean;
};

export interface Family<P = Record<string, unknown>> {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  /** One sentence: what it is for. */
  readonly words: string;
  /** In order: the first role is the entering one whose frame the meeting takes. */
  readonly roles: Readonly<Record<string, { readonly count: 'one' | 'many'; readonly words: string }>>;
  /** What the meeting must be for the joint: boxes that touch, or that share a volume which the joint divides. */
  readonly touch: readonly Meeting['touch'][];
  suits(m: Meeting): { readonly rank: number; readonly because: string } | null;
  readonly params: Fields<P>;
  readonly upgrades: readonly FamilyUpgrade[];
  propose(p: Place<P>, shop: Cutting): { readonly sizes: P; readonly because: Readonly<Record<keyof P & string, Reason>> } | Refusal<P>;
  make(p: Place<P>, sizes: P): Made;
  readonly rules: readonly Rule<P>[];
  bench(p: Place<P>, sizes: P, made: Made, hand: boolean): readonly Operation[];
  readonly examples: readonly Example[];
}
