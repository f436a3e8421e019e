/**
 * What the app and its workers say to each other: plain records only, no solid, no function, no React element.
 *
 * The app owns the document. It hands it over whole once (`open`), then as patches (`change`) on the revision that the worker
 * holds. A worker that does not hold `base` answers `whole` and gets an `open`. Revisions are never used twice.
 *
 * For one revision the piece worker answers, in this order and each as soon as it is known:
 *   `trouble` and nothing else (the app then goes back to the last document that was answered by `piece`, and opens that), or
 *   `piece`, `verdict` wave 1, `meshes` (only keys that it has not sent since it started, less those in `forget`),
 *   `verdict` wave 2, `order`, `rows`, `blanks`, `settled`.
 * It drains its mailbox to the newest revision first and may leave out any answer to an older one. It answers `ping` at once:
 * it yields often enough that five seconds of silence mean that it hangs.
 */
import type { Json, Patch } from '../../src/model/finding.ts';
import type { Problem } from '../../src/model/problem.ts';
import type { CutRow, MeshView, OrderView, PieceView, VerdictView } from '../../src/piece/view.ts';

export type Rev = string;

/** Files that a worker can make of the piece as it stands. */
export type FileKind = 'client-page' | 'glb' | 'cut-list';

export type ToPiece =
  | { readonly kind: 'open'; readonly rev: Rev; readonly text: string }
  | { readonly kind: 'change'; readonly rev: Rev; readonly base: Rev; readonly patches: readonly Patch[] }
  /** Meshes that the app has let go of: send them again when a later piece needs them. */
  | { readonly kind: 'forget'; readonly keys: readonly string[] }
  /** The wood that two parts share, for the lens; answered by `bite`, or not at all where there is none. */
  | { readonly kind: 'bite'; readonly rev: Rev; readonly finding: string }
  | { readonly kind: 'make'; readonly rev: Rev; readonly ask: number; readonly file: FileKind }
  /** Give up the running search, keep the best so far. */
  | { readonly kind: 'stop'; readonly rev: Rev }
  | { readonly kind: 'ping'; readonly n: number };

export type FromPiece =
  | { readonly kind: 'pong'; readonly n: number }
  | { readonly kind: 'whole'; readonly rev: Rev }
  | { readonly kind: 'trouble'; readonly rev: Rev; readonly problems: readonly Problem[] }
  | { readonly kind: 'piece'; readonly rev: Rev; readonly piece: PieceView }
  | { readonly kind: 'meshes'; readonly rev: Rev; readonly meshes: readonly MeshView[] }
  | { readonly kind: 'verdict'; readonly rev: Rev; readonly verdict: VerdictView }
  | { readonly kind: 'order'; readonly rev: Rev; readonly order: OrderView }
  | { readonly kind: 'rows'; readonly rev: Rev; readonly rows: readonly CutRow[] }
  /** What the boards worker needs, handed on by the app unread. */
  | { readonly kind: 'blanks'; readonly rev: Rev; readonly job: Json }
  | { readonly kind: 'bite'; readonly rev: Rev; readonly finding: string; readonly positions: Float32Array; readonly indices: Uint32Array }
  | { readonly kind: 'file'; readonly ask: number; readonly name: string; readonly type: string; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'progress'; readonly rev: Rev; readonly words: string; readonly done: number; readonly of: number }
  | { readonly kind: 'settled'; readonly rev: Rev }
  /** A fault of ours: `words` for the maker; the document is untouched. `ask` when it concerns a file. */
  | { readonly kind: 'failed'; readonly rev: Rev; readonly words: string; readonly ask?: number };

/** To and from the worker that lays parts on boards (it carries no geometry kernel). */
export type ToBoards =
  | { readonly kind: 'lay'; readonly rev: Rev; readonly job: Json }
  | { readonly kind: 'stop'; readonly rev: Rev }
  | { readonly kind: 'ping'; readonly n: number };
export type FromBoards =
  | { readonly kind: 'pong'; readonly n: number }
  | { readonly kind: 'layout'; readonly rev: Rev; readonly layout: LayoutView; readonly final: boolean }
  | { readonly kind: 'progress'; readonly rev: Rev; readonly words: string; readonly done: number; readonly of: number }
  | { readonly kind: 'failed'; readonly rev: Rev; readonly words: string };

/** A rectangle on the face of a board: x along its length from the left end, y across it, mm. */
export type Patchwork = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };
export type PlacementView = Patchwork & { readonly letter: string; readonly label: string; readonly paths: readonly string[] };
export type BoardView = {
  readonly id: string;
  readonly wood: string;
  /** 'ash 4/4', '27 mm': as it is asked for at the yard. */
  readonly words: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly placements: readonly PlacementView[];
  /** Lengths that are worth keeping. */
  readonly kept: readonly Patchwork[];
  readonly defects: readonly Patchwork[];
  /** Where the pith lies seen from the left end, mm from the middle of that end: across and above (negative: below). */
  readonly pith: readonly [number, number] | null;
};
export type LayoutView = {
  readonly boards: readonly BoardView[];
  readonly unplaced: readonly { readonly letter: string; readonly label: string; readonly why: string }[];
  /** Share of the boards' area that becomes parts, 0…1. */
  readonly yield: number;
  /** The least number of boards that any layout needs, and whether that is proved. */
  readonly bound: { readonly boards: number; readonly proved: boolean };
  /** One line a purchase: 'cherry 4/4, 6 boards, 28 board feet'. */
  readonly buy: readonly string[];
};
