/** The compass words of a box and the id rule, in one place. */
import type { Axis } from '../geom/vec3.ts';

export const ID = /^[a-z][a-z0-9_]{0,39}$/;
export const COPY_NAME = /^[a-z0-9_]{1,40}$/;

export type Face = 'left' | 'right' | 'front' | 'back' | 'bottom' | 'top';
export const FACES: readonly Face[] = ['left', 'right', 'front', 'back', 'bottom', 'top'];
/** The four ways to say where a box lies along one axis; exactly two are given. */
export type Quad = {
  readonly axis: Axis;
  readonly low: Face;
  readonly high: Face;
  readonly size: 'width' | 'depth' | 'height';
  readonly mid: 'midwidth' | 'middepth' | 'midheight';
};
export const QUADS: readonly [Quad, Quad, Quad] = [
  { axis: 'x', low: 'left', high: 'right', size: 'width', mid: 'midwidth' },
  { axis: 'y', low: 'front', high: 'back', size: 'depth', mid: 'middepth' },
  { axis: 'z', low: 'bottom', high: 'top', size: 'height', mid: 'midheight' },
];
export type QuadWord = Face | Quad['size'] | Quad['mid'];
export const QUAD_WORDS: readonly QuadWord[] = QUADS.flatMap((q) => [q.low, q.high, q.size, q.mid]);
/** Words that no size may take, since they read like a size of one's own; a part may be called "top". */
export const RESERVED_FOR_SIZES: ReadonlySet<string> = new Set([...QUAD_WORDS, 'run']);
/** Words that no size, space, group or part may take for its id. */
export const RESERVED: ReadonlySet<string> = new Set([
  'min',
  'max',
  'round',
  'xon',
  'yon',
  'zon',
  'mm',
  'cm',
  'm',
  'in',
  'ft',
  'deg',
  'constructor',
  'prototype',
]);

/** Which axis a face stands on, and whether it is its low or its high end. */
export function faceSide(face: Face): { quad: Quad; axis: 0 | 1 | 2; high: boolean } {
  const i = QUADS.findIndex((q) => q.low === face || q.high === face) as 0 | 1 | 2;
  const quad = QUADS[i];
  if (!quad) throw new Error(`no such face: ${face}`);
  return { quad, axis: i, high: quad.high === face };
}
export const isFace = (word: string): word is Face => (FACES as readonly string[]).includes(word);
/** Sorted by code point, never by locale: the same on every machine. */
export const byCodePoint = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** 'leg:left:front' as a person says it: 'front left leg'; 'rung:2' is 'rung 2'; `name` replaces the id's own words. */
export function partWords(id: string, names: readonly string[], name?: string): string {
  const noun = name ?? id.replaceAll('_', ' ');
  const words = names.filter((n) => !/^\d+$/.test(n)).map((n) => n.replaceAll('_', ' '));
  const numbers = names.filter((n) => /^\d+$/.test(n));
  return [...words.reverse(), noun, ...numbers].join(' ');
}
export const pathOf = (id: string, names: readonly string[]): string => [id, ...names].join(':');
