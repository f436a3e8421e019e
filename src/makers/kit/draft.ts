/** What a maker is about to write, gathered by kind, and how its own entries are named and read. */
import type { Json, Patch } from '../../model/finding.ts';
import type { Opening } from './maker.ts';

export type Draft = {
  readonly spaces?: Readonly<Record<string, Json>>;
  readonly groups?: Readonly<Record<string, Json>>;
  readonly parts?: Readonly<Record<string, Json>>;
  readonly joints?: Readonly<Record<string, Json>>;
};
/** Patches that add all entries; nothing is replaced. */
export const patchesOf = (d: Draft): Patch[] =>
  (['groups', 'spaces', 'parts', 'joints'] as const).flatMap((kind) =>
    Object.entries(d[kind] ?? {}).map(([id, value]): Patch => ({ op: 'add', path: `${kind}/${id}`, value })),
  );
export const joined = (...all: readonly Draft[]): Draft => ({
  spaces: Object.assign({}, ...all.map((d) => d.spaces)),
  groups: Object.assign({}, ...all.map((d) => d.groups)),
  parts: Object.assign({}, ...all.map((d) => d.parts)),
  joints: Object.assign({}, ...all.map((d) => d.joints)),
});

/** Names under one prefix. */
export type Namer = {
  /** The id of an entry: case_side. */
  readonly id: (name: string) => string;
  /** The path by which its readers and joints know it, in a copied group too: case_side:*:left. */
  readonly path: (name: string, ...copies: readonly string[]) => string;
  /** `in` for parts, groups and spaces, where the space lives in a group. */
  readonly home: { readonly in?: string };
};
export const namer = (prefix: string, space: Opening): Namer => ({
  id: (name) => `${prefix}_${name}`,
  path: (name, ...copies) => pathIn(space, `${prefix}_${name}`, ...copies),
  home: space.group === null ? {} : { in: space.group },
});
export const pathIn = (space: Opening, id: string, ...copies: readonly string[]): string =>
  [id, ...Array.from({ length: space.stars }, () => '*'), ...copies].join(':');

/** Glued up from staves where it is wider than one board. */
export const staved = (widest: string, along: 'width' | 'depth' | 'height', alternate = false): { readonly made: Json } => ({
  made: [{ staves: { widest, ...(alternate ? { alternate } : {}) }, along }],
});
