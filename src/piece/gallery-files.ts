/** All files of the gallery, one after the other: pages as JSON for the app and as HTML for any reader, and their drawings. */
import { openStore } from '../build/store.ts';
import { galleryHtml, galleryIndex } from '../exports/gallery-html.ts';
import { svg } from '../exports/svg.ts';
import { type Listed, type Page, type PageText, cardName, drawingName } from '../papers/page.ts';
import { loadKernel } from '../solids/kernel.ts';
import { galleryEntries } from './gallery.ts';

export type GalleryFile = { readonly name: string; readonly text: string };

/** Loads the kernel from its bytes and lets go of every solid at the end. */
export async function* galleryFiles(wasmBinary: Uint8Array<ArrayBuffer>): AsyncGenerator<GalleryFile, void, void> {
  await loadKernel({ wasmBinary });
  const store = openStore();
  const listed: Listed[] = [];
  try {
    for (const entry of galleryEntries()) {
      const page = entry.page(store);
      listed.push(listing(page));
      yield* filesOf(page);
      store.prune();
    }
  } finally {
    store.close();
  }
  yield { name: 'index.json', text: JSON.stringify({ pages: listed }) };
  yield { name: 'index.html', text: galleryIndex(listed) };
}
const listing = ({ id, sort, title, words, roles, examples }: Page): Listed => ({
  id,
  sort,
  title,
  words,
  find: [...roles.map((r) => r.words), ...examples.flatMap((e) => [e.name, e.words])].join(' '),
});
function* filesOf(page: Page): Generator<GalleryFile, void, void> {
  const text: PageText = { ...page, examples: page.examples.map(({ together: _t, apart: _a, ...rest }) => rest) };
  yield { name: `${page.id}.json`, text: JSON.stringify(text) };
  yield { name: `${page.id}.html`, text: galleryHtml(page) };
  const [first] = page.examples;
  if (first) yield { name: cardName(page.id), text: svg(first.apart, page.title, false) };
  for (const [i, e] of page.examples.entries()) {
    yield { name: drawingName(page.id, i, true), text: svg(e.apart, `${page.title}: ${e.name}, drawn apart`) };
    yield { name: drawingName(page.id, i, false), text: svg(e.together, `${page.title}: ${e.name}, together`) };
  }
}
