/** The plain records that leave the core for a screen, a paper or a file: nothing here holds a solid, a function or a class. */
import type { Frame } from '../geom/frame.ts';
import type { Box } from '../geom/box.ts';
import type { Axis, Vec3 } from '../geom/vec3.ts';
import type { Finding } from '../model/finding.ts';

/** Triangles of one distinct part, in its record frame, mm. Shared by all parts of equal key. */
export type MeshView = {
  readonly key: string;
  /** xyz triples; three corners a triangle, corners not shared between faces. */
  readonly positions: Float32Array;
  /** Unit normals, one a corner; smooth over round faces. */
  readonly normals: Float32Array;
  readonly indices: Uint32Array;
  /** For each triangle the index of its face in `faces`. */
  readonly triangleFace: Uint16Array;
  /** 'stock.left', 'mortise.cheek left', … */
  readonly faces: readonly string[];
  /** Line pieces (xyz xyz) along creases sharper than 20°, for the drawn look. */
  readonly edges: Float32Array;
  readonly volume: number;
  readonly area: number;
  readonly centre: Vec3;
};
export type PartView = {
  /** 'leg:left:front', or 'corners/3/peg1' for what a joint brings along. */
  readonly path: string;
  /** Letter of its kind of part: A, B, … Z, AA; equal for equal parts; the same on sheet, boards, lists and papers. */
  readonly letter: string;
  /** 'front left leg' */
  readonly label: string;
  readonly wood: string;
  readonly kind: 'wood' | 'other' | 'extra' | 'hardware';
  readonly group: string | null;
  /** Mesh key. */
  readonly key: string;
  /** Record frame seen from the world; may be left-handed, then the mesh's triangles turn over. */
  readonly frame: Frame;
  readonly stock: Box;
  readonly grain: Axis;
  /** Finished sizes over everything, adds included: length along the grain, then width, then thickness. */
  readonly finished: { readonly length: number; readonly width: number; readonly thickness: number };
  /** Pieces it is glued up from: boxes in the record frame, outermost first; one when it is of one piece. */
  readonly pieces: readonly Box[];
};
export type JointView = {
  readonly id: string;
  readonly place: number;
  readonly family: string;
  readonly title: string;
  readonly parts: readonly string[];
  readonly at: Vec3;
};
/** A named size or a size of a part as the stick shows it. */
export type SizeView = {
  readonly id: string;
  readonly words: string;
  readonly text: string;
  /** mm, radians or a plain number by `kind`. */
  readonly value: number;
  readonly kind: 'length' | 'angle' | 'number';
  /** Along which axis of the piece it mostly acts, for the face of the stick; null where it acts in none or many. */
  readonly axis: Axis | null;
  /** Span on the piece, world mm along `axis`, where it can be shown. */
  readonly span: readonly [number, number] | null;
  /** Paths of parts that read it. */
  readonly usedBy: readonly string[];
};
/** The piece in its first wave: all that needs no kernel. */
export type PieceView = {
  readonly rev: string;
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly box: Box | null;
  readonly parts: readonly PartView[];
  readonly joints: readonly JointView[];
  readonly sizes: readonly SizeView[];
};
export type Verdict = 'together' | 'not-yet' | 'cannot-say';
export type VerdictView = {
  readonly rev: string;
  readonly wave: 1 | 2;
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly counts: { readonly parts: number; readonly joints: number };
};
/** One step of putting it together: these parts move along this unit direction (world) to their places. */
export type StepView = { readonly move: readonly string[]; readonly along: Vec3; readonly distance: number; readonly words: string };
export type OrderView = {
  readonly possible: boolean;
  readonly steps: readonly StepView[];
  readonly stages: readonly { readonly name: string; readonly steps: readonly number[] }[];
  readonly stuck?: readonly string[];
  /** Why it is stuck, in words. */
  readonly why?: string;
  /**
   * Offset of each part at full spread, world mm, by path; and the step at which it comes home: a slider at position s (0 all apart …
   * steps.length together) shows part p at `offset` × what remains of the steps that carry it.
   */
  readonly apart: Readonly<Record<string, readonly { readonly step: number; readonly offset: Vec3 }[]>>;
};
export type CutRow = {
  /** The part's id, or the words of what joints bring along. */
  readonly part: string;
  readonly words: string;
  /** Letter of the kind; empty for what joints bring along. */
  readonly letter: string;
  /** The letter that this one is the mirror image of. */
  readonly handedOf: string | null;
  readonly count: number;
  readonly wood: string;
  readonly paths: readonly string[];
  readonly finished: { readonly length: number; readonly width: number; readonly thickness: number };
  readonly rough: { readonly length: number; readonly width: number; readonly thickness: number };
};
