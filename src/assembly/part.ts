/** What the planner reads and what it answers: plain records, facets only. World frame, mm, unless said otherwise. */
import type { Box } from '../geom/box.ts';
import type { Vec3 } from '../geom/vec3.ts';

/** A part as drawn (nominal), in its place. */
export type PlanPart = {
  readonly path: string;
  /** 'front left leg' */
  readonly label: string;
  /** Nine numbers a triangle, counter-clockwise seen from outside the wood. */
  readonly triangles: Float64Array;
  readonly box: Box;
  /** Only compared: kilograms, or mm³ where all parts give mm³. */
  readonly weight: number;
  /** Sub-assembly that it is built up in; null: of the piece itself. */
  readonly group: string | null;
  readonly kind: 'wood' | 'other' | 'extra' | 'hardware';
  /** Own axes of a part that leans; not needed where they are the piece's. */
  readonly axes?: readonly Vec3[];
};
/** Parts held together by one place of a joint. `frees`: the motions that take it apart, as the family states them. */
export type PlanLink = {
  readonly joint: string;
  readonly parts: readonly string[];
  readonly frees: readonly { readonly moves: readonly string[]; readonly along: Vec3 }[];
  /** Lies in its place without being held: a panel in grooves, a drawer in its opening. */
  readonly loose?: boolean;
};
/** One step of putting together: these parts move along this unit direction, this far, to their places. */
export type PlanStep = { readonly move: readonly string[]; readonly along: Vec3; readonly distance: number; readonly words: string };
export type PlanStage = { readonly name: string; readonly steps: readonly number[] };
export type Order = {
  readonly possible: boolean;
  readonly steps: readonly PlanStep[];
  readonly stages: readonly PlanStage[];
  /** The smallest set found that no part and no group of parts can leave. */
  readonly stuck?: readonly string[];
  /** Why it is stuck, in words: who stands in whose way, round the circle. */
  readonly why?: string;
  /**
   * Offsets at full spread. Step k runs while the slider goes from k to k + 1: a part stands off its place by the whole of every
   * offset whose step is still to come, and by what remains of the one that runs.
   */
  readonly apart: Readonly<Record<string, readonly { readonly step: number; readonly offset: Vec3 }[]>>;
};
