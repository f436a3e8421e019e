/** The starters that come with the app, and opening one that the address names: …/#writing-desk. */
import { openText } from '../document/piece.ts';
import { look } from '../look/view.ts';

/** One entry of public/starters/index.json. */
export type Starter = { readonly file: string; readonly title: string; readonly words: string };

export async function starterList(): Promise<readonly Starter[]> {
  const answer = await fetch('starters/index.json');
  if (!answer.ok) throw new Error(String(answer.status));
  return ((await answer.json()) as { starters: readonly Starter[] }).starters;
}
export async function openStarter(s: Pick<Starter, 'file' | 'title'>): Promise<void> {
  try {
    const answer = await fetch(`starters/${s.file}`);
    if (!answer.ok) throw new Error(String(answer.status));
    openText(await answer.text(), undefined, `“${s.title}”`);
  } catch {
    look({
      band: { words: `“${s.title}” could not be loaded.`, verbs: [{ words: 'Understood', run: () => look({ band: null }) }] },
    });
  }
}
/** Opens the starter that the address names; false when it names none. The name leaves the address, so that a reload keeps the maker's work. */
export async function openFromAddress(): Promise<boolean> {
  const named = /^#([a-z][a-z-]{0,40})$/.exec(location.hash)?.[1];
  if (named === undefined) return false;
  const found = await starterList().then(
    (all) => all.find((s) => s.file === `${named}.json`),
    () => undefined,
  );
  if (!found) return false;
  history.replaceState(null, '', location.pathname + location.search);
  await openStarter(found);
  return true;
}
