import type { Fields } from '../family.ts';

export type Lamination = { readonly hold: 'glued' | 'dry' };
export const params: Fields<Lamination> = {
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'only laid together' } },
};
