/** Files that the piece worker makes on demand. */
import type { Built } from '../../src/build/build.ts';
import type { Store } from '../../src/build/store.ts';
import type { Document } from '../../src/model/document.ts';
import clientScript from '../../dist/client.js?url';
import { fileName } from '../document/files.ts';
import type { FileKind } from './protocol.ts';

export type Made = { readonly name: string; readonly type: string; readonly bytes: Uint8Array<ArrayBuffer> };

/** The makers come with the first file that is asked for. A name is the title made safe, with the ending of its kind. */
export async function makeFile(kind: FileKind, doc: Document, built: Built, store: Store): Promise<Made> {
  const { clientPageOf, cutListOf, glbOf } = await import('../../src/piece/files.ts');
  if (kind === 'glb') return { name: fileName(doc.title, '.glb'), type: 'model/gltf-binary', bytes: glbOf(doc, built, store) };
  if (kind === 'cut-list') return { name: fileName(doc.title, '-cut-list.csv'), type: 'text/csv', bytes: utf8(cutListOf(doc, built)) };
  const { orderOf } = await import('../../src/piece/order.ts');
  const page = clientPageOf(doc, built, store, orderOf(built, store), await viewerText());
  return { name: fileName(doc.title, '.html'), type: 'text/html', bytes: utf8(page) };
}
const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
/** The viewer's script is fetched from beside the app only when a page is asked for. */
async function viewerText(): Promise<string> {
  const answer = await fetch(new URL(clientScript, import.meta.url));
  if (!answer.ok) throw new Error('The viewer for the page is not there.');
  return answer.text();
}
