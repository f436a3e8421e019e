/** Documents under test: read from fixtures or made in place, and solved. */
import { readFileSync } from 'node:fs';
import { type Built, buildPiece } from '../../src/build/build.ts';
import { type Resolved, resolve } from '../../src/build/resolve.ts';
import type { Document } from '../../src/model/document.ts';
import { parseDocument, readDocument } from '../../src/model/parse.ts';
import { problemLine } from '../../src/model/problem.ts';
import { catalog, families } from '../../src/piece/catalog.ts';

export const fixtureText = (name: string): string => readFileSync(new URL(`../fixtures/${name}.json`, import.meta.url), 'utf8');
export const starterText = (name: string): string => readFileSync(new URL(`../../public/starters/${name}.json`, import.meta.url), 'utf8');

/** Reads a document that must be sound; its problems are the failure's message. */
export function documentOf(text: string): Document {
  const r = parseDocument(text, catalog);
  if (!r.ok) throw new Error(r.problems.map(problemLine).join('\n'));
  return r.doc;
}
export function jsonDocument(json: unknown): Document {
  const r = readDocument(json, catalog);
  if (!r.ok) throw new Error(r.problems.map(problemLine).join('\n'));
  return r.doc;
}
export function builtOf(doc: Document): Built {
  const b = buildPiece(doc, families);
  if (b.problems.length) throw new Error(b.problems.map(problemLine).join('\n'));
  return b;
}
/** Problem lines of a document that must not be sound, from parsing or from solving. */
export function troubles(json: unknown): string[] {
  const r = readDocument(json, catalog);
  if (!r.ok) return r.problems.map(problemLine);
  return buildPiece(r.doc, families).problems.map(problemLine);
}
export function boxesOf(doc: Document): (path: string) => Resolved {
  const r = resolve(doc);
  return (path) => {
    const b = r.boxes.get(path);
    if (!b) throw new Error(`${path} was not solved: ${r.problems.map(problemLine).join('; ')}`);
    return b;
  };
}
/** Sizes of a box: width, depth, height. */
export const sizes = (r: Resolved): number[] => r.box.max.map((m, i) => m - (r.box.min[i] ?? 0));
