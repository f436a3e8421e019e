/**
 * What one build leaves to the next, so that an edit works out anew only what it changed. Entries by content (parts, meetings, joints,
 * records) are pure functions of their keys; entries by path hand the very same object on where nothing about it is different. A build
 * with a cache equals a build without one in every number.
 */
import type { Made, Place, Reason, Refusal } from '../joints/family.ts';
import type { Meeting } from '../joints/meeting.ts';
import type { Problem } from '../model/problem.ts';
import type { Signed } from '../model/part-record.ts';
import type { Feature, PartRecord } from '../model/record.ts';
import type { Box } from '../geom/box.ts';
import type { ShapeSays, ShapeSet } from '../shapes/shape.ts';
import type { Instances } from './instances.ts';
import { type Memo, openMemo } from './memo.ts';
import type { Extra, JointPlace, Part, StockPart } from './part.ts';

/** Stock and shapes of a part, wherever it stands: copies share one. `problems` are what its shapes cannot do, by their number. */
export type Blank = {
  readonly id: number;
  readonly stock: Box;
  readonly features: readonly Feature[];
  /** What the shapes tell a maker to set tools by. */
  readonly says: readonly ShapeSays[];
  readonly problems: readonly { readonly shape: number; readonly what: string; readonly nearest?: ShapeSet }[];
};
/** How parts meet, seen from the record frame of the entering one: `meeting.frame` is that frame's, and no part is named. */
export type Met = { readonly id: number; readonly meeting: Meeting };
/** A joint as made for one way of meeting. `cuts`: what it cuts from each part, by the key of `Made.features`, in that part's record frame. */
export type Core = {
  readonly id: number;
  readonly input: Place<Record<string, unknown>>;
  readonly sizes: Record<string, unknown> | null;
  readonly because: Readonly<Record<string, Reason>> | null;
  readonly made: Made | null;
  readonly refused: Refusal<Record<string, unknown>> | { readonly apart: number } | null;
  readonly cuts: Readonly<Record<string, readonly Signed[]>>;
};
/** A part's record, and for each of its features which of those handed in it was. */
export type Recorded = { readonly record: PartRecord; readonly order: readonly number[] };

/** What the last pass (as drawn, or as built) made at each path. */
export type Pass = {
  stock: ReadonlyMap<string, StockPart>;
  places: ReadonlyMap<string, Placing>;
  joints: ReadonlyMap<string, JointRun>;
  parts: ReadonlyMap<string, Finished>;
};
/** All that a joint hangs on, to be compared one by one with what it hangs on now. */
export type Standing = readonly unknown[];
/** A joint with all its places. */
export type JointRun = { readonly from: Standing | null; readonly placings: readonly Placing[]; readonly problems: readonly Problem[] };
/** What one place cuts from one part: `key` of `Made.features`. */
export type PartCut = { readonly core: Core; readonly key: string; readonly origin: { readonly joint: string; readonly place: number } };
export type Finished = { readonly part: Part; readonly stock: StockPart; readonly cuts: readonly PartCut[] };
/** A place of a joint with what it was made from, and what it brings along. */
export type Placing = {
  readonly place: JointPlace;
  readonly core: Core;
  readonly extras: readonly Extra[];
  readonly cuts: readonly (readonly [path: string, cut: PartCut])[];
};
export type BuildCache = {
  readonly blanks: Memo<Blank>;
  readonly mets: Memo<Met>;
  readonly cores: Memo<Core>;
  readonly records: Memo<Recorded>;
  readonly drawn: Pass;
  readonly built: Pass;
  /** A number for a text: equal texts, equal numbers. */
  readonly numbers: Memo<number>;
  /** The next number for something new; never given twice. */
  readonly next: () => number;
  instances: Instances | null;
};

export function openBuildCache(): BuildCache {
  let last = 0;
  const pass = (): Pass => ({ stock: new Map(), places: new Map(), joints: new Map(), parts: new Map() });
  return {
    blanks: openMemo(),
    mets: openMemo(),
    cores: openMemo(),
    records: openMemo(),
    numbers: openMemo(),
    drawn: pass(),
    built: pass(),
    next: () => ++last,
    instances: null,
  };
}
/** Ends a round: entries of long ago are forgotten. */
export function sweepBuildCache(c: BuildCache): void {
  for (const memo of [c.blanks, c.mets, c.cores, c.records, c.numbers]) memo.sweep();
}
