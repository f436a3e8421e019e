/** Where a size stands in the document, and the patch that changes it. */
import type { Json, Patch } from '../../src/model/finding.ts';
import type { SizeView } from '../../src/piece/view.ts';
import { readAngle, readLength } from '../../src/units/parse.ts';

const at = (json: Json | undefined, key: string): Json | undefined =>
  json !== null && typeof json === 'object' && !Array.isArray(json) && Object.hasOwn(json, key)
    ? (json as Record<string, Json>)[key]
    : undefined;

/** 'high' → sizes/high; 'top.width' and 'leg:left:front.width' → parts/top/width, parts/leg/width. Null when it is not written anywhere. */
export function placeOfSize(json: Json, id: string): string | null {
  if (at(at(json, 'sizes'), id) !== undefined) return `sizes/${id}`;
  const dot = id.lastIndexOf('.');
  const [owner, word] = [id.slice(0, dot).split(':')[0] ?? '', id.slice(dot + 1)];
  if (dot > 0)
    for (const kind of ['parts', 'spaces', 'groups'])
      if (at(at(at(json, kind), owner), word) !== undefined) return `${kind}/${owner}/${word}`;
  return null;
}
function writtenAt(json: Json, place: string): Json | undefined {
  return place.split('/').reduce<Json | undefined>((v, key) => at(v, key), json);
}
export function sizePatch(json: Json, id: string, text: string): Patch | null {
  const place = placeOfSize(json, id);
  const was = place === null ? undefined : writtenAt(json, place);
  return place === null || was === undefined ? null : { op: 'replace', path: place, value: text, was };
}
/** Is the size written as a plain measure, or made of others? */
export function isPlain(size: SizeView): boolean {
  if (size.kind === 'number') return Number.isFinite(Number(size.text));
  const read = size.kind === 'angle' ? readAngle(size.text) : readLength(size.text, 'mm');
  return read.ok || 'ask' in read;
}
