/** Pieces kept on this machine (IndexedDB), newest first, so that a reload or a crash loses nothing. */
import { type IDBPDatabase, openDB } from 'idb';

export type Kept = { readonly id: string; readonly title: string; readonly text: string; readonly at: number; readonly verdict?: string };
const MOST = 24;

let opened: Promise<IDBPDatabase> | null = null;
function database(): Promise<IDBPDatabase> {
  opened ??= openDB('dryfit', 1, {
    upgrade(db) {
      db.createObjectStore('pieces', { keyPath: 'id' }).createIndex('at', 'at');
    },
  });
  opened.catch(() => (opened = null));
  return opened;
}

export async function keep(piece: Kept): Promise<void> {
  const db = await database();
  await db.put('pieces', piece);
  const ids = (await db.getAllKeysFromIndex('pieces', 'at')) as string[];
  for (const id of ids.slice(0, Math.max(0, ids.length - MOST))) await db.delete('pieces', id);
}
export async function keptPieces(): Promise<readonly Kept[]> {
  const db = await database();
  return ((await db.getAllFromIndex('pieces', 'at')) as Kept[]).reverse();
}
export async function letGo(id: string): Promise<void> {
  await (await database()).delete('pieces', id);
}
/** Which piece was on the sheet when the page was left; the page's own address of a piece, so never on a server. */
export const lastId = {
  get: (): string | null => attempt(() => localStorage.getItem('dryfit.last')),
  set: (id: string | null): void =>
    void attempt(() => (id === null ? localStorage.removeItem('dryfit.last') : localStorage.setItem('dryfit.last', id))),
};
/** Storage may be forbidden altogether; the app then works without. */
export function attempt<T>(act: () => T): T | null {
  try {
    return act();
  } catch {
    return null;
  }
}
