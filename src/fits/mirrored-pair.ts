/**
 * Left and right made alike where they ought to be mirror images. Judged from the document alone: two parts that are called left and right (or
 * front and rear) of one thing, and stand as mirror images of each other, while what is shaped or marked on them does not.
 */
import type { Part } from '../build/part.ts';
import { cornersOf, middleOf } from '../geom/box.ts';
import { type Frame, compose, mirrored, outDir, outPoint } from '../geom/frame.ts';
import { type Axis, AXES, type Vec3, axisIndex, axisVec, quantise3, sub } from '../geom/vec3.ts';
import type { Finding, Remedy } from '../model/finding.ts';
import { type Face, faceSide, isFace } from '../model/ids.ts';
import { signature } from '../model/part-record.ts';
import { type Check, type Facts, cap, finding, remedy, the } from './check.ts';
import { PLAIN_LABELS } from './plain-labels.ts';

export const mirroredPair: Check = {
  id: 'mirrored-pair',
  wave: 1,
  words: 'Two parts that are called left and right are made alike where they ought to be mirror images.',
  run: (facts) => pairsOf([...facts.built.built.parts.values()]).flatMap((pair) => judged(facts, pair) ?? []),
};

type Pair = { readonly a: Part; readonly b: Part; readonly axis: Axis };
const HANDS: readonly (readonly [low: string, high: string, axis: Axis])[] = [
  ['left', 'right', 'x'],
  ['front', 'rear', 'y'],
];
/** Parts whose words differ in nothing but left and right, or front and rear. */
function pairsOf(parts: readonly Part[]): Pair[] {
  return HANDS.flatMap(([low, high, axis]) => {
    const named = (hand: string): Map<string, Part> => {
      const out = new Map<string, Part>();
      for (const p of parts) {
        const words = p.words.split(' ');
        if (words.filter((w) => w === hand).length === 1) out.set(words.map((w) => (w === hand ? '*' : w)).join(' '), p);
      }
      return out;
    };
    const highs = named(high);
    return [...named(low)].flatMap(([words, a]) => {
      const b = highs.get(words);
      return b && a.wood === b.wood ? [{ a, b, axis }] : [];
    });
  });
}
/** The record frame about the middle of the stock, turned as the part stands in the world. */
function standing(p: Part): { readonly frame: Frame; readonly middle: Vec3 } {
  const middle = outPoint(p.frame, middleOf(p.record.stock));
  return { middle, frame: { ...p.frame, o: sub(p.frame.o, middle) } };
}
const corners = (p: Part, f: Frame): string =>
  cornersOf(p.record.stock)
    .map((c) =>
      quantise3(outPoint(f, c))
        .map((n) => n.toFixed(4))
        .join(' '),
    )
    .sort()
    .join(', ');
/** What is shaped from the part, for its own sake, as it stands. */
const shaped = (p: Part, f: Frame): string =>
  p.record.features
    .flatMap((x, i) => (p.origins[i] === null ? [signature(x, f)] : []))
    .sort()
    .join(' ');

function judged(facts: Facts, pair: Pair): Finding | null {
  const { a, b, axis } = pair;
  const [sa, sb] = [standing(a), standing(b)];
  const apart = sub(sb.middle, sa.middle);
  const i = axisIndex(axis);
  const beside = AXES.every((x) => (x === axis ? Math.abs(apart[i]) > 1 : Math.abs(apart[axisIndex(x)]) < 0.5));
  const image = compose(mirrored(axis, 0), sa.frame);
  if (!beside || corners(a, image) !== corners(b, sb.frame)) return null;
  const shapes = shaped(a, image) !== shaped(b, sb.frame) && shaped(a, sa.frame) === shaped(b, sb.frame);
  const marks = marksAlike(pair, Math.sign(apart[i]) as 1 | -1);
  return shapes || marks.length ? describe(facts, pair, sa.middle, shapes, marks) : null;
}
type Alike = { readonly mark: string; readonly wrong: Part };
/** Marks of one name that both look the same way along the line between the parts, and the part on which it looks the wrong way. */
function marksAlike({ a, b, axis }: Pair, toB: 1 | -1): Alike[] {
  const i = axisIndex(axis);
  return Object.keys(a.doc.marks ?? {}).flatMap((mark) => {
    const [da, db] = [a, b].map((p) => looks(p, p.doc.marks?.[mark])[i]);
    if (da === undefined || db === undefined || Math.abs(da) < 0.99 || Math.sign(da) !== Math.sign(db) || Math.abs(db) < 0.99) return [];
    const towards = Math.sign(da) === toB ? a : b;
    const away = towards === a ? b : a;
    return [{ mark, wrong: mark.startsWith('out') ? towards : away }];
  });
}
function looks(p: Part, face: string | undefined): Vec3 {
  if (face === undefined || !isFace(face)) return [0, 0, 0];
  const { axis, high } = faceSide(face);
  return outDir(p.frame, axisVec(AXES[axis] ?? 'x', high ? 1 : -1));
}

function describe(facts: Facts, { a, b }: Pair, at: Vec3, shapes: boolean, marks: readonly Alike[]): Finding {
  const [first] = marks;
  const said = marks.map((m) => `the mark “${m.mark.replaceAll('_', ' ')}”`);
  const what = [...(shapes ? ['what is shaped from them'] : []), ...said].join(' and ');
  return finding({
    rule: 'mirrored-pair',
    grade: 'trouble',
    title: 'Left and right are made alike',
    parts: [a.path, b.path],
    where: { at, reach: 60 },
    measured: marks.length + (shapes ? 1 : 0),
    limit: 0,
    unit: 'count',
    basis: 'drawn',
    why: `${cap(the(facts, a.path))} and ${the(facts, b.path)} stand as mirror images, but ${what} looks the same way on both${first ? `: on ${the(facts, first.wrong.path)} it looks the wrong way` : ''}. Two of one hand do not make a pair; make one the mirror copy of the other.`,
    source: { name: 'the marks and shapes of the document', basis: 'derived' },
    remedies: marks.length === 1 && first ? turned(first) : [],
  });
}
/** The mark on the opposite face; only where the part is no copy, so that nothing else turns with it. */
function turned({ mark, wrong }: Alike): Remedy[] {
  const face = wrong.doc.marks?.[mark];
  if (face === undefined || !isFace(face) || wrong.instance.names.length > 0) return [];
  const { quad, high } = faceSide(face);
  const value: Face = high ? quad.low : quad.high;
  return [
    remedy(
      PLAIN_LABELS.turnMark,
      [{ op: 'replace', path: `parts/${wrong.id}/marks/${mark}`, value, was: face }],
      'What is shaped from the mark turns with it.',
    ),
  ];
}
