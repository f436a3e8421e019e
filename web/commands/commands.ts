/** What can be done by key, one object a command; the list that '?' shows is made of the same. */
import { redo, saveDocument, undo } from '../document/piece.ts';
import { type Page, type Seen, look, saw } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { paragraphs } from '../said/paragraphs.ts';

export type Command = { readonly keys: readonly string[]; readonly words: string; readonly run: () => void };

const page = (key: string, p: Page, words: string): Command => ({ keys: [key], words, run: () => look({ page: p, screen: 'piece' }) });
const seen = (key: string, s: Seen): Command => ({
  keys: [key],
  words: `see it ${s === 'freely' ? s : `from ${s === 'side' || s === 'front' ? 'the ' : ''}${s}`}`,
  run: () => look({ seen: s }),
});
const focusOn = (selector: string) => (): void => document.querySelector<HTMLElement>(selector)?.focus();

function nextFinding(by: 1 | -1): void {
  const keys = paragraphs(useResults.getState().verdict?.findings ?? []).flatMap((p) => p.all.map((f) => f.key));
  if (!keys.length) return;
  const at = keys.indexOf(saw().finding ?? '');
  look({ finding: keys[at < 0 ? (by > 0 ? 0 : keys.length - 1) : (at + by + keys.length) % keys.length] ?? null, part: null, focus: true });
}
function step(by: 1 | -1): void {
  const n = useResults.getState().order?.steps.length ?? 0;
  if (n) look({ together: Math.min(1, Math.max(0, (Math.round(saw().together * n) + by) / n)) });
}
/** Esc undoes the nearest way of looking first. */
function back(): void {
  const v = saw();
  if (v.keys) look({ keys: false });
  else if (v.band) look({ band: null });
  else if (v.alone) look({ alone: false });
  else if (v.part !== null) look({ part: null });
  else if (v.focus) look({ focus: false });
  else if (v.cut) look({ cut: null });
  else if (v.pulled) look({ pulled: false });
  else if (v.together < 1) look({ together: 1 });
}
export const COMMANDS: readonly Command[] = [
  { keys: ['Control+z', 'Meta+z'], words: 'undo', run: undo },
  { keys: ['Control+Shift+z', 'Meta+Shift+z', 'Control+y'], words: 'redo', run: redo },
  { keys: ['Control+s', 'Meta+s'], words: 'save a file', run: () => void saveDocument() },
  page('1', 'boards', 'boards'),
  page('2', 'list', 'cut list'),
  page('3', 'order', 'order of work'),
  { keys: ['v'], words: 'to the verdict', run: focusOn('.finding > button') },
  { keys: ['s'], words: 'to the stick', run: focusOn('#size, .lath button') },
  { keys: ['b'], words: 'to the boards', run: () => (look({ page: 'boards' }), focusOn('.bench .words button')()) },
  { keys: ['p'], words: 'to the piece on the sheet', run: focusOn('.sheet canvas') },
  { keys: ['['], words: 'previous finding', run: () => nextFinding(-1) },
  { keys: [']'], words: 'next finding', run: () => nextFinding(1) },
  { keys: [','], words: 'one step apart', run: () => step(-1) },
  { keys: ['.'], words: 'one step together', run: () => step(1) },
  seen('f', 'freely'),
  seen('r', 'front'),
  seen('d', 'side'),
  seen('a', 'above'),
  { keys: ['c'], words: 'cut open, or whole again', run: () => look({ cut: saw().cut ? null : { axis: 'x', at: 0.5 } }) },
  { keys: ['l'], words: 'look at the chosen part alone', run: () => look({ alone: saw().part !== null && !saw().alone }) },
  { keys: ['Escape'], words: 'back', run: back },
  { keys: ['?'], words: 'this list', run: () => look({ keys: !saw().keys }) },
];
/** On the sheet itself, where the canvas has the focus. */
export const SHEET_KEYS: readonly (readonly [string, string])[] = [
  ['arrow keys', 'turn by 15°'],
  ['Shift and arrow keys', 'move the paper'],
  ['+ −', 'nearer, farther'],
  ['Home', 'as at first'],
];
const named = (e: KeyboardEvent): string =>
  `${e.ctrlKey ? 'Control+' : ''}${e.metaKey ? 'Meta+' : ''}${e.shiftKey && e.key.length > 1 ? 'Shift+' : e.shiftKey && (e.ctrlKey || e.metaKey) ? 'Shift+' : ''}${e.key.length === 1 ? e.key.toLowerCase() : e.key}`;

export function onKey(e: KeyboardEvent): void {
  const target = e.target as HTMLElement | null;
  const typing = target?.closest('input, textarea, select, [contenteditable]') !== null && target !== null;
  if (e.defaultPrevented || e.altKey || saw().screen !== 'piece') return;
  const name = named(e);
  const command = COMMANDS.find((c) => c.keys.includes(name));
  if (!command || (typing && !e.ctrlKey && !e.metaKey)) return;
  // In a field, undo is the field's own while it holds unapplied text.
  if (typing && command.words !== 'save a file') return;
  e.preventDefault();
  command.run();
}
