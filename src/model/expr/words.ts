/** The words of the language of sizes. */
import { QUAD_WORDS } from '../ids.ts';

export type ReadingWord =
  | 'left' | 'right' | 'width' | 'midwidth'
  | 'front' | 'back' | 'depth' | 'middepth'
  | 'bottom' | 'top' | 'height' | 'midheight'; // prettier-ignore
export type FunctionWord = 'min' | 'max' | 'round';
export const FUNCTIONS: readonly FunctionWord[] = ['min', 'max', 'round'];
export const SPOTS: ReadonlyMap<string, 'x' | 'y' | 'z'> = new Map([
  ['xon', 'x'],
  ['yon', 'y'],
  ['zon', 'z'],
]);
export const READINGS: readonly string[] = [...QUAD_WORDS, 'run'];
export const isReading = (w: string): w is ReadingWord | 'run' => READINGS.includes(w);
export const isFunction = (w: string): w is FunctionWord => (FUNCTIONS as readonly string[]).includes(w);
/** An expression holds at most so many tokens, nested at most so deep. */
export const MOST = { tokens: 200, depth: 20, names: 40 } as const;
