/** What the workers have said about the document: derived, may be thrown away and asked for again. */
import { create } from 'zustand';
import type { CutRow, MeshView, OrderView, PieceView, VerdictView } from '../../src/piece/view.ts';
import type { LayoutView } from '../workers/protocol.ts';

/** A piece all of whose meshes are here: what the sheet draws. */
export type Scene = { readonly piece: PieceView; readonly meshes: ReadonlyMap<string, MeshView> };
export type Bite = { readonly finding: string; readonly positions: Float32Array; readonly indices: Uint32Array };
export type Progress = { readonly words: string; readonly done: number; readonly of: number };
export type Results = {
  readonly piece: PieceView | null;
  readonly scene: Scene | null;
  readonly verdict: VerdictView | null;
  readonly order: OrderView | null;
  readonly rows: readonly CutRow[] | null;
  readonly layout: LayoutView | null;
  /** How far the layout on boards is, or why there is none. */
  readonly laying: Progress | null;
  readonly unlaid: string | null;
  readonly bite: Bite | null;
  readonly progress: Progress | null;
  /** Is an answer about the newest change still to come? */
  readonly busy: boolean;
  /** The tool broke on this piece; words for the maker. */
  readonly failed: string | null;
};
export const NOTHING: Results = {
  piece: null,
  scene: null,
  verdict: null,
  order: null,
  rows: null,
  layout: null,
  laying: null,
  unlaid: null,
  bite: null,
  progress: null,
  busy: false,
  failed: null,
};
export const useResults = create<Results>(() => NOTHING);
