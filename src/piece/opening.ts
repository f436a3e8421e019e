/** A named space of a document, measured for a maker that is to fill it. */
import { type Resolution, resolve } from '../build/resolve.ts';
import { type Box, outBox } from '../geom/box.ts';
import { type Frame, outPoint, quarterTurn, seenFrom } from '../geom/frame.ts';
import type { Opening } from '../makers/kit/maker.ts';
import type { Document } from '../model/document.ts';
import { parsePath } from '../model/expr/path.ts';
import { pathOf } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem } from '../model/problem.ts';

export type FoundOpening = { readonly ok: true; readonly opening: Opening } | { readonly ok: false; readonly problem: Problem };

/**
 * The space as makers see it. In a group that is copied the filling is copied with it, so the bare id is enough there; of a space with
 * copies of its own one is named.
 */
export function openingIn(doc: Document, space: string): FoundOpening {
  const [id = '', ...names] = space.split(':');
  const entry = doc.spaces?.[id];
  if (!entry)
    return {
      ok: false,
      problem: problem('spaces', `no space is named "${id.slice(0, 40)}".`, nearestWord(id, Object.keys(doc.spaces ?? {}))),
    };
  const r = resolve(doc);
  const axes = r.instances.axes.get(id) ?? [];
  const stars = axes.length - (entry.copies?.length ?? 0);
  const own = names.slice(-(entry.copies?.length ?? 0) || names.length);
  if ((entry.copies?.length ?? 0) !== own.length)
    return {
      ok: false,
      problem: problem(`spaces/${id}`, 'this space has copies: say which one is to be filled.', r.instances.byId.get(id)?.[0]?.path),
    };
  const first = [id, ...axes.slice(0, stars).map((a) => a[0] ?? ''), ...own].join(':');
  const path = [id, ...Array.from({ length: stars }, () => '*'), ...own].join(':');
  const box = r.boxes.get(first)?.box;
  if (!box || !parsePath(path).ok)
    return { ok: false, problem: r.problems[0] ?? problem(`spaces/${id}`, `there is no "${space.slice(0, 80)}".`) };
  const [width, depth, height] = [0, 1, 2].map((i) => (box.max[i] ?? 0) - (box.min[i] ?? 0)) as [number, number, number];
  const sizes: Record<string, number> = {};
  for (const [name, v] of r.sizes)
    if (v.dim === 'length') sizes[name] = v.v;
    else if (v.dim === 'flex') sizes[name] = v.v * (doc.units === 'in' ? 25.4 : 1);
  const taken = new Set([doc.sizes, doc.spaces, doc.groups, doc.parts, doc.joints].flatMap((c) => Object.keys(c ?? {})));
  const parts = neighbours(r, first, stars);
  return { ok: true, opening: { path, units: doc.units, width, depth, height, sizes, group: entry.in ?? null, stars, parts, taken } };
}
/** Parts that stand square to the space. Those in its own copy of the group are known by stars, as the filling will read them. */
function neighbours(r: Resolution, space: string, stars: number): Record<string, Box> {
  const own = r.boxes.get(space);
  if (!own) return {};
  const corner: Frame = { ...own.frame, o: outPoint(own.frame, own.box.min) };
  const out: Record<string, Box> = {};
  for (const [path, b] of r.boxes) {
    const frame = seenFrom(corner, b.frame);
    if (b.instance.kind !== 'part' || quarterTurn(frame) === null) continue;
    const inside = own.instance.parent !== null && b.instance.parent === own.instance.parent;
    const names = inside ? [...Array.from({ length: stars }, () => '*'), ...b.instance.names.slice(stars)] : b.instance.names;
    out[inside ? pathOf(b.instance.id, names) : path] = outBox(frame, b.box);
  }
  return out;
}
