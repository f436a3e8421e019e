import type { Build, JointPlace, Part } from '../build/part.ts';
import { type Box, boxesNear, outBox, sizeOf } from '../geom/box.ts';
import { HOME, quarterTurn, seenFrom } from '../geom/frame.ts';
import type { Finding, Remedy } from '../model/finding.ts';
import { FACES, type Face, faceSide } from '../model/ids.ts';
import type { Bite } from '../solids/pair.ts';
import { overlaps } from '../units/tolerance.ts';
import { bites } from './contact-gap.ts';
import { moveFace } from './move-face.ts';
import { collisionTold } from './family-rules.ts';
import { once } from './once.ts';
import { pegsTold } from './pegs-meet.ts';
import {
  type Check,
  type Facts,
  asPlaced,
  cap,
  finding,
  lengthKept,
  lengthText,
  partsOf,
  placesByPart,
  remedy,
  setPatch,
  the,
} from './check.ts';

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
    const tight = new Set(b.places.flatMap(tightPairs));
    const biting = new Set(b.places.filter(bites).map((p) => pairKey(partsOf(p)[0] ?? '', partsOf(p)[1] ?? '')));
    const pegs = pegsTold(b);
    const out: Finding[] = [];
    for (const [a, c] of nearPairs(all)) {
      if (tight.has(pairKey(a.path, c.path)) || pegs.has(pairKey(a.path, c.path)) || extrasTold(b, a.path, c.path)) continue;
      const bite = store.bite(a.placed, c.placed);
      if (!bite || !overlaps(bite.volume, bite.area)) continue;
      if (biting.has(pairKey(a.path, c.path))) continue;
      const shared = sharedReceiver(b, a.path, c.path);
      if (shared && collisionTold(...shared.places)) continue;
      if (out.length === MOST_TOLD) return [...out, andMore(a.path, c.path, bite)];
      out.push(describe(facts, a.path, c.path, bite, shared));
    }
    return out;
  },
};
/** Where everything stands in everything, the first hundred pairs say it; thousands of parts have millions of pairs. */
const MOST_TOLD = 100;
const andMore = (a: string, b: string, bite: Bite): Finding =>
  finding({
    rule: 'overlap-more',
    grade: 'stops',
    title: 'More parts in the same place',
    parts: [a, b],
    where: { at: bite.at, reach: 50 },
    measured: MOST_TOLD,
    limit: MOST_TOLD,
    unit: 'count',
    basis: 'computed',
    why: `These and more share wood; after {n:${MOST_TOLD}} pairs the rest were not looked at. Cure those first.`,
    source: { name: 'the solids of the parts as built', basis: 'derived' },
  });

/** Pairs whose boxes come together, by a sweep along x. */
function* nearPairs<T extends { readonly path: string; readonly box: Box }>(all: readonly T[]): Generator<readonly [T, T]> {
  const sorted = all.toSorted((p, q) => p.box.min[0] - q.box.min[0] || (p.path < q.path ? -1 : 1));
  for (const [i, p] of sorted.entries())
    for (let j = i + 1; j < sorted.length; j++) {
      const q = sorted[j] as T;
      if (q.box.min[0] > p.box.max[0]) break;
      if (boxesNear(p.box, q.box)) yield p.path < q.path ? [p, q] : [q, p];
    }
}
const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Pairs that are meant to be tight: a drawbored peg, a wedge in its kerf. Their fit is judged from their surfaces. */
const tightPairs = once((p: JointPlace): readonly string[] =>
  (p.made?.contacts ?? []).flatMap((c) => {
    if (c.fit !== 'press' && c.meant >= 0) return [];
    const [a, b] = c.between.map((s) =>
      s.role === 'extra'
        ? `${p.joint}/${p.place}/${(p.made?.extras[s.index ?? 0]?.name ?? '').replaceAll(' ', '_')}`
        : (p.roles[s.role]?.[s.index ?? 0] ?? ''),
    );
    return [pairKey(a ?? '', b ?? '')];
  }),
);

function describe(facts: Facts, a: string, b: string, bite: Bite, shared: Shared | null): Finding {
  const size = sizeOf(bite.box);
  const reach = Math.max(15, Math.hypot(size[0], size[1], size[2]) / 2);
  const deep = bite.thickness;
  const inside = shared
    ? `Inside ${the(facts, shared.receiver)} the ends of ${the(facts, a)} and ${the(facts, b)}`
    : `${cap(the(facts, a))} and ${the(facts, b)}`;
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
    remedies: shared ? jointRemedies(facts, shared.places, bite) : pushRemedies(facts, a, b),
  });
}
/** The section that shows it best cuts across the longest way of what is shared. */
function cutAcross(size: readonly [number, number, number]): readonly [number, number, number] {
  const i = size.indexOf(Math.max(...size));
  return [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
}

/** What two joints bring along, where a rule of their family has spoken of the two already. */
function extrasTold(build: Build, a: string, b: string): boolean {
  const [p, q] = [a, b].map((path) => {
    const e = build.extras.get(path);
    return e && placeOf(build).get(`${e.joint}/${e.place}`);
  });
  return p !== undefined && q !== undefined && p !== q && collisionTold(p, q);
}
const placeOf = once((build: Build): ReadonlyMap<string, JointPlace> => new Map(build.places.map((p) => [`${p.joint}/${p.place}`, p])));

type Shared = { readonly receiver: string; readonly places: readonly [JointPlace, JointPlace] };
/** The part that both enter, where they are the entering parts of two places. */
function sharedReceiver(build: Build, a: string, b: string): Shared | null {
  const enters = (path: string): readonly JointPlace[] => placesByPart(build).entering.get(path) ?? [];
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
  const lengthOf = (pl: JointPlace): number | null =>
    typeof pl.sizes?.['length'] === 'number' && pl.family.params['length']?.kind === 'length' ? pl.sizes['length'] : null;
  const mitred = (pl: JointPlace): boolean => pl.family.params['end']?.options?.['mitred'] !== undefined;
  if (joints.length === 1 && mitred(p))
    out.push(remedy('Mitre their ends', setPatch(facts.doc, p.joint, 'end', 'mitred'), 'Keeps their full length on the outside.'));
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

/** Move a face of one of them back until they only touch: the shortest ways first. */
function pushRemedies(facts: Facts, a: string, b: string): Remedy[] {
  const { parts } = facts.built.built;
  const ways = [
    [a, b],
    [b, a],
  ].flatMap(([path, other]) => {
    const [part, rest] = [parts.get(path ?? ''), parts.get(other ?? '')];
    return part && rest && !part.frozen ? waysOut(part, rest) : [];
  });
  return ways
    .sort((x, y) => x.by - y.by)
    .flatMap((w) => moveFace(facts, w.part, w.face, -w.by) ?? [])
    .slice(0, MOST);
}
const MOST = 4;
/** Each face of a part with how far it would have to go back to clear the other part's stock, mm. */
function waysOut(part: Part, other: Part): { part: Part; face: Face; by: number }[] {
  const rel = seenFrom(part.frame, other.frame);
  if (!quarterTurn(rel)) return [];
  const [mine, box] = [part.record.stock, outBox(rel, other.record.stock)];
  return FACES.flatMap((face) => {
    const { axis, high } = faceSide(face);
    const by = high ? mine.max[axis] - box.min[axis] : box.max[axis] - mine.min[axis];
    return by > 1e-4 ? [{ part, face, by }] : [];
  });
}
