/** From the built piece to what the order planner reads: facets in the world and the joints' own motions. As drawn. */
import type { PlanLink, PlanPart } from '../assembly/part.ts';
import type { Build } from '../build/part.ts';
import { roleKey } from '../build/part.ts';
import type { Store } from '../build/store.ts';
import { asPlaced } from '../fits/check.ts';
import { outBox } from '../geom/box.ts';
import { outDir, quarterTurn } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';
import { placedFacets } from '../solids/facets.ts';
import { isWood } from '../wood/woods.ts';

export function planParts(b: Build, store: Store): PlanPart[] {
  const hosts = new Map<string, string>();
  for (const p of b.places) hosts.set(`${p.joint}/${p.place}`, Object.values(p.roles).flat()[0] ?? '');
  return [...b.parts.values(), ...b.extras.values()].flatMap((p): PlanPart[] => {
    const placed = asPlaced(p);
    const facets = store.facets(placed);
    const box = store.box(placed);
    if (!facets || !box) return [];
    const part = b.parts.get(p.path);
    const extra = b.extras.get(p.path);
    const host = extra && b.parts.get(hosts.get(`${extra.joint}/${extra.place}`) ?? '');
    const base = {
      path: p.path,
      label: part ? part.words : host ? `${p.words} in the ${host.words}` : p.words,
      triangles: placedFacets(facets, p.frame),
      box: outBox(p.frame, box),
      weight: store.measures(placed)?.volume ?? 0,
      group: part ? part.group : (host?.group ?? null),
      kind: extra ? (extra.hardware ? ('hardware' as const) : ('extra' as const)) : isWood(part?.wood ?? '') ? ('wood' as const) : ('other' as const),
    };
    const axes: readonly Vec3[] = [p.frame.x, p.frame.y, p.frame.z];
    return [quarterTurn(p.frame) ? base : { ...base, axes }];
  });
}

/** One link a place of a joint, with its extras. */
export function planLinks(b: Build): PlanLink[] {
  return b.places.flatMap((p): PlanLink[] => {
    const made = p.made;
    if (!made) return [];
    const byRole = new Map<string, string[]>();
    for (const [role, paths] of Object.entries(p.roles)) {
      byRole.set(role, [...paths]);
      paths.forEach((path, i) => byRole.set(roleKey(p.family, role, i), [path]));
    }
    for (const e of made.extras) byRole.set(e.name, [`${p.joint}/${p.place}/${e.name.replaceAll(' ', '_')}`]);
    const extras = made.extras.map((e) => `${p.joint}/${p.place}/${e.name.replaceAll(' ', '_')}`);
    const frees = [
      ...made.frees.map((f) => ({ moves: f.moves.flatMap((m) => byRole.get(m) ?? []), along: outDir(p.meeting.frame, f.along) })),
      ...made.extras.map((e, i) => ({ moves: [extras[i] ?? ''], along: outDir(p.meeting.frame, [-e.enters[0], -e.enters[1], -e.enters[2]]) })),
    ].filter((f) => f.moves.length > 0);
    return [{ joint: p.joint, parts: [...Object.values(p.roles).flat(), ...extras], frees, loose: made.holds === 'loose' || made.holds === 'slides' }];
  });
}
