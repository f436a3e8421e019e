import type { Fields } from '../family.ts';

export type Rabbet = {
  /** How far the board stands in the rabbet, mm; where the parts are drawn one in the other, as drawn. */
  readonly depth: number;
  /** Room left between the board's edge and the wall of the rabbet, mm. */
  readonly spare: number;
  /** How much of the board's thickness is itself rabbeted away on the outside, mm: a lip of the other part then covers its edge. */
  readonly outer: number;
  /** The same on the inside, mm: a shoulder. */
  readonly inner: number;
  readonly ends: 'through' | 'fits';
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<Rabbet> = {
  depth: { kind: 'length', words: 'how far the board stands in the rabbet' },
  spare: { kind: 'length', words: 'room at the edge of the board' },
  outer: { kind: 'length', words: 'how much the board itself is rabbeted on its outside' },
  inner: { kind: 'length', words: 'how much the board itself is rabbeted on its inside' },
  ends: {
    kind: 'choice',
    words: 'ends of the rabbet',
    options: { through: 'runs out at both ends', fits: 'stopped where the board ends' },
  },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'without glue: pinned or screwed, free to move' } },
};
