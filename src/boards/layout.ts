/** The answer of a layout: plain records, lengths in mm. On a board x runs from its left end, y from the edge that is straightened. */
import type { Vec2 } from '../geom/vec3.ts';
import type { Problem } from '../model/problem.ts';
import type { Size3 } from './blank.ts';
import type { Surface } from './stock.ts';

export type Rect = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };

/** Where a blank lies, at its rough size. The grain runs along the board, so its length does too. */
export type Placement = Rect & {
  readonly part: string;
  readonly copy: number;
  readonly piece: string;
  /** Number of pieces that its part is glued up from. */
  readonly of: number;
  readonly path: string | null;
  /** Only on sheets without a face grain. */
  readonly turned: boolean;
  readonly heart: 'up' | 'down' | null;
  readonly finished: Size3;
  readonly later: { readonly length: boolean; readonly width: boolean };
  /** What the cuts call it once it is cut out. */
  readonly body: string;
};

/** In shop order: rough work first, so that nothing is sawn before it is flat and straight enough to be sawn safely. */
export type CutKind = 'trim' | 'crosscut' | 'flatten' | 'straighten' | 'rip' | 'thickness' | 'edge' | 'width' | 'length';
export type Cut = {
  /** 1, 2, 3 … on this board. */
  readonly step: number;
  readonly what: CutKind;
  readonly machine: 'crosscut saw' | 'band saw' | 'table saw' | 'hand saw' | 'jointer' | 'planer';
  /** What it is done to: 'board', 'section 2', 'strip 2.1', 'A 1'. */
  readonly of: string;
  /** What comes off at the stop or fence; null when that is waste or nothing comes off. */
  readonly keeps: string | null;
  /** What is left beyond the blade, by name; null when nothing is. */
  readonly leaves: string | null;
  /**
   * Stop or fence: what stays on the near side of the blade (trim, crosscut, rip, width, length); how much comes off (straighten,
   * edge, flatten); the thickness that is left (thickness).
   */
  readonly at: number;
  /** Wood that the blade takes; less than its kerf where it runs off the edge. */
  readonly takes: number;
  /** From the board's left end (crosscuts) or its straightened edge (rips) to the near side of the blade: for marking out. */
  readonly mark: number | null;
  /** What the blade turns to dust, on the board. */
  readonly band: Rect | null;
  readonly words: string;
};
export type Offcut = Rect & { readonly keep: boolean };

export type LaidBoard = {
  readonly id: string;
  /** Stock line it comes from. */
  readonly stock: string;
  readonly wood: string;
  readonly nominal: string;
  readonly surface: Surface;
  readonly assumed: boolean;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Where the pith lay, seen on the left end: x across the width, y through the thickness. A guess, and to be called so. */
  readonly pith: Vec2;
  /** Inside the trimmed ends, the straightened edge and the far edge. */
  readonly room: Rect;
  readonly placements: readonly Placement[];
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly Offcut[];
  /** Share of its face that becomes blanks. */
  readonly used: number;
};

export type WhyNot = 'no such wood' | 'too thick' | 'too long' | 'too wide' | 'ran out';
export type Unplaced = {
  readonly part: string;
  readonly copy: number;
  readonly piece: string;
  readonly path: string | null;
  readonly wood: string;
  readonly why: WhyNot;
  /** What it would need and the most that the stock gives, mm, in the same direction; null where no number says it. */
  readonly need: number | null;
  readonly have: number | null;
  readonly words: string;
  /** The nearest way out. */
  readonly cure: Cure;
};
export type Cure =
  | { readonly do: 'layers'; readonly count: number; readonly each: number; readonly words: string }
  | { readonly do: 'staves'; readonly count: number; readonly each: number; readonly words: string }
  | { readonly do: 'board'; readonly thickness: number; readonly width: number; readonly length: number; readonly words: string }
  | { readonly do: 'wood'; readonly nearest: string | null; readonly words: string };

export type BuyRow = {
  /** 'boards', 'sheets', or the stuff itself where it is bought to size. */
  readonly what: string;
  readonly wood: string;
  readonly nominal: string;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly count: number;
  /** By the tally of the trade; null for sheets and stuff that is not wood. */
  readonly boardFeet: number | null;
  readonly m3: number;
  readonly cost: number | null;
  readonly assumed: boolean;
};

export type Bound = {
  /** No plan of the kind named in `plans` can use fewer boards, or cost less. */
  readonly boards: number;
  readonly cost: number | null;
  readonly name: 'area bound' | 'length bound' | 'width bound' | 'length and width bound';
  readonly plans: string;
  /** It is a proof, not an estimate. */
  readonly proved: boolean;
};
export type Caution = { readonly part: string; readonly words: string };

export type Layout = {
  readonly boards: readonly LaidBoard[];
  readonly unplaced: readonly Unplaced[];
  /** Share of the boards' faces that becomes blanks, 0…1; 0 when there are no boards. The lost share is 1 − yield. */
  readonly yield: number;
  /** Share of the boards' wood that is in the finished parts, 0…1. */
  readonly finishedShare: number;
  readonly boardsUsed: number;
  /** Null while any board used has no price. */
  readonly cost: number | null;
  readonly bound: Bound;
  /** Boards above the bound: at most so many could be saved. */
  readonly gap: number;
  readonly buy: readonly BuyRow[];
  readonly problems: readonly Problem[];
  readonly cautions: readonly Caution[];
};
