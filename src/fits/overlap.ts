import type { JointPlace, Part } from '../build/part.ts';
import { type Box, boxesNear, outBox, sizeOf } from '../geom/box.ts';
import { HOME, quarterTurn, seenFrom } from '../geom/frame.ts';
import type { Finding, Remedy } from '../model/finding.ts';
import { QUADS } from '../model/ids.ts';
import type { Bite } from '../solids/pair.ts';
import { overlaps } from '../units/tolerance.ts';
import { collisionTold } from './family-rules.ts';
import { type Check, type Facts, asPlaced, cap, finding, lengthKept, lengthText, partsOf, remedy, setPatch, the, wordsOf } from './check.ts';

/** Wood that is asked to be in two places at once: any two parts, joints cut, as built. */
export const overlap: Check = {
  id: 'overlap',
  wave: 2,
  words: 'Two parts are asked to be in the same place.',
  run: (facts) => {
    const store = facts.store;
    if (!store) return [];
    const b = facts.built.built;
    const all = [...b.parts.values(), ...b.extras.values()].flatMap((p) => {
      const placed = asPlaced(p);
      const box = store.box(placed);
      return box ? [{ path: p.path, placed, box: outBox(p.frame, box) }] : [];
    });
    const tight = tightPairs(b.places);
    const out: Finding[] = [];
    for (const [a, c] of nearPairs(all)) {
      if (tight.has(pairKey(a.path, c.path))) continue;
      const bite = store.bite(a.placed, c.placed);
      if (!bite || !overlaps(bite.volume, bite.area)) continue;
      const shared = sharedReceiver(b.places, a.path, c.path);
      if (shared && collisionTold(facts, ...shared.places)) continue;
      out.push(describe(facts, a.path, c.path, bite, shared));
    }
    return out;
  },
};

/** Pairs whose boxes come together, by a sweep along x. */
export function nearPairs<T extends { readonly path: string; readonly box: Box }>(all: readonly T[]): [T, T][] {
  const sorted = all.toSorted((p, q) => p.box.min[0] - q.box.min[0] || (p.path < q.path ? -1 : 1));
  const out: [T, T][] = [];
  sorted.forEach((p, i) => {
    for (let j = i + 1; j < sorted.length; j++) {
      const q = sorted[j] as T;
      if (q.box.min[0] > p.box.max[0]) break;
      if (boxesNear(p.box, q.box)) out.push(p.path < q.path ? [p, q] : [q, p]);
    }
  });
  return out;
}
const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Pairs that are meant to be tight: a drawbored peg, a wedge in its kerf. Their fit is judged from their surfaces. */
function tightPairs(places: readonly JointPlace[]): Set<string> {
  const out = new Set<string>();
  for (const p of places)
    for (const c of p.made?.contacts ?? []) {
      if (c.fit !== 'press' && c.meant >= 0) continue;
      const [a, b] = c.between.map((s) => (s.role === 'extra' ? `${p.joint}/${p.place}/${(p.made?.extras[s.index ?? 0]?.name ?? '').replaceAll(' ', '_')}` : (p.roles[s.role]?.[s.index ?? 0] ?? '')));
      out.add(pairKey(a ?? '', b ?? ''));
    }
  return out;
}

function describe(facts: Facts, a: string, b: string, bite: Bite, shared: Shared | null): Finding {
  const size = sizeOf(bite.box);
  const reach = Math.max(15, Math.hypot(size[0], size[1], size[2]) / 2);
  const deep = bite.thickness;
  const inside = shared ? `Inside ${the(facts, shared.receiver)} the ends of ${the(facts, a)} and ${the(facts, b)}` : `${cap(the(facts, a))} and ${the(facts, b)}`;
  return finding({
    rule: shared ? 'joints-collide' : 'overlap',
    grade: 'stops',
    title: shared ? 'Two joints in the same wood' : 'Two parts in the same place',
    parts: shared ? [a, b, shared.receiver] : [a, b],
    where: { at: bite.at, reach, cut: cutAcross(size) },
    measured: deep,
    limit: 0,
    unit: 'mm',
    basis: 'computed',
    why: `${inside} share {mm:${Math.min(...size)}} of wood, over {mm:${Math.max(...size)}}. They may touch; they may not share.`,
    source: { name: 'the solids of the parts as built', basis: 'derived' },
    remedies: shared ? jointRemedies(facts, shared.places, bite) : pushRemedies(facts, a, b, bite),
  });
}
/** The section that shows it best cuts across the longest way of what is shared. */
function cutAcross(size: readonly [number, number, number]): readonly [number, number, number] {
  const i = size.indexOf(Math.max(...size));
  return [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
}

type Shared = { readonly receiver: string; readonly places: readonly [JointPlace, JointPlace] };
/** The part that both enter, where they are the entering parts of two places. */
function sharedReceiver(places: readonly JointPlace[], a: string, b: string): Shared | null {
  const enters = (path: string): JointPlace[] => places.filter((p) => partsOf(p)[0] === path);
  for (const p of enters(a))
    for (const q of enters(b)) {
      const receiver = partsOf(p)[1];
      if (receiver !== undefined && receiver === partsOf(q)[1]) return { receiver, places: [p, q] };
    }
  return null;
}

/** Mitre the ends, or shorten to the longest that clears: whatever the joints' families have a word for. */
function jointRemedies(facts: Facts, places: readonly [JointPlace, JointPlace], bite: Bite): Remedy[] {
  const unit = facts.doc.units;
  const [p, q] = places;
  const out: Remedy[] = [];
  const joints = [...new Set([p.joint, q.joint])];
  const depth = (pl: JointPlace): number => sizeOf(outBox(seenFrom(pl.meeting.frame, HOME), bite.box))[2];
  const lengthOf = (pl: JointPlace): number | null => (typeof pl.sizes?.['length'] === 'number' && pl.family.params['length']?.kind === 'length' ? pl.sizes['length'] : null);
  const mitred = (pl: JointPlace): boolean => pl.family.params['end']?.options?.['mitred'] !== undefined;
  if (joints.length === 1 && mitred(p)) out.push(remedy('Mitre their ends', setPatch(facts.doc, p.joint, 'end', 'mitred'), 'Keeps their full length on the outside.'));
  const shorter = (list: readonly JointPlace[], by: number, label: string): void => {
    const lengths = list.map(lengthOf);
    if (lengths.some((l) => l === null || l - by < 5)) return;
    const keep = lengthKept(Math.min(...(lengths as number[])) - by, unit);
    const patches = [...new Set(list.map((l) => l.joint))].flatMap((j) => setPatch(facts.doc, j, 'length', lengthText(keep, unit)));
    out.push(remedy(`${label} {mm:${keep}}`, patches, `Takes {mm:${Math.min(...(lengths as number[])) - keep}} off their length.`));
  };
  if (joints.length === 1) shorter([p, q], Math.min(depth(p), depth(q)), 'Shorten both to');
  else {
    shorter([p], depth(p), `Shorten the end of ${the(facts, partsOf(p)[0] ?? '')} to`);
    shorter([q], depth(q), `Shorten the end of ${the(facts, partsOf(q)[0] ?? '')} to`);
  }
  return out;
}

/** Move one face back by what they share: an expression gets "+ d" or "- d" appended, never a number put in its place. */
function pushRemedies(facts: Facts, a: string, b: string, bite: Bite): Remedy[] {
  const out: Remedy[] = [];
  for (const [path, other] of [[a, b], [b, a]] as const) {
    const part = facts.built.built.parts.get(path);
    const rest = facts.built.built.parts.get(other);
    if (part && rest) out.push(...pushFaces(facts, part, rest, bite));
  }
  return out;
}
function pushFaces(facts: Facts, part: Part, other: Part, bite: Bite): Remedy[] {
  const rel = seenFrom(part.frame, HOME);
  if (!quarterTurn(rel)) return [];
  const box = outBox(rel, bite.box);
  const size = sizeOf(box);
  const unit = facts.doc.units;
  const axis = size.indexOf(Math.min(...size)) as 0 | 1 | 2;
  const quad = QUADS[axis];
  const stock = part.record.stock;
  const by = size[axis];
  if (by > 0.5 * sizeOf(stock)[axis]) return [];
  // The face that reaches into the other part is the one that the shared wood lies against.
  const high = Math.abs(box.max[axis] - stock.max[axis]) <= Math.abs(box.min[axis] - stock.min[axis]);
  const face = high ? quad.high : quad.low;
  const given = part.doc[face];
  const word = given !== undefined ? face : part.doc[quad.size] !== undefined ? quad.size : null;
  const old = word === null ? undefined : part.doc[word];
  if (word === null || old === undefined || typeof old === 'object') return [];
  const tick = unit === 'mm' ? 0.5 : 25.4 / 32;
  const d = Math.ceil(by / tick - 1e-6) * tick;
  const sign = word === quad.size || high ? '-' : '+';
  const patch = { op: 'replace' as const, path: `parts/${part.id}/${word}`, value: `${old} ${sign} ${lengthText(d, unit)}`, was: old };
  return [remedy(`Take {mm:${d}} off the ${face} of the ${wordsOf(facts, part.path)}`, [patch], part.instance.names.length ? 'All its copies follow.' : `The ${wordsOf(facts, other.path)} stays as it is.`)];
}
