/** Names from a document on their way into a file that another program reads. */
import { shown } from '../model/problem.ts';

/**
 * A name that no reader stumbles over: control and direction-turning characters and halves of characters become U+FFFD, blanks at
 * the ends go, and it is cut at `most` characters. Markup stays as it is: who writes a page escapes it there. Never empty.
 */
export function plainName(text: string, most = 200): string {
  const name = shown(text, most)
    .replace(/\p{Surrogate}/gu, '\ufffd')
    .trim();
  return name === '' ? 'without a name' : name;
}
