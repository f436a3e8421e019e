/** What drawings are made of and what they are, as plain records: the one file of this floor that all others read. */
import type { Box } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import type { Axis, Vec2, Vec3 } from '../geom/vec3.ts';

/** What a drawing needs of a part: where it stands, and what wood it shows. */
export type DrawnPart = {
  readonly path: string;
  readonly letter: string;
  readonly label: string;
  readonly wood: string;
  readonly kind: 'wood' | 'other' | 'extra' | 'hardware';
  /** Of its mesh. */
  readonly key: string;
  readonly frame: Frame;
  readonly stock: Box;
  readonly grain: Axis;
};
export type DrawnMesh = {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  readonly triangleFace: Uint16Array;
  readonly faces: readonly string[];
};
export type DrawnPiece = {
  readonly parts: readonly DrawnPart[];
  readonly meshes: ReadonlyMap<string, DrawnMesh>;
  /** How far each part is drawn from its place, world mm, by path; none: together. */
  readonly apart: ReadonlyMap<string, Vec3>;
};
/** 'outline': beyond it lies another face or nothing; 'edge': both its faces are seen; 'ring': on end grain. */
export type LineKind = 'outline' | 'edge' | 'ring';
/** A run of points, units of the paper. */
export type Line = { readonly kind: LineKind; readonly points: readonly Vec2[] };
/** `shade`: how much lighter or darker than the wood itself, in steps of OKLab lightness. Holes run the other way round. */
export type Fill = { readonly part: number; readonly wood: string; readonly shade: number; readonly loops: readonly (readonly Vec2[])[] };
/** A letter in its circle, on the part it names. */
export type Disc = { readonly letter: string; readonly label: string; readonly at: Vec2 };
/** Sizes in units of the paper: x to the right, y down, from the upper left corner; every number to a tenth. */
export type Drawing = {
  readonly width: number;
  readonly height: number;
  /** In the order in which they are laid on each other. */
  readonly fills: readonly Fill[];
  readonly lines: readonly Line[];
  readonly discs: readonly Disc[];
};
