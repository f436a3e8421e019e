/**
 * Parts that go together just as well the wrong way round: turned over or end for end their joints fit as before, what is shaped or grooved in
 * them does not. A mark on the wood is all that tells at the bench; where there is one, nothing is said.
 */
import type { Part } from '../build/part.ts';
import { middleOf, sizeOf } from '../geom/box.ts';
import { type Frame, outDir, outPoint } from '../geom/frame.ts';
import { AXES, type Vec3, axisIndex, axisVec, dot } from '../geom/vec3.ts';
import type { Finding, Remedy } from '../model/finding.ts';
import { type Face, faceSide, isFace } from '../model/ids.ts';
import { signature, turnsOf } from '../model/part-record.ts';
import type { Feature } from '../model/record.ts';
import { type Check, type Facts, finding, remedy, the } from './check.ts';
import { PLAIN_LABELS } from './plain-labels.ts';

export const wrongWay: Check = {
  id: 'wrong-way',
  wave: 1,
  words: 'A part would also fit the wrong way round.',
  run: (facts) => {
    const told = new Map<string, { part: Part; turns: readonly Frame[]; paths: string[] }>();
    for (const part of facts.built.built.parts.values()) {
      if (part.frozen) continue;
      const known = told.get(part.id);
      const turns = wrongTurns(facts, part);
      if (turns.length === 0) continue;
      if (known) known.paths.push(part.path);
      else told.set(part.id, { part, turns, paths: [part.path] });
    }
    return [...told.values()].map((t) => describe(facts, t.part, t.turns, t.paths));
  },
};

/** Grooves hold nothing by themselves: a panel slides into one on either side. */
const GROOVES: ReadonlySet<string> = new Set(['groove_tongue']);
const same = (features: readonly Feature[], t: Frame): boolean => {
  const there = features.map((f) => signature(f)).sort();
  return features
    .map((f) => signature(f, t))
    .sort()
    .every((s, i) => s === there[i]);
};
/** Turns of the part's box under which its joints come back on themselves and something else of it does not, and that no mark tells. */
function wrongTurns(facts: Facts, part: Part): Frame[] {
  const joints: Feature[] = [];
  const others: Feature[] = [];
  part.record.features.forEach((f, i) => {
    const origin = part.origins[i];
    const kind = origin ? facts.doc.joints?.[origin.joint]?.as.split('@')[0] : undefined;
    (origin && !GROOVES.has(kind ?? '') ? joints : others).push(f);
  });
  if (joints.length === 0 || others.length === 0) return [];
  return turnsOf(part.record).filter((t) => !marksTell(part, t) && same(joints, t) && !same(others, t));
}
const normal = (face: Face): Vec3 => {
  const { axis, high } = faceSide(face);
  return axisVec(AXES[axis] ?? 'x', high ? 1 : -1);
};
const moves = (t: Frame, face: Face): boolean => dot(outDir(t, normal(face)), normal(face)) < 0.5;
const marksTell = (part: Part, t: Frame): boolean => Object.values(part.doc.marks ?? {}).some((face) => isFace(face) && moves(t, face));

const isEnd = (part: Part, face: Face): boolean => faceSide(face).axis === axisIndex(part.record.grain);
/** One face for each way, as makers mark them. */
const MARKED: readonly Face[] = ['front', 'top', 'left'];
/** Faces to mark, so that each of the turns can be told: broad faces before edges, ends last. */
function toMark(part: Part, turns: readonly Frame[]): Face[] {
  const size = sizeOf(part.record.stock);
  const rank = (face: Face): number => (isEnd(part, face) ? 1e6 : 0) + size[faceSide(face).axis];
  const faces = MARKED.toSorted((a, b) => rank(a) - rank(b));
  const out: Face[] = [];
  let left = turns;
  while (left.length) {
    const best = faces.reduce((a, b) => (left.filter((t) => moves(t, b)).length > left.filter((t) => moves(t, a)).length ? b : a));
    if (!left.some((t) => moves(t, best))) break;
    out.push(best);
    left = left.filter((t) => !moves(t, best));
  }
  return out;
}
/** How the part is turned, as a maker would say it. */
function turnWords(part: Part, t: Frame): string {
  const grain = axisVec(part.record.grain);
  if (dot(outDir(t, grain), grain) < 0) return 'end for end';
  const across = axisVec(part.record.grain === 'x' ? 'y' : 'x');
  return Math.abs(dot(outDir(t, across), across)) > 0.5 ? 'over' : 'by a quarter';
}

function describe(facts: Facts, part: Part, turns: readonly Frame[], paths: readonly string[]): Finding {
  const faces = toMark(part, turns);
  const ways = [...new Set(turns.map((t) => turnWords(part, t)))].join(' or ');
  const marked = faces.map((f) => (isEnd(part, f) ? `its ${f} end` : `its ${f}`)).join(' and ');
  return finding({
    rule: 'wrong-way',
    grade: 'note',
    title: 'It fits the wrong way round too',
    parts: paths,
    where: { at: outPoint(part.frame, middleOf(part.record.stock)), reach: Math.max(...sizeOf(part.record.stock)) / 2 },
    measured: turns.length,
    limit: 0,
    unit: 'count',
    basis: 'drawn',
    why: `Turned ${ways} ${the(facts, part.path)} goes together as well, but what is shaped or grooved in it then lies on the wrong side. Mark ${marked}.`,
    source: { name: 'the turns of the part that leave its joints as they are', basis: 'derived' },
    remedies: markRemedy(part, faces),
  });
}
function markRemedy(part: Part, faces: readonly Face[]): Remedy[] {
  const names = ['this_way', 'this_end'];
  const add = Object.fromEntries(faces.flatMap((f, i) => (names[i] ? [[names[i], f]] : [])));
  if (faces.length === 0 || faces.length > names.length) return [];
  const at = `parts/${part.id}/marks`;
  const patches = part.doc.marks
    ? Object.entries(add).map(([name, value]) => ({ op: 'add' as const, path: `${at}/${name}`, value }))
    : [{ op: 'add' as const, path: at, value: add }];
  return [remedy(PLAIN_LABELS.markWay, patches, 'The wood is cut as before.')];
}
