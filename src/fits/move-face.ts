/** Cures that move one face of a part: "+ d" or "- d" appended to the expression that gives it, never a number put in its place. */
import type { JointPlace, Part } from '../build/part.ts';
import type { Remedy } from '../model/finding.ts';
import { type Face, faceSide, isFace } from '../model/ids.ts';
import { type Facts, exactText, partsOf, remedy, wordsOf } from './check.ts';

/** The face of the part `by` mm farther out (below 0: in). null where an expression of its own gives neither the face nor the size, or too little would be left. */
export function moveFace(facts: Facts, part: Part, face: Face, by: number): Remedy | null {
  const { quad, axis, high } = faceSide(face);
  const other = high ? quad.low : quad.high;
  // With a face and a size given, the size moves the face that is not; with a middle, both.
  const word = part.doc[face] !== undefined ? face : part.doc[quad.size] !== undefined && part.doc[other] !== undefined ? quad.size : null;
  const old = word === null ? undefined : part.doc[word];
  const size = part.record.stock.max[axis] - part.record.stock.min[axis];
  if (word === null || (typeof old !== 'string' && typeof old !== 'number') || Math.abs(by) < 1e-4 || size + by < size / 2) return null;
  const more = (word === face ? high : true) === by > 0;
  const patch = {
    op: 'replace' as const,
    path: `parts/${part.id}/${word}`,
    value: `${old} ${more ? '+' : '-'} ${exactText(Math.abs(by), facts.doc.units)}`,
    was: old,
  };
  const name = `the ${face} of the ${wordsOf(facts, part.path)}`;
  const label = by > 0 ? `Let ${name} reach {mm:${by}} farther` : `Take {mm:${-by}} off ${name}`;
  return remedy(label, [patch], part.instance.names.length ? 'All its copies follow.' : 'Nothing else moves but what reads it.');
}

/** The entering part's end of a joint that stands `open` mm from the receiver (below 0: bites), moved until it touches. */
export function reachFarther(facts: Facts, p: JointPlace, open: number): Remedy[] {
  const [path] = partsOf(p);
  const part = facts.built.built.parts.get(path ?? '');
  const end = Object.values(p.meeting.sides)[0]?.[0]?.end;
  const moved = part && !part.frozen && end !== undefined && isFace(end) ? moveFace(facts, part, end, open) : null;
  return moved ? [moved] : [];
}
