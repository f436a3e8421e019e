/** Makers tried on whole documents: a space filled, the piece judged as a maker would see it. */
import { expect } from 'vitest';
import { type Box, outBox } from '../../src/geom/box.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { Filled, Maker, Opening, Trouble } from '../../src/makers/kit/maker.ts';
import type { Document } from '../../src/model/document.ts';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { problemLine } from '../../src/model/problem.ts';
import { readDocument } from '../../src/model/parse.ts';
import { catalog } from '../../src/piece/catalog.ts';
import { judge } from '../../src/piece/judge.ts';
import { openingIn } from '../../src/piece/opening.ts';
import { orderOf } from '../../src/piece/order.ts';
import { withStore } from './checks.ts';
import { boxesOf, jsonDocument } from './piece.ts';

/** A document of one space of this size, mm, and whatever else. */
export const spaceOf = (width: number, depth: number, height: number, more: Record<string, Json> = {}, units = 'mm'): Json => ({
  dryfit: 1,
  title: 'Space',
  units,
  spaces: {
    niche: { left: '0', width: `${width} mm`, front: '0', depth: `${depth} mm`, bottom: '0', height: `${height} mm` },
  },
  ...more,
});
export function openingOf(json: Json, path: string): Opening {
  const r = openingIn(jsonDocument(json), path);
  if (!r.ok) throw new Error(problemLine(r.problem));
  return r.opening;
}
export function fill(maker: Maker, json: Json, space: string, settings: Readonly<Record<string, string>>): Filled {
  return maker.fill(openingOf(json, space), settings);
}
export type FilledDoc = {
  readonly json: Json;
  readonly doc: Document;
  readonly patches: readonly Patch[];
  readonly undo: readonly Patch[];
};
/** Fills and applies; trouble is the failure's message. */
export function filled(maker: Maker, json: Json, space: string, settings: Readonly<Record<string, string>> = {}): FilledDoc {
  const f = fill(maker, json, space, settings);
  if (!f.ok) throw new Error(f.troubles.map((t) => `${t.setting}: ${t.cannot} (${t.asked}, limit ${t.limit})`).join('\n'));
  const done = applyPatches(json, f.patches);
  if (!done.ok) throw new Error(done.problem);
  return { json: done.json, doc: jsonDocument(done.json), patches: f.patches, undo: done.undo };
}
export function troublesOf(maker: Maker, json: Json, space: string, settings: Readonly<Record<string, string>>): readonly Trouble[] {
  const f = fill(maker, json, space, settings);
  return f.ok ? [] : f.troubles;
}
/** Nothing above a note, no joint that is refused, and it goes together. */
export function expectClean(doc: Document): void {
  withStore((store) => {
    const j = judge(doc, store, 2);
    const loud = j.findings.filter((f) => f.grade !== 'note').map((f) => `${f.grade} ${f.key}: ${f.why}`);
    expect([...j.problems.map(problemLine), ...loud]).toEqual([]);
    const order = orderOf(j.built, store);
    expect(order.possible, order.why ?? '').toBe(true);
  });
}
/** Width, depth and height of a part's box as drawn, mm. */
export function sizeIn(doc: Document): (path: string) => readonly number[] {
  const at = boxesOf(doc);
  return (path) => {
    const b = at(path).box;
    return b.max.map((m, i) => Math.round((m - (b.min[i] ?? 0)) * 1e6) / 1e6);
  };
}
/** Where the low corner of a part stands in the world, mm; parts that stand square to it. */
export function placeIn(doc: Document): (path: string) => Vec3 {
  const at = boxesOf(doc);
  return (path) => outBox(at(path).frame, at(path).box).min;
}
/** The box of a space in the world. */
export function spaceBox(doc: Document, path: string): Box {
  const at = boxesOf(doc)(path);
  return outBox(at.frame, at.box);
}
/** Lines of what makes a document no piece at all: problems, joints that are refused or do not meet, and what the first wave stops at. */
export function soundAsDrawn(json: Json): string[] {
  const r = readDocument(json, catalog);
  if (!r.ok) return r.problems.map(problemLine);
  const j = judge(r.doc, null, 1);
  return [...j.problems.map(problemLine), ...j.findings.filter((f) => f.grade === 'stops').map((f) => `${f.key}: ${f.why}`)];
}
/** The whole document in a group with a mirrored copy: every path of a part or space gets a star for the copy. */
export function inPair(json: Json): Json {
  const doc = json as { readonly [key: string]: Readonly<Record<string, { readonly [key: string]: Json }>> | undefined };
  const ids = [...Object.keys(doc['parts'] ?? {}), ...Object.keys(doc['spaces'] ?? {})];
  const reading = new RegExp(`\\b(${ids.join('|')})((?::[a-z0-9_*]+)*)\\.(?=[a-z])`, 'g');
  const path = new RegExp(`^(${ids.join('|')})((?::[a-z0-9_*]+)*)$`);
  const starred = (v: Json, key: string): Json => {
    if (typeof v === 'string') return key === 'names' ? v : v.replace(reading, '$1:*$2.');
    if (Array.isArray(v)) return v.map((x: Json) => starred(x, key));
    return v !== null && typeof v === 'object' ? Object.fromEntries(Object.entries(v).map(([k, x]) => [k, starred(x, k)])) : v;
  };
  const home = (entries: Readonly<Record<string, Json>> | undefined): Json =>
    Object.fromEntries(Object.entries(entries ?? {}).map(([id, e]) => [id, { in: 'pair', ...(starred(e, id) as object) } as Json]));
  const joint = (j: Json): Json => {
    const places = (j as { places: readonly Readonly<Record<string, string>>[] }).places;
    const at = (p: Readonly<Record<string, string>>): Json =>
      Object.fromEntries(Object.entries(p).map(([role, x]) => [role, x.replace(path, '$1:*$2')]));
    return { ...(starred(j, '') as object), places: places.map(at) } as Json;
  };
  return {
    ...(json as object),
    groups: { pair: { copies: [{ mirror: 'x', at: '2 m', names: ['one', 'two'] }] } },
    spaces: home(doc['spaces']),
    ...(doc['parts'] ? { parts: home(doc['parts']) } : {}),
    ...(doc['joints'] ? { joints: Object.fromEntries(Object.entries(doc['joints']).map(([id, j]) => [id, joint(j)])) } : {}),
  } as Json;
}
