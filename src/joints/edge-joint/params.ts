import type { Fields } from '../family.ts';

export type EdgeJoint = { readonly hold: 'glued' | 'dry' };
export const params: Fields<EdgeJoint> = {
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'only laid together' } },
};
