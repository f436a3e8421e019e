import type { Fields } from '../family.ts';

export type Mitre = {
  readonly form: 'plain' | 'splined' | 'keyed';
  /** Thickness of the spline or of each key, mm. */
  readonly thick: number;
  /** How deep the spline stands in each part, square to the mitre; or how far a key reaches in from the outer corner along it, mm. */
  readonly depth: number;
  /** Number of keys. */
  readonly count: number;
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<Mitre> = {
  form: {
    kind: 'choice',
    words: 'form of the mitre',
    options: {
      plain: 'plain, glue alone',
      splined: 'with a spline hidden in both mitres',
      keyed: 'with keys let in across the outer corner',
    },
  },
  thick: { kind: 'length', words: 'thickness of spline or key' },
  depth: { kind: 'length', words: 'depth of spline or key' },
  count: { kind: 'count', words: 'number of keys' },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'dry, held by something else' } },
};
