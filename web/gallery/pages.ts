/** The gallery's pages, fetched when they are first looked at: they are made when the app is built and lie beside it. */
import type { Listed, PageText } from '../../src/papers/page.ts';

let all: Promise<readonly Listed[]> | null = null;
const known = new Map<string, Promise<PageText>>();

async function read(file: string): Promise<unknown> {
  const answer = await fetch(`gallery/${file}`);
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}
/** What could not be loaded is asked for anew the next time. */
export function listedPages(): Promise<readonly Listed[]> {
  all ??= read('index.json').then((r) => (r as { pages: readonly Listed[] }).pages);
  all.catch(() => (all = null));
  return all;
}
export function pageText(id: string): Promise<PageText> {
  const had = known.get(id);
  if (had) return had;
  const asked = read(`${id}.json`).then((r) => r as PageText);
  known.set(id, asked);
  asked.catch(() => known.delete(id));
  return asked;
}
