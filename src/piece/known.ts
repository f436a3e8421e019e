/** The joints that have been needed so far: a piece waits for its own only, and none is loaded twice. */
import type { Families } from '../build/build.ts';
import type { Family } from '../joints/family.ts';
import { familyLoaders } from '../joints/loaders.ts';
import { type Catalog, kindAndVersion } from '../model/catalog.ts';
import type { Json } from '../model/finding.ts';
import { shapes } from '../shapes/shapes.ts';

export type Known = {
  /** Both grow as more is needed. */
  readonly families: Families;
  readonly catalog: Catalog;
  /**
   * Loads what this document names and is not here yet; null when nothing is missing. A name that no joint has brings them all, so that
   * whoever misspelt it is told the nearest. Rejects when a file cannot be loaded.
   */
  readonly need: (json: Json) => Promise<void> | null;
};

export function nothingKnown(): Known {
  const families: Record<string, Family> = {};
  const load = async (ids: readonly string[]): Promise<void> => {
    await Promise.all(
      ids.map(async (id) => {
        const family = await familyLoaders[id]?.();
        if (family) families[id] = family;
      }),
    );
  };
  const missing = (json: Json): readonly string[] => {
    const named = kindsNamed(json);
    const all = named.every((id) => Object.hasOwn(familyLoaders, id)) ? named : Object.keys(familyLoaders);
    return all.filter((id) => !Object.hasOwn(families, id));
  };
  return {
    families,
    catalog: { families, shapes },
    need: (json) => {
      const ids = missing(json);
      return ids.length ? load(ids) : null;
    },
  };
}

const isMap = (json: Json | undefined): json is Readonly<Record<string, Json>> =>
  typeof json === 'object' && json !== null && !Array.isArray(json);
/** Ids of the families that a document names, whatever else is wrong with it. */
function kindsNamed(json: Json): readonly string[] {
  const joints = isMap(json) ? json['joints'] : undefined;
  const kinds = isMap(joints) ? Object.values(joints).map((j) => (isMap(j) ? j['as'] : undefined)) : [];
  return [...new Set(kinds.filter((as) => typeof as === 'string').map((as) => kindAndVersion(as).id))];
}
