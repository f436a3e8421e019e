/**
 * Entries of a document that were read before. A changed document shares with the one before it whatever did not change, so an edit
 * of one size has that size read again, not sixty parts; and what is read is the same object as before, by which the build knows it.
 * Whoever hands a memory in does not change a JSON value that was read with it.
 */
import type { Document } from './document.ts';

const KINDS = ['spaces', 'groups', 'parts', 'joints'] as const;
type Kind = (typeof KINDS)[number];
type Read = { readonly kind: Kind; readonly id: string; readonly entry: unknown };
/** By the raw entry. */
export type Seen = WeakMap<object, Read>;
export const nothingSeen = (): Seen => new WeakMap();

type Entries = Readonly<Record<string, unknown>>;
const entriesOf = (json: Entries, kind: Kind): Entries | null => {
  const all = json[kind];
  return all !== null && typeof all === 'object' && !Array.isArray(all) ? (all as Entries) : null;
};
function known(seen: Seen, kind: Kind, id: string, raw: unknown): Read | undefined {
  const read = raw !== null && typeof raw === 'object' ? seen.get(raw) : undefined;
  return read && read.kind === kind && read.id === id ? read : undefined;
}

/** The document without those entries that are known to be well written. */
export function unseenOf(json: Entries, seen: Seen): Entries {
  const out: Record<string, unknown> = { ...json };
  for (const kind of KINDS) {
    const all = entriesOf(json, kind);
    if (all) out[kind] = Object.fromEntries(Object.entries(all).filter(([id, raw]) => !known(seen, kind, id, raw)));
  }
  return out;
}
/** What was read of `unseenOf` with all that was left out, in the order of `json`; it is remembered. */
export function wholeOf(read: Document, json: Entries, seen: Seen): Document {
  const out: Record<string, unknown> = { ...read };
  for (const kind of KINDS) {
    const all = entriesOf(json, kind);
    if (all) out[kind] = Object.fromEntries(Object.entries(all).map(([id, raw]) => [id, entryOf(read, kind, id, raw, seen)]));
  }
  return out as Document;
}
function entryOf(read: Document, kind: Kind, id: string, raw: unknown, seen: Seen): unknown {
  const before = known(seen, kind, id, raw);
  if (before) return before.entry;
  const entry = read[kind]?.[id];
  if (raw !== null && typeof raw === 'object') seen.set(raw, { kind, id, entry });
  return entry;
}
