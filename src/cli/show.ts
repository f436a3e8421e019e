import { type Stats, existsSync, lstatSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, extname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Built } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import type { Document } from '../model/document.ts';
import { VERSION } from '../model/document.ts';
import { type Problem, shown } from '../model/problem.ts';
import { clientPageOf, glbOf } from '../piece/files.ts';
import { judge } from '../piece/judge.ts';
import { verdictOf } from '../piece/judging.ts';
import { orderOf } from '../piece/order.ts';
import { type Options, Unusable, type Verb, print, readPiece, withStore } from './verb.ts';

type Maker = (doc: Document, built: Built, store: Store) => string | Uint8Array;
/** By ending. */
const MAKERS: Readonly<Record<string, Maker>> = {
  '.html': (doc, built, store) => clientPageOf(doc, built, store, orderOf(built, store), viewer()),
  '.glb': glbOf,
};

/** The client's view or an exchange file; exit 1 if and only if something stops the piece, and the file is written all the same. */
export const show: Verb = async (o) => {
  const { out, make } = placeOf(o);
  const doc = readPiece(o);
  return withStore((store) => {
    const j = judge(doc, store, 2);
    if (j.problems.length) throw new Unusable(j.problems, doc.title);
    const made = make(doc, j.built, store);
    const bytes = writeWhole(out, typeof made === 'string' ? new TextEncoder().encode(made) : made);
    const stops = verdictOf(j) === 'not-yet';
    const answer = { dryfit: VERSION, title: doc.title, out: relative(process.cwd(), out), bytes };
    print(
      o,
      answer,
      () => `${doc.title}\n${shown(answer.out, 300)}: ${bytes} bytes.${stops ? ' It does not go together yet: see check.' : ''}`,
    );
    return stops ? 1 : 0;
  });
};

/** Where the file goes and who makes it; looked at before any work is done. */
function placeOf(o: Options): { out: string; make: Maker } {
  const given = o.values.get('out');
  const known = Object.keys(MAKERS).join(' or ');
  const refuse = (what: string): Unusable => new Unusable([at(given ?? '', what)]);
  if (given === undefined || given === '') throw refuse(`say where the file goes, as a name that ends in ${known}.`);
  if (given.includes('\0')) throw refuse('a name may not hold the character 0.');
  const out = resolve(given);
  const parent = statOf(dirname(out), statSync);
  if (!parent?.isDirectory()) throw refuse('there is no such folder; nothing was written.');
  // A whole path is meant as it is written; a relative one must not climb out. Links are followed first, so that none leads out.
  if (!isAbsolute(given) && leaves(realpathSync(process.cwd()), join(realpathSync(dirname(out)), basename(out))))
    throw refuse(`this is outside the folder that you stand in; nothing was written. Go there first, or name a place inside.`);
  const there = statOf(out, lstatSync);
  if (there?.isDirectory()) throw refuse('this is a folder; name a file in it.');
  const make = Object.hasOwn(MAKERS, extname(out).toLowerCase()) ? MAKERS[extname(out).toLowerCase()] : undefined;
  if (!make) throw refuse(`a view is written as ${known}.`);
  if (o.files[0] !== undefined && resolve(o.files[0]) === out) throw refuse('this is the piece itself; it would be lost.');
  if (there && !there.isFile() && !there.isSymbolicLink()) throw refuse('this is not a plain file.');
  return { out, make };
}
const at = (given: string, what: string): Problem => ({ where: given ? `--out ${shown(given, 200)}` : '--out', what });
function statOf(path: string, stat: (path: string) => Stats): Stats | null {
  try {
    return stat(path);
  } catch {
    return null;
  }
}
function leaves(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way);
}

/** All of it or nothing: written beside, then moved into place. Gives the number of bytes. */
function writeWhole(out: string, bytes: Uint8Array): number {
  const beside = join(dirname(out), `.dryfit-${process.pid}.part`);
  try {
    writeFileSync(beside, bytes);
    renameSync(beside, out);
  } catch (e) {
    rmSync(beside, { force: true });
    throw new Unusable([at(out, `it could not be written (${(e as NodeJS.ErrnoException).code ?? String(e)}).`)]);
  }
  return bytes.length;
}

/** The script of the client's page: beside the bundled command line, or in dist/ when run from its source. */
function viewer(): string {
  const places = ['./client.js', '../../dist/client.js'].map((p) => fileURLToPath(new URL(p, import.meta.url)));
  const place = places.find((p) => existsSync(p));
  if (place === undefined) throw new Error(`dist/client.js is not there; node .ci/ready.mjs --cli builds it.`);
  return readFileSync(place, 'utf8');
}
