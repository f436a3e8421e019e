/** Cures by one named size: how far must it change so that what was measured comes to nothing? */
import type { Document } from '../model/document.ts';
import type { Finding, Patch, Remedy } from '../model/finding.ts';
import { parseExpr } from '../model/expr/parse.ts';
import { byCodePoint } from '../model/ids.ts';
import { exactText, remedy } from './check.ts';

const MOST = 3;
/** Half of what an open shoulder is judged by, mm. */
const NEAR_ENOUGH = 0.025;
/**
 * Named sizes that are plain lengths, each tried a little larger: where the finding's number answers in proportion, the size that
 * brings it to its limit is offered. `measure` judges a changed document (records only): the finding's number, null when it is gone.
 */
export function sizeRemedies(doc: Document, f: Finding, measure: (changed: Document) => number | null): Remedy[] {
  if (f.unit !== 'mm' || !(f.measured > 0)) return [];
  const unit = doc.units === 'mm' ? 1 : 25.4;
  const step = f.measured / 4;
  const out: Remedy[] = [];
  for (const id of Object.keys(doc.sizes ?? {}).sort(byCodePoint)) {
    const old = doc.sizes?.[id];
    const read = parseExpr(String(old), doc.units);
    if (old === undefined || !read.ok || read.expr.k !== 'lit' || (read.expr.value.dim !== 'flex' && read.expr.value.dim !== 'length'))
      continue;
    const mm = read.expr.value.dim === 'flex' ? read.expr.value.v * unit : read.expr.value.v;
    const text = (n: number): string => `${Number((n / unit).toFixed(4))} ${doc.units}`;
    const at = (n: number): Document => ({ ...doc, sizes: { ...doc.sizes, [id]: text(n) } });
    const moved = measure(at(mm + step));
    const slope = ((moved ?? f.measured) - f.measured) / step;
    if (Math.abs(slope) < 0.2) continue;
    const exact = mm - f.measured / slope;
    if (!(exact > 0) || Math.abs(exact - mm) > 0.2 * mm) continue;
    // On the nearest tick where that is as good: a size is typed, not computed.
    const tick = doc.units === 'mm' ? 0.1 : 25.4 / 64;
    const near = Math.round(exact / tick) * tick;
    const want = Math.abs(near - exact) < NEAR_ENOUGH ? near : exact;
    const patch: Patch = { op: 'replace', path: `sizes/${id}`, value: exactText(want, doc.units), was: old };
    out.push(remedy(`Make ${id.replaceAll('_', ' ')} {mm:${want}}`, [patch], `It is {mm:${mm}} now; all that reads it follows.`));
    if (out.length === MOST) break;
  }
  return out;
}
