/** What the tool has to say, as data: findings, their sources, and the patches that cure them. */
import type { Vec3 } from '../geom/vec3.ts';

/** stops: it will not go together; trouble: it will give trouble later; note: worth knowing. */
export type Grade = 'stops' | 'trouble' | 'note';
export type Unit = 'mm' | 'mm2' | 'mm3' | 'deg' | 'count' | 'percent' | 'kg' | 'none';
/** How the measured number is known. */
export type Basis = 'drawn' | 'measured' | 'computed' | 'rule of thumb';
/** Where a limit comes from. `basis`: read in the publication, recalled from it, or a habit of the trade without one. */
export type Source = { readonly name: string; readonly basis: 'read' | 'read-secondhand' | 'memory' | 'derived' | 'common practice' };
/** A place in the piece, world frame, mm: show it with a ring of this reach; `cut` is the normal of the plane that shows it best. */
export type Where = { readonly at: Vec3; readonly reach: number; readonly cut?: Vec3 };

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
/** A change of the document. `path` is ids joined by '/', from the root, never an array index but inside a part's own lists. `was` undoes it and tells when it is stale. */
export type Patch = { readonly op: 'add' | 'replace' | 'remove'; readonly path: string; readonly value?: Json; readonly was?: Json };

export type Proof =
  | 'untried'
  | {
      readonly removes: readonly string[];
      readonly adds: readonly { readonly key: string; readonly grade: Grade }[];
      readonly rev: string;
    };
/** A cure. `label` says what is done, `consequence` one thing that follows from it. */
export type Remedy = { readonly label: string; readonly consequence?: string; readonly patches: readonly Patch[]; readonly proof: Proof };

/**
 * Text of findings carries figures as {mm:12.7} so that the screen and the paper print them in the maker's units; see
 * `figures.ts`. `key` = rule + sorted paths + joint/place, without numbers, stable over edits.
 */
export type Finding = {
  readonly key: string;
  readonly rule: string;
  readonly grade: Grade;
  readonly title: string;
  readonly parts: readonly string[];
  readonly joint?: string;
  readonly where: Where;
  readonly measured: number;
  readonly limit: number;
  readonly unit: Unit;
  readonly basis: Basis;
  readonly why: string;
  readonly source: Source;
  readonly remedies: readonly Remedy[];
};
