import type { PartRecord } from '../model/record.ts';
import type { Cutter } from './cutter.ts';
import type { Body } from './kernel.ts';

/** A part's wood as a solid in the part's record frame. Its body lies in the kernel's memory: see scope.ts for who deletes it. */
export type Solid = {
  /** The part's name, for messages. */
  readonly who: string;
  readonly record: PartRecord;
  /** The record's features, read; same order. */
  readonly cutters: readonly Cutter[];
  readonly body: Body;
  /** From whose surface a triangle came, by the kernel's id of the original body: the index of the feature, or 'stock'. */
  readonly makers: ReadonlyMap<number, number | 'stock'>;
};
