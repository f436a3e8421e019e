/** Makers tried on whole documents: a space filled, the piece judged as a maker would see it. */
import { expect } from 'vitest';
import { outBox } from '../../src/geom/box.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { Filled, Maker, Opening, Trouble } from '../../src/makers/kit/maker.ts';
import type { Document } from '../../src/model/document.ts';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { problemLine } from '../../src/model/problem.ts';
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
function openingOf(json: Json, path: string): Opening {
  const r = openingIn(jsonDocument(json), path);
  if (!r.ok) throw new Error(problemLine(r.problem));
  return r.opening;
}
function fill(maker: Maker, json: Json, space: string, settings: Readonly<Record<string, string>>): Filled {
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
/** Lines of everything above a note, and of places that their joint refuses. */
const loud = (doc: Document): string[] =>
  withStore((store) => {
    const j = judge(doc, store, 2);
    return [...j.problems.map(problemLine), ...j.findings.filter((f) => f.grade !== 'note').map((f) => `${f.grade} ${f.key}: ${f.why}`)];
  });
/** Nothing above a note, and it goes together. */
export function expectClean(doc: Document): void {
  expect(loud(doc)).toEqual([]);
  withStore((store) => {
    const j = judge(doc, store, 2);
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
