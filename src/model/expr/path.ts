/** Which part, space or group, and which of its copies: leg:left:front, leg:*, rung:*+1. */
import { ID } from '../ids.ts';

/** A copy's name or number, every copy ('*', the reader's own name in a part's own expressions), or the next one round ('*+1'). */
type CopyRef = string;
export type PathRef = { readonly id: string; readonly names: readonly CopyRef[] };
export type Refused = { readonly ok: false; readonly at: number; readonly problem: string; readonly nearest?: string };

const PATH = /([a-zA-Z][a-zA-Z0-9_]*)((?::(?:\*\+1(?![a-z0-9_])|\*|[a-zA-Z0-9_]+))*)/y;
const WORD = /\.([a-zA-Z][a-zA-Z0-9_]*)/y;

export const refused = (at: number, problem: string, nearest?: string | null): Refused =>
  nearest ? { ok: false, at, problem, nearest } : { ok: false, at, problem };

/** A path and the word behind its point, as far as they go, at `i`; null where no letter stands. Their names are checked. */
export function pathAt(
  text: string,
  i: number,
): { readonly ok: true; readonly path: PathRef; readonly word: string | null; readonly end: number } | Refused | null {
  PATH.lastIndex = i;
  const m = PATH.exec(text);
  if (!m) return null;
  const [whole, id = '', rest = ''] = m;
  if (/[A-Z]/.test(whole)) return refused(i, `names are in small letters`, whole.toLowerCase());
  if (!ID.test(id)) return refused(i, `a name has at most 40 letters, figures and _`);
  const names = rest === '' ? [] : rest.slice(1).split(':');
  if (names.some((n) => n.length > 40)) return refused(i, 'the name of a copy has at most 40 letters, figures and _');
  let end = i + whole.length;
  if (text[end] === ':') return refused(end, 'behind ":" stands the name or number of a copy, "*" or "*+1"');
  WORD.lastIndex = end;
  const w = WORD.exec(text);
  if (w) end += w[0].length;
  const word = w?.[1] ?? null;
  if (word !== null && /[A-Z]/.test(word)) return refused(end - word.length, 'names are in small letters', word.toLowerCase());
  if (text[end] === '.')
    return refused(end, w ? 'one point at most stands in a reading' : 'behind the point stands what is read, as in leg.front');
  return { ok: true, path: { id, names }, word, end };
}

/** A path alone, as a joint's role names it. */
export function parsePath(text: string): { readonly ok: true; readonly path: PathRef } | Refused {
  const r = wholePath(text);
  if (!r.ok) return r;
  return r.word === null
    ? { ok: true, path: r.path }
    : refused(text.indexOf('.'), 'a part is wanted here, without a face or size', pathText(r.path));
}

/** A path and one word: a face, size or mark, as in { "meets": "seat.bottom" } and in measurements. The word itself is not checked. */
export function parseReading(text: string): { readonly ok: true; readonly path: PathRef; readonly of: string } | Refused {
  const r = wholePath(text);
  if (!r.ok) return r;
  return r.word === null
    ? refused(r.end, 'behind the part stands a point and one of its faces or sizes, as in seat.bottom')
    : { ok: true, path: r.path, of: r.word };
}

function wholePath(text: string): Exclude<ReturnType<typeof pathAt>, null> {
  const start = text.length - text.trimStart().length;
  if (start === text.length) return refused(0, 'a part is wanted here');
  const r = pathAt(text, start);
  if (r === null) return refused(start, 'the name of a part starts with a small letter');
  if (!r.ok || text.slice(r.end).trim() === '') return r;
  return refused(r.end, `"${text.slice(r.end, r.end + 20)}" cannot follow the name of a part`);
}

/** As it is written: id and names with colons. */
export const pathText = (p: PathRef): string => [p.id, ...p.names].join(':');
