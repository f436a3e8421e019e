/** What every verb shares: reading the file with care, loading the kernel, printing. */
import { readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Store, openStore } from '../build/store.ts';
import type { Document } from '../model/document.ts';
import { LIMITS } from '../model/document.ts';
import { parseDocument } from '../model/parse.ts';
import { type Problem, problemLine, shown } from '../model/problem.ts';
import { catalog } from '../piece/catalog.ts';
import { type Judged, verdictOf } from '../piece/judging.ts';
import { loadKernel } from '../solids/kernel.ts';

export type Options = { readonly files: readonly string[]; readonly values: ReadonlyMap<string, string> };
export type Verb = (o: Options) => Promise<number>;

/** The input cannot be used: exit 2, with what, where and the nearest valid name. */
export class Unusable extends Error {
  readonly problems: readonly Problem[];
  /** Of the piece, as far as it could be read. */
  readonly title: string;
  constructor(problems: readonly Problem[], title = '') {
    super('unusable input');
    this.problems = problems;
    this.title = title;
  }
  lines(): string[] {
    return this.problems.map(problemLine);
  }
}

/** Reads the one document of a verb; its size is looked at before it is read. */
export function readPiece(o: Options): Document {
  const file = o.files[0];
  if (file === undefined) throw new Unusable([{ where: '', what: 'name the file of the piece.' }]);
  const text = readText(file);
  const parsed = parseDocument(text, catalog);
  if (!parsed.ok) throw new Unusable(parsed.problems, titleIn(text));
  return parsed.doc;
}
/** The title of a document that is otherwise no good; empty where there is none. */
function titleIn(text: string): string {
  try {
    const title = (JSON.parse(text.replace(/^\ufeff/, '')) as { title?: unknown } | null)?.title;
    return typeof title === 'string' ? title.slice(0, LIMITS.title) : '';
  } catch {
    return '';
  }
}
/** What every verb that reads a piece answers with: 1 if and only if something stops it. */
export const exitOf = (j: Judged): number => (verdictOf(j) === 'not-yet' ? 1 : 0);
export const many = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
export function readText(file: string): string {
  let size: number;
  try {
    const s = statSync(file);
    if (!s.isFile()) throw new Unusable([{ where: shown(file), what: 'this is not a file.' }]);
    size = s.size;
  } catch (e) {
    if (e instanceof Unusable) throw e;
    throw new Unusable([{ where: shown(file, 200), what: 'there is no such file, or it may not be read.' }]);
  }
  if (size > LIMITS.bytes)
    throw new Unusable([
      {
        where: shown(file, 200),
        what: `the file has ${(size / 1e6).toFixed(1)} MB; a piece has at most ${LIMITS.bytes / 1024 / 1024} MB of text. It was not read.`,
      },
    ]);
  return readFileSync(file, 'utf8');
}

/** Runs work that needs solids; the store is closed whatever happens. */
export async function withStore<T>(work: (store: Store) => T): Promise<T> {
  await loadKernel({ wasmBinary: readFileSync(createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm')) });
  const store = openStore();
  try {
    return work(store);
  } finally {
    store.close();
  }
}
const wantsJson = (o: Options): boolean => o.values.has('json');
export function print(o: Options, json: unknown, text: () => string): void {
  process.stdout.write(wantsJson(o) ? `${jsonText(json)}\n` : `${printable(text())}\n`);
}
/** Characters that would steer a terminal or turn the line round: a name may hold them, an answer may not. */
// eslint-disable-next-line no-control-regex
const STEERING = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g;
export const printable = (text: string): string => text.replace(STEERING, '\ufffd');
/** The same text to whoever reads it as JSON, harmless to whoever prints it. */
export const jsonText = (json: unknown): string =>
  JSON.stringify(json, null, 2).replace(STEERING, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
/** mm with at most six decimals, the same on every machine. */
export const round6 = (n: number): number => {
  const q = Math.round(n * 1e6) / 1e6;
  return q === 0 ? 0 : q;
};
