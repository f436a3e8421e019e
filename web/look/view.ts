/** How the piece is being looked at: nothing here changes the piece. */
import { create } from 'zustand';
import type { Axis } from '../../src/geom/vec3.ts';
import { attempt, lastId } from '../document/storage.ts';

export type Seen = 'freely' | 'front' | 'side' | 'above';
export type Units = 'in' | 'mm';
export type Face = Axis | 'others';
export type Page = 'boards' | 'list' | 'order';
/** Pages of a phone. */
export type Dock = 'verdict' | 'sizes' | 'boards' | 'bench' | 'more';
export type Notice = { readonly words: string; readonly act?: { readonly words: string; readonly run: () => void } };
/** A band under the bar: something happened that needs a word, and at most two verbs. */
export type Band = {
  readonly words: string;
  readonly lines?: readonly string[];
  readonly verbs: readonly { readonly words: string; readonly run: () => void }[];
};
export type View = {
  readonly screen: 'start' | 'piece' | 'gallery';
  /** Which page of the gallery; null: the list of all. */
  readonly entry: string | null;
  readonly units: Units | null;
  readonly seen: Seen;
  readonly face: Face;
  readonly size: string | null;
  readonly part: string | null;
  readonly hover: readonly string[];
  readonly finding: string | null;
  /** The finding was opened by hand: its parts keep their wood, the rest turns to drawing. */
  readonly focus: boolean;
  readonly alone: boolean;
  /** The cut: along which axis its normal points, and where it stands, 0…1 of the piece's box. */
  readonly cut: { readonly axis: Axis; readonly at: number } | null;
  /** 0 all apart … 1 together. */
  readonly together: number;
  readonly page: Page;
  readonly dock: Dock;
  /** Height that the stick was pulled to: more bench, less piece. */
  readonly pulled: boolean;
  readonly keys: boolean;
  readonly notice: Notice | null;
  readonly band: Band | null;
};
export const useView = create<View>(() => ({
  // A piece that was on the sheet when the page was left comes back at once: nothing else is shown before it.
  screen: lastId.get() === null ? 'start' : 'piece',
  entry: null,
  units: attempt(() => localStorage.getItem('dryfit.units')) as Units | null,
  seen: 'freely',
  face: 'x',
  size: null,
  part: null,
  hover: [],
  finding: null,
  focus: false,
  alone: false,
  cut: null,
  together: 1,
  page: 'boards',
  dock: 'verdict',
  pulled: false,
  keys: false,
  notice: null,
  band: null,
}));
export const look = (next: Partial<View>): void => useView.setState(next);
export const saw = (): View => useView.getState();

export function setUnits(units: Units): void {
  look({ units });
  attempt(() => localStorage.setItem('dryfit.units', units));
}
/** Marks parts everywhere; the list keeps its identity when nothing changed, so that nothing is drawn again. */
export function hover(paths: readonly string[]): void {
  const before = saw().hover;
  if (before.length !== paths.length || before.some((p, i) => p !== paths[i])) look({ hover: paths });
}
/** What looks differently at a fresh piece. */
export const FRESH: Partial<View> = {
  screen: 'piece',
  size: null,
  part: null,
  hover: [],
  finding: null,
  focus: false,
  alone: false,
  cut: null,
  together: 1,
  seen: 'freely',
  dock: 'verdict',
  band: null,
  notice: null,
  keys: false,
};
