/** The piece on the sheet: everything that opens, changes, keeps or saves it, and what is done with the answers. */
import type { Finding, Json, Patch, Remedy } from '../../src/model/finding.ts';
import { type Problem, problemLine } from '../../src/model/problem.ts';
import type { MeshView, PieceView } from '../../src/piece/view.ts';
import { FRESH, type View, look, saw } from '../look/view.ts';
import { NOTHING, useResults } from '../results/store.ts';
import { type Answer, type Client, startClient } from '../workers/client.ts';
import type { FileKind } from '../workers/protocol.ts';
import { boardsSource, pieceSource } from '../workers/sources.ts';
import { useAside } from './aside.ts';
import { type Cured, curedAgain, useCured } from './cured.ts';
import { MOST_BYTES, fileName, saveFile } from './files.ts';
import { useKeeping } from './keeping.ts';
import { type Kept, keep, keptPieces, lastId } from './storage.ts';
import {
  acceptDocument,
  changeDocument,
  closeStep,
  documentFile,
  documentText,
  fallBack,
  redoDocument,
  startDocument,
  titleOf,
  undoDocument,
  useDocument,
} from './store.ts';

/** Meshes that are here, also those of pieces a few edits ago: an undo finds them again. */
const meshes = new Map<string, MeshView>();
const MOST_MESHES = 600;
let stuckOn: Json = null;
let refused: ((words: string) => void) | null = null;

let started: Client | null = null;
function client(): Client {
  started ??= startClient({ piece: pieceSource, boards: boardsSource }, { answer: hear, document: documentText, stuck: heardStuck });
  return started;
}

/** Opens a document's text. `id` when it is one of the pieces kept on this machine. */
export function openText(text: string, id: string = crypto.randomUUID(), name = 'This file'): void {
  if (text.length > MOST_BYTES) return band(`${name} is longer than 4 MB of text; it was not opened.`, []);
  let json: Json;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, '')) as Json;
  } catch (e) {
    return band(`${name} is not a piece: it cannot be read as JSON.`, [e instanceof Error ? e.message : String(e)]);
  }
  if (useAside.getState().own) {
    endExample();
    look({ screen: useDocument.getState().json === null ? 'start' : 'piece' });
  }
  begin(id, json, text, name);
}
function begin(id: string, json: Json, text: string, name: string): void {
  startDocument(id, json);
  refused = null;
  if (!useDocument.getState().good) useResults.setState(NOTHING);
  useResults.setState({ busy: true, failed: null });
  opening = { name, fresh: true };
  client().open(text);
}
let opening = { name: '', fresh: false };

/** Lays an example on the sheet, drawn apart. The maker's own piece is set aside untouched; of an example nothing is kept. */
export function showExample(json: Json, name: string): void {
  if (!useAside.getState().own) {
    void keepNow();
    const own = { document: useDocument.getState(), results: useResults.getState(), view: saw(), cured: useCured.getState().list };
    useAside.setState({ own });
  }
  useDocument.setState({ good: null });
  begin('example', json, JSON.stringify(json), name);
}
/** The maker's own piece is back on the sheet, as it was left; the page that is being looked at stays. */
export function endExample(): void {
  const { own } = useAside.getState();
  if (!own) return;
  useAside.setState({ own: null });
  useDocument.setState(own.document);
  useResults.setState({ ...own.results, busy: own.document.json !== null, laying: null, progress: null });
  useCured.setState({ list: own.cured });
  const { screen, entry, units, band, notice } = saw();
  look({ ...own.view, screen, entry, units, band, notice } satisfies View);
  opening = { name: '', fresh: false };
  refused = null;
  const text = documentText();
  if (text !== null) client().open(text);
}

/** One change of the piece. `told` hears why the core would not have it; the last good sizes then stay in force. */
export function change(
  words: string,
  patches: readonly Patch[],
  tag: string | null = null,
  told: ((words: string) => void) | null = null,
): boolean {
  const done = changeDocument(words, patches, tag);
  if (!done.ok) {
    (told ?? ((w) => look({ notice: { words: w } })))(done.words);
    return false;
  }
  refused = told;
  send(patches);
  return true;
}
function send(patches: readonly Patch[]): void {
  useResults.setState({ busy: true });
  look({ notice: null, band: null });
  client().change(patches);
  keepSoon();
}
export { closeStep };
export function undo(): void {
  const patches = undoDocument();
  refused = null;
  if (patches) send(patches);
}
export function redo(): void {
  const patches = redoDocument();
  refused = null;
  if (patches) send(patches);
}
/** Applies a remedy; the finding goes to the foot of the column once the core agrees that it is gone. */
export function putRight(finding: Finding, remedy: Remedy): void {
  if (!change(`${finding.title}: ${remedy.label}`, remedy.patches)) return;
  const undo = useDocument.getState().past.at(-1)?.undo ?? [];
  const cured: Cured = { key: finding.key, title: finding.title, label: remedy.label, undo };
  useCured.setState({ list: [...useCured.getState().list.filter((c) => c.key !== finding.key), cured] });
}
export function bringBack(cured: Cured): void {
  if (change(`${cured.title}: brought back`, cured.undo))
    useCured.setState({ list: useCured.getState().list.filter((c) => c.key !== cured.key) });
}

function hear(answer: Answer): void {
  switch (answer.kind) {
    case 'trouble':
      return heardTrouble(answer.problems);
    case 'piece':
      return heardPiece(answer.piece);
    case 'meshes':
      for (const m of answer.meshes) meshes.set(m.key, m);
      return showScene();
    case 'verdict':
      useResults.setState({ verdict: answer.verdict });
      useCured.setState({ list: curedAgain(useCured.getState().list, answer.verdict) });
      return openWorst();
    case 'order':
      return useResults.setState({ order: answer.order });
    case 'rows':
      return useResults.setState({ rows: answer.rows });
    case 'layout':
      return useResults.setState({ layout: answer.layout, laying: null, unlaid: null });
    case 'laying':
      return useResults.setState({ laying: answer });
    case 'unlaid':
      return useResults.setState({ unlaid: answer.words, laying: null });
    case 'bite':
      return useResults.setState({ bite: answer });
    case 'progress':
      return useResults.setState({ progress: answer });
    case 'failed':
      return useResults.setState({ failed: answer.words, busy: false, progress: null });
    case 'settled':
      return useResults.setState({ busy: false, progress: null });
  }
}
function heardPiece(piece: PieceView): void {
  acceptDocument();
  stuckOn = null;
  refused = null;
  if (opening.fresh) {
    opening.fresh = false;
    useCured.setState({ list: [] });
    useResults.setState({ ...NOTHING, busy: true });
    const first = piece.sizes.find((s) => s.span && s.kind === 'length');
    const example = useAside.getState().own ? { screen: saw().screen, together: 0 } : {};
    look({ ...FRESH, face: first?.axis ?? 'x', size: first?.id ?? null, ...example });
    if (!useAside.getState().own) lastId.set(useDocument.getState().id);
    keepSoon();
  }
  useResults.setState({ piece, failed: null });
  const { part, size } = saw();
  if (part !== null && !piece.parts.some((p) => p.path === part)) look({ part: null });
  if (size !== null && !piece.sizes.some((s) => s.id === size)) look({ size: null });
  showScene();
}
/** The sheet changes only when every mesh of the new piece is here; until then it keeps the last whole picture. */
function showScene(): void {
  const piece = useResults.getState().piece;
  if (!piece || piece.parts.some((p) => !meshes.has(p.key))) return;
  const used = new Map<string, MeshView>();
  for (const p of piece.parts) {
    const mesh = meshes.get(p.key);
    if (mesh) used.set(p.key, mesh);
  }
  useResults.setState({ scene: { piece, meshes: used } });
  const spare = [...meshes.keys()].filter((k) => !used.has(k));
  const gone = spare.slice(0, Math.max(0, meshes.size - MOST_MESHES));
  for (const key of gone) meshes.delete(key);
  if (gone.length) client().forget(gone);
}
/** One finding is always open while any stops the piece. */
function openWorst(): void {
  const findings = useResults.getState().verdict?.findings ?? [];
  const { finding } = saw();
  if (finding !== null && findings.some((f) => f.key === finding)) return;
  look({ finding: findings.find((f) => f.grade === 'stops')?.key ?? null });
}
function heardTrouble(problems: readonly Problem[]): void {
  const lines = problems.slice(0, 6).map(problemLine);
  const wasOpening = opening.fresh;
  opening.fresh = false;
  fallBack();
  useResults.setState({ busy: false, progress: null });
  const text = documentText();
  if (text === null) look({ screen: 'start' });
  else client().open(text);
  if (wasOpening) band(`${opening.name} cannot be used${text === null ? '' : '; your piece stays as it was'}.`, lines);
  else if (refused) refused(plainly(problems[0]));
  else band('That change cannot be; the piece stays as it was.', lines);
  refused = null;
  keepSoon();
}
/** Without the place, which the maker is looking at. */
const plainly = (p: Problem | undefined): string =>
  p ? `${p.what.replace(/\.$/, '')}${p.nearest ? `; perhaps “${p.nearest}”` : ''}` : 'that cannot be';

/** The worker hung: the last edit is set aside, and it may try once more; a second time on the same document it may not. */
function heardStuck(why: string): boolean {
  meshes.clear();
  const { json, past } = useDocument.getState();
  if (stuckOn === json) {
    useResults.setState({
      failed: `The tool stopped on this piece: ${why}. It is safe and kept on this machine.`,
      busy: false,
      progress: null,
    });
    return false;
  }
  const step = past.at(-1);
  if (step) {
    undoDocument();
    band(`“${step.words}” took the tool too long and was set aside.`, [], [{ words: 'Try it again', run: redo }]);
  }
  stuckOn = useDocument.getState().json;
  return true;
}
function band(words: string, lines: readonly string[], verbs: readonly { words: string; run: () => void }[] = []): void {
  look({ band: { words, lines, verbs: [...verbs, { words: 'Understood', run: () => look({ band: null }) }] } });
}
/** Draws and asks again after the tool broke. */
export function again(): void {
  const text = documentText();
  useResults.setState({ failed: null, busy: true });
  stuckOn = null;
  if (text !== null) client().open(text);
}
export const askBite = (finding: string): void => client().bite(finding);
export const stop = (): void => client().stop();
export const layAgain = (): void => {
  useResults.setState({ unlaid: null });
  client().lay();
};

// Keeping: soon after each change, at once when the page is left.
let timer: ReturnType<typeof setTimeout> | undefined;
function keepSoon(): void {
  clearTimeout(timer);
  timer = setTimeout(() => void keepNow(), 400);
}
export async function keepNow(): Promise<void> {
  clearTimeout(timer);
  const { id, json } = useDocument.getState();
  if (id === null || json === null || useAside.getState().own) return;
  const verdict = useResults.getState().verdict?.verdict;
  const piece: Kept = { id, title: titleOf(json), text: JSON.stringify(json), at: Date.now(), ...(verdict ? { verdict } : {}) };
  try {
    await keep(piece);
    useKeeping.setState({ kept: true });
  } catch {
    useKeeping.setState({ kept: false });
  }
}

export async function saveDocument(): Promise<void> {
  const { json } = useDocument.getState();
  const name = fileName(titleOf(json), '.dryfit.json');
  if (await saveFile(name, new Blob([documentFile()], { type: 'application/json' }))) look({ notice: { words: `saved as ${name}` } });
}
/** A file that the core makes of the piece: the client's view, an exchange file, the cut list. */
export async function saveMade(kind: FileKind): Promise<void> {
  try {
    const made = await client().make(kind);
    if (await saveFile(made.name, new Blob([made.bytes], { type: made.type }))) look({ notice: { words: `saved as ${made.name}` } });
  } catch (e) {
    look({ notice: { words: `could not be made: ${e instanceof Error ? e.message : String(e)}` } });
  }
}
/** What was on the sheet when the page was left, if it is still kept here. */
export async function openLast(): Promise<void> {
  const id = lastId.get();
  if (id === null) return;
  const piece = await keptPieces().then(
    (all) => all.find((p) => p.id === id),
    () => undefined,
  );
  if (piece) openText(piece.text, piece.id, `“${piece.title}”`);
  if (useDocument.getState().json === null) look({ screen: 'start' });
}
