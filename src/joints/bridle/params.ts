import type { Fields } from '../family.ts';

export type Bridle = {
  /** Of the tongue, which is the width of the slot, mm. */
  readonly thickness: number;
  /** Middle of the tongue from the middle of the part that carries it, towards that part's own right, back or top, mm. */
  readonly offset: number;
  readonly glue: 'yes' | 'no';
};
export const params: Fields<Bridle> = {
  thickness: { kind: 'length', words: 'thickness of the tongue' },
  offset: { kind: 'length', words: 'offset of the tongue from the middle of its part' },
  glue: { kind: 'choice', words: 'is it glued', options: { yes: 'glued', no: 'not glued' } },
};
