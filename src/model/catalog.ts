/** What the model must know of joint families and shapes to read a document; handed downward as an argument. */
import type { Json } from './finding.ts';

export type FieldFacts = {
  readonly kind: 'length' | 'place' | 'angle' | 'count' | 'ratio' | 'choice';
  readonly words: string;
  readonly options?: Readonly<Record<string, string>>;
};
export type UpgradeFacts = { readonly to: number; readonly up: (old: Record<string, Json>) => Record<string, Json> };
export type FamilyFacts = {
  readonly version: number;
  readonly roles: Readonly<Record<string, { readonly count: 'one' | 'many' }>>;
  readonly params: Readonly<Record<string, FieldFacts>>;
  readonly upgrades: readonly UpgradeFacts[];
};
/**
 * 'faces' is a list of face names or marks; 'edges' a list of edges, each two of these ("top front"); 'place' a coordinate along the grain,
 * in the part's own frame. 'points' is a list of [a, b] or { at: [a, b], via?: [a, b], by? } in the part's own frame, on two axes: those
 * across the axis that the setting "seen" names, those of the face that "face" names, or the way along the grain and a diameter.
 */
export type ShapeField =
  | FieldFacts
  | { readonly kind: 'faces' | 'edges'; readonly words: string }
  | { readonly kind: 'points'; readonly words: string; readonly on: 'seen' | 'face' | 'turned' };
export type ShapeFacts = {
  readonly version: number;
  readonly params: Readonly<Record<string, ShapeField>>;
  readonly required: readonly string[];
};
export type Catalog = { readonly families: Readonly<Record<string, FamilyFacts>>; readonly shapes: Readonly<Record<string, ShapeFacts>> };

/** 'mortise_tenon@1' → its id and version. */
export function kindAndVersion(as: string): { id: string; version: number } {
  const at = as.lastIndexOf('@');
  return { id: as.slice(0, at), version: Number(as.slice(at + 1)) };
}
