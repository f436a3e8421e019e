import type { Fields } from '../family.ts';

export type GlueBlock = {
  /** How much is taken off each side of the free corner, mm. */
  readonly bevel: number;
};
export const params: Fields<GlueBlock> = { bevel: { kind: 'length', words: 'bevel of the free corner' } };
