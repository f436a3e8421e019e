/** What the piece worker does, apart from being a worker: it owns a copy of the document and answers each revision in waves. */
import { buildPiece } from '../../src/build/build.ts';
import type { Store } from '../../src/build/store.ts';
import { asPlaced } from '../../src/fits/check.ts';
import type { Document } from '../../src/model/document.ts';
import type { Finding, Json } from '../../src/model/finding.ts';
import { parseDocument, readDocument } from '../../src/model/parse.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { nothingSeen } from '../../src/model/seen.ts';
import { describePiece } from '../../src/piece/describe.ts';
import { type Judged, judging, verdictOf } from '../../src/piece/judging.ts';
import { type Known, nothingKnown } from '../../src/piece/known.ts';
import { kindsOf } from '../../src/piece/kinds.ts';
import { blankJobs, cutRows } from '../../src/piece/list.ts';
import { orderOf } from '../../src/piece/order.ts';
import type { MeshView, VerdictView } from '../../src/piece/view.ts';
import { makeFile } from './files.ts';
import type { FromPiece, Rev, ToPiece } from './protocol.ts';

/** How long the worker works before it listens again, ms. */
const SLICE = 8;
/** How often long work says that it is alive, ms. */
const BEAT = 500;

const NOT_LOADED = 'The joints of this piece could not be loaded. Look whether the tool is still being served, then open the piece again.';

export type Post = (message: FromPiece, transfer?: Transferable[]) => void;
type Held = { readonly rev: Rev; readonly json: Json; readonly doc: Document | null };

/** Answers messages; `pause` gives the event loop a turn; `known` holds the joints that were needed before. */
export function servePiece(
  post: Post,
  solids: Store,
  pause: () => Promise<void>,
  known: Known = nothingKnown(),
): (message: ToPiece) => void {
  // Work on solids says now and then that it is alive: a slow machine is no hung worker.
  let beaten = Date.now();
  const beat = (): void => {
    if (Date.now() - beaten < BEAT) return;
    beaten = Date.now();
    post({ kind: 'pong', n: -1 });
  };
  const store = beating(solids, beat);
  let held: Held | null = null;
  let judged: { rev: Rev; doc: Document; judged: Judged } | null = null;
  let stopped: Rev | null = null;
  const sent = new Set<string>();
  // Patches share what they do not change, so that what was read once need not be read again.
  const seen = nothingSeen();
  const { families } = known;
  const { judge, proving } = judging(families);
  let line: Promise<void> | null = null;

  const current = (rev: Rev): boolean => held?.rev === rev;
  /** The document as it now stands; where its joints must first be loaded, what comes after it waits. */
  function take(rev: Rev, json: Json, read: () => ReturnType<typeof parseDocument>): Promise<void> | null {
    const go = (): void => {
      const parsed = read();
      held = { rev, json, doc: parsed.ok ? parsed.doc : null };
      if (!parsed.ok) post({ kind: 'trouble', rev, problems: parsed.problems });
      else void answer(rev, parsed.doc);
    };
    const needed = known.need(json);
    if (!needed) return (go(), null);
    return needed.then(go, () => post({ kind: 'failed', rev, words: NOT_LOADED }));
  }

  return (m) => {
    if (m.kind === 'ping') post({ kind: 'pong', n: m.n });
    else if (m.kind === 'forget') for (const k of m.keys) sent.delete(k);
    else if (m.kind === 'stop') stopped = m.rev;
    else inTurn(m);
  };

  /** One after the other: what arrives while joints are being loaded waits for them. */
  function inTurn(m: ToPiece): void {
    const after = line ? line.then(() => handle(m)) : handle(m);
    if (!after) return;
    const mine: Promise<void> = after.then(() => {
      if (line === mine) line = null;
    });
    line = mine;
  }
  function handle(m: ToPiece): Promise<void> | null {
    if (m.kind === 'open') return take(m.rev, jsonOf(m.text), () => parseDocument(m.text, known.catalog));
    if (m.kind === 'change') return change(m);
    if (m.kind === 'bite') bite(m.rev, m.finding);
    if (m.kind === 'make') void file(m);
    return null;
  }

  function change(m: Extract<ToPiece, { kind: 'change' }>): Promise<void> | null {
    const applied = held?.rev === m.base ? applyPatches(held.json, m.patches) : null;
    if (!applied?.ok) return (post({ kind: 'whole', rev: m.rev }), null);
    return take(m.rev, applied.json, () => readDocument(applied.json, known.catalog, undefined, seen));
  }

  async function answer(rev: Rev, doc: Document): Promise<void> {
    try {
      await waves(rev, doc);
    } catch (e) {
      if (current(rev)) post({ kind: 'failed', rev, words: e instanceof Error ? e.message : String(e) });
    }
  }
  async function waves(rev: Rev, doc: Document): Promise<void> {
    await pause();
    if (!current(rev)) return;
    const first = judge(doc, null, 1, buildPiece(doc, families, store.builds));
    if (first.problems.length) return post({ kind: 'trouble', rev, problems: first.problems });
    const kinds = kindsOf(first.built.built);
    post({ kind: 'piece', rev, piece: describePiece(doc, first.built, kinds) });
    post({ kind: 'verdict', rev, verdict: verdictView(rev, 1, first, plain(first.findings)) });
    if (!(await meshes(rev, first))) return;
    const second = judge(doc, store, 2, first.built);
    judged = { rev, doc, judged: second };
    post({ kind: 'verdict', rev, verdict: verdictView(rev, 2, second, plain(second.findings)) });
    post({ kind: 'rows', rev, rows: cutRows(doc, first.built, kinds) });
    post({
      kind: 'blanks',
      rev,
      job: { units: doc.units, jobs: blankJobs(first.built, kinds) as unknown as Json, labels: labelsOf(kinds) },
    });
    const proved = await remedies(rev, doc, second);
    if (!proved) return;
    post({ kind: 'verdict', rev, verdict: verdictView(rev, 2, second, proved) });
    await pause();
    if (!current(rev)) return;
    post({ kind: 'order', rev, order: orderOf(first.built, store, { stop: () => (beat(), stopped === rev) }) });
    store.prune();
    post({ kind: 'settled', rev });
  }

  /** Meshes of all distinct parts that the app does not hold yet, a slice at a time. */
  async function meshes(rev: Rev, j: Judged): Promise<boolean> {
    const b = j.built.built;
    let batch: MeshView[] = [];
    let since = Date.now();
    for (const p of [...b.parts.values(), ...b.extras.values()]) {
      if (sent.has(p.record.key)) continue;
      const mesh = store.mesh(asPlaced(p));
      if (!mesh) continue;
      sent.add(p.record.key);
      batch.push(copyOf(mesh));
      if (Date.now() - since < SLICE) continue;
      give(rev, batch);
      batch = [];
      await pause();
      if (!current(rev)) return false;
      since = Date.now();
    }
    give(rev, batch);
    await pause();
    return current(rev);
  }
  function give(rev: Rev, batch: readonly MeshView[]): void {
    if (batch.length === 0) return;
    post(
      { kind: 'meshes', rev, meshes: batch },
      batch.flatMap(
        (m) => [m.positions.buffer, m.normals.buffer, m.indices.buffer, m.triangleFace.buffer, m.edges.buffer] as Transferable[],
      ),
    );
  }

  async function remedies(rev: Rev, doc: Document, j: Judged): Promise<readonly Finding[] | null> {
    const run = proving(doc, j.findings, store);
    let since = Date.now();
    for (;;) {
      const step = run.next();
      if (step.done) return current(rev) ? step.value : null;
      if (stopped === rev) return j.findings.map((f) => ({ ...f, remedies: [] }));
      if (Date.now() - since < SLICE) continue;
      post({ kind: 'progress', rev, words: 'Trying the cures', done: step.value.done, of: step.value.of });
      await pause();
      if (!current(rev)) return null;
      since = Date.now();
    }
  }

  function bite(rev: Rev, key: string): void {
    const f = judged?.rev === rev ? judged.judged.findings.find((g) => g.key === key) : undefined;
    if (!f || !judged) return;
    const b = judged.judged.built.built;
    const placed = f.parts.flatMap((path) => {
      const p = b.parts.get(path) ?? b.extras.get(path);
      return p ? [asPlaced(p)] : [];
    });
    for (const [i, p] of placed.entries())
      for (const q of placed.slice(i + 1)) {
        const found = store.biteFacets(p, q);
        if (!found || found.length === 0) continue;
        const positions = new Float32Array(found);
        return post({
          kind: 'bite',
          rev,
          finding: key,
          positions,
          indices: Uint32Array.from({ length: positions.length / 3 }, (_, k) => k),
        });
      }
  }

  async function file(m: Extract<ToPiece, { kind: 'make' }>): Promise<void> {
    try {
      if (!held?.doc) throw new Error('There is no piece to save yet.');
      const made = await makeFile(m.file, held.doc, buildPiece(held.doc, families, store.builds), store);
      post({ kind: 'file', ask: m.ask, ...made }, [made.bytes.buffer]);
    } catch (e) {
      post({ kind: 'failed', rev: m.rev, ask: m.ask, words: e instanceof Error ? e.message : String(e) });
    }
  }
}

/** The same store, which calls `beat` before each piece of its work. */
function beating(store: Store, beat: () => void): Store {
  const before =
    <A extends unknown[], R>(work: (...args: A) => R) =>
    (...args: A): R => {
      beat();
      return work(...args);
    };
  return {
    ...store,
    mesh: before(store.mesh),
    measures: before(store.measures),
    facts: before(store.facts),
    facets: before(store.facets),
    box: before(store.box),
    bite: before(store.bite),
    biteFacets: before(store.biteFacets),
  };
}

/** What a text holds; null where it is no JSON, which reading it tells in words. */
function jsonOf(text: string): Json {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return null;
  }
}
/** Until a remedy is proved it is not offered. */
const plain = (findings: readonly Finding[]): Finding[] => findings.map((f) => ({ ...f, remedies: [] }));
function verdictView(rev: Rev, wave: 1 | 2, j: Judged, findings: readonly Finding[]): VerdictView {
  return { rev, wave, verdict: verdictOf(j), findings, counts: { parts: j.built.built.parts.size, joints: j.built.built.places.length } };
}
function copyOf(m: MeshView): MeshView {
  return {
    ...m,
    positions: m.positions.slice(),
    normals: m.normals.slice(),
    indices: m.indices.slice(),
    triangleFace: m.triangleFace.slice(),
    edges: m.edges.slice(),
  };
}
function labelsOf(
  kinds: readonly {
    readonly letter: string;
    readonly parts: readonly { readonly id: string; readonly doc: { readonly name?: string | undefined } }[];
  }[],
): Json {
  return Object.fromEntries(kinds.map((k) => [k.letter, k.parts[0]?.doc.name ?? k.parts[0]?.id.replaceAll('_', ' ') ?? '']));
}
