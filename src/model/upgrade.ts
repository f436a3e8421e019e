/** Older documents made into today's: the whole grammar by version, joints by their family's own upgrades. */
import { type Catalog, kindAndVersion } from './catalog.ts';
import type { Json } from './finding.ts';
import { type Problem, problem, shown } from './problem.ts';

/** One step of the grammar, with a sample that a test puts through. */
export type Upgrade = {
  readonly to: number;
  readonly up: (doc: Record<string, unknown>) => Record<string, unknown>;
  readonly sample: Record<string, unknown>;
};

/** The grammar is at its first version: there is nothing to upgrade yet. Each later step is added here with its sample. */
export const UPGRADES: readonly Upgrade[] = [];

export type Upgraded = { readonly ok: true; readonly json: Record<string, unknown> } | { readonly ok: false; readonly problem: Problem };

/** Brings a raw document to `version`; one from a newer Dryfit is refused rather than damaged. */
export function upgradeDocument(json: Record<string, unknown>, catalog: Catalog, version: number, upgrades: readonly Upgrade[]): Upgraded {
  const from = json['dryfit'];
  if (typeof from !== 'number' || !Number.isInteger(from) || from < 0)
    return { ok: false, problem: problem('dryfit', 'the document must say which version of the grammar it is written in: "dryfit": 1.') };
  if (from > version)
    return {
      ok: false,
      problem: problem(
        'dryfit',
        `this piece was written by a newer Dryfit (grammar ${from}; this one reads up to ${version}). Nothing was changed; open it with the newer one.`,
      ),
    };
  let doc = json;
  for (let v = from; v < version; v++) {
    const step = upgrades.find((u) => u.to === v + 1);
    if (!step) return { ok: false, problem: problem('dryfit', `nothing leads from grammar ${v} to ${v + 1}.`) };
    doc = { ...step.up(doc), dryfit: v + 1 };
  }
  return upgradeJoints(doc, catalog);
}

function upgradeJoints(doc: Record<string, unknown>, catalog: Catalog): Upgraded {
  const joints = doc['joints'];
  if (joints === null || typeof joints !== 'object' || Array.isArray(joints)) return { ok: true, json: doc };
  const out: Record<string, unknown> = {};
  for (const [id, joint] of Object.entries(joints as Record<string, unknown>)) {
    const as = (joint as { as?: unknown } | null)?.as;
    const { id: kind, version } = kindAndVersion(typeof as === 'string' ? as : '@0');
    const facts = Object.hasOwn(catalog.families, kind) ? catalog.families[kind] : undefined;
    if (!facts || !Number.isInteger(version)) {
      out[id] = joint;
      continue;
    }
    if (version > facts.version)
      return {
        ok: false,
        problem: problem(
          `joints/${shown(id, 40)}/as`,
          `${kind}@${version} comes from a newer Dryfit; this one knows ${kind} up to @${facts.version}.`,
          `${kind}@${facts.version}`,
        ),
      };
    let set = ((joint as { set?: Record<string, Json> }).set ?? {}) as Record<string, Json>;
    for (let v = version; v < facts.version; v++) {
      const step = facts.upgrades.find((u) => u.to === v + 1);
      if (!step) return { ok: false, problem: problem(`joints/${shown(id, 40)}/as`, `nothing leads from ${kind}@${v} to @${v + 1}.`) };
      set = step.up(set);
    }
    out[id] = version === facts.version ? joint : { ...(joint as object), as: `${kind}@${facts.version}`, set };
  }
  return { ok: true, json: { ...doc, joints: out } };
}
