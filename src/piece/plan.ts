/** From the built piece to what the order planner reads: facets in the world and the joints' own motions. As drawn. */
import type { PlanLink, PlanPart } from '../assembly/part.ts';
import type { Build } from '../build/part.ts';
import { roleKey } from '../build/part.ts';
import type { Store } from '../build/store.ts';
import { asPlaced } from '../fits/check.ts';
import { type Box, outBox, unionBox } from '../geom/box.ts';
import { outDir, quarterTurn } from '../geom/frame.ts';
import { type Vec3, axisVec } from '../geom/vec3.ts';
import type { GroupDoc } from '../model/document.ts';
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
      kind: extra
        ? extra.hardware
          ? ('hardware' as const)
          : ('extra' as const)
        : isWood(part?.wood ?? '')
          ? ('wood' as const)
          : ('other' as const),
    };
    const axes: readonly Vec3[] = [p.frame.x, p.frame.y, p.frame.z];
    return [quarterTurn(p.frame) ? base : { ...base, axes }];
  });
}

/** One link a place of a joint, with its extras; and one for each group that slides out. */
export function planLinks(b: Build): PlanLink[] {
  return [...slides(b), ...jointLinks(b)];
}

/** A drawer is held by nothing, but it has a way out: towards the front along y, to the right along x, up along z. */
function slides(b: Build): PlanLink[] {
  return [...b.instances.all.values()]
    .filter((i) => i.kind === 'group')
    .flatMap((g) => {
      const axis = (g.doc as GroupDoc).opens?.slide;
      const frame = b.resolution.boxes.get(g.path)?.frame;
      const mine = [...b.parts.values()].filter((p) => p.group === g.path);
      if (axis === undefined || !frame || mine.length === 0) return [];
      const box = mine.map((p) => outBox(p.frame, p.record.stock)).reduce(unionBox);
      const host = [...b.parts.values()]
        .filter((p) => p.group !== g.path)
        .map((p) => ({ path: p.path, far: apart(box, outBox(p.frame, p.record.stock)) }))
        .sort((x, y) => x.far - y.far || (x.path < y.path ? -1 : 1))[0];
      const paths = mine.map((p) => p.path);
      return [
        {
          joint: g.id,
          parts: host ? [...paths, host.path] : paths,
          frees: [{ moves: paths, along: outDir(frame, axisVec(axis, axis === 'y' ? -1 : 1)) }],
          loose: true,
        },
      ];
    });
}
const apart = (a: Box, c: Box): number =>
  Math.hypot(...([0, 1, 2] as const).map((i) => Math.max(0, c.min[i] - a.max[i], a.min[i] - c.max[i])));

function jointLinks(b: Build): PlanLink[] {
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
      ...made.extras.map((e, i) => ({
        moves: [extras[i] ?? ''],
        along: outDir(p.meeting.frame, [-e.enters[0], -e.enters[1], -e.enters[2]]),
      })),
    ].filter((f) => f.moves.length > 0);
    return [
      {
        joint: p.joint,
        parts: [...Object.values(p.roles).flat(), ...extras],
        frees,
        loose: made.holds === 'loose' || made.holds === 'slides',
      },
    ];
  });
}
