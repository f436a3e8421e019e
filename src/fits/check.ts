/** The contract of a check: facts about it first, then a pure `run` that returns findings and never throws. */
import type { Built, Families } from '../build/build.ts';
import type { Build, Extra, JointPlace, Part } from '../build/part.ts';
import { placePath } from '../build/part.ts';
import type { Placed, Store } from '../build/store.ts';
import { type Frame, outDir, outPoint } from '../geom/frame.ts';
import { type Vec3 } from '../geom/vec3.ts';
import type { Document } from '../model/document.ts';
import type { Finding, Json, Patch, Remedy, Where } from '../model/finding.ts';
import { byCodePoint } from '../model/ids.ts';
import { once } from './once.ts';

/** What a check may look at: the document, the piece drawn and built, and (second wave) its solids. */
export type Facts = { readonly doc: Document; readonly built: Built; readonly families: Families; readonly store: Store | null };
export type Check = {
  readonly id: string;
  /** 1: records only, no kernel; 2: solids. */
  readonly wave: 1 | 2;
  /** What it finds, in a maker's words; shown in the documentation. */
  readonly words: string;
  /** Rules of it that a change of one named size may cure: tried by `sizeRemedies`. */
  readonly bySize?: readonly string[];
  readonly run: (facts: Facts) => readonly Finding[];
};

/** Stable over edits: the rule, the parts in order, the joint and its place; no numbers that are sizes. */
function keyOf(rule: string, parts: readonly string[], joint?: string): string {
  return [rule, ...[...new Set(parts)].sort(byCodePoint), ...(joint === undefined ? [] : [joint])].join(' ');
}
export type Draft = Omit<Finding, 'key' | 'remedies' | 'parts'> & {
  readonly parts: readonly string[];
  readonly remedies?: readonly Remedy[];
};
export const finding = (d: Draft): Finding => ({
  ...d,
  parts: [...new Set(d.parts)].sort(byCodePoint),
  key: keyOf(d.rule, d.parts, d.joint),
  remedies: d.remedies ?? [],
});

export const partsOf = once((p: JointPlace): readonly string[] => Object.values(p.roles).flat());
/** The places of a piece by the parts in them: those that a part enters with (the first of each place), and all that it is in. */
export const placesByPart = once(
  (
    b: Build,
  ): { readonly entering: ReadonlyMap<string, readonly JointPlace[]>; readonly all: ReadonlyMap<string, readonly JointPlace[]> } => {
    const [entering, all] = [new Map<string, JointPlace[]>(), new Map<string, JointPlace[]>()];
    const put = (to: Map<string, JointPlace[]>, path: string, p: JointPlace): void => {
      const list = to.get(path);
      if (list) list.push(p);
      else to.set(path, [p]);
    };
    for (const p of b.places) {
      put(entering, partsOf(p)[0] ?? '', p);
      for (const path of new Set(partsOf(p))) put(all, path, p);
    }
    return { entering, all };
  },
);
export const jointName = (p: JointPlace): string => placePath(p);
/** A spot of a meeting, in the world. `z` runs into the receiver. */
export function whereAt(frame: Frame, reach: number, at: Vec3 = [0, 0, 0]): Where {
  return { at: outPoint(frame, at), reach, cut: outDir(frame, [0, 1, 0]) };
}
/** How far the drawn ring must reach to hold the place: the patch of the meeting, at least 20 mm. */
export function reachOf(p: JointPlace): number {
  return Math.max(20, ...p.meeting.patch.map((q) => Math.hypot(q[0], q[1])));
}
/** 'front left leg' for a path, wherever it is: a part, or what a joint brings along. */
export function wordsOf(facts: Facts, path: string): string {
  const b = facts.built.built;
  const part = b.parts.get(path);
  if (part) return part.words;
  const extra = b.extras.get(path);
  const host = extra && b.places.find((p) => p.joint === extra.joint && p.place === extra.place);
  return extra ? `${extra.words}${host ? ` in the ${b.parts.get(partsOf(host)[0] ?? '')?.words ?? ''}` : ''}` : path;
}
export const the = (facts: Facts, path: string): string => `the ${wordsOf(facts, path)}`;
/** With a capital, for the start of a sentence. */
export const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
export const asPlaced = (p: Part | Extra): Placed => ({ record: p.record, frame: p.frame, who: p.words });

/** A change of one of the joint's own settings, as a patch of the document. */
export function setPatch(doc: Document, joint: string, key: string, value: Json | null): Patch[] {
  const set = doc.joints?.[joint]?.set;
  const was = set && Object.hasOwn(set, key) ? (set[key] as Json) : undefined;
  const path = `joints/${joint}/set/${key}`;
  if (value === null) return was === undefined ? [] : [{ op: 'remove', path, was }];
  return was === undefined ? [{ op: 'add', path, value }] : [{ op: 'replace', path, value, was }];
}
export const remedy = (label: string, patches: readonly Patch[], consequence?: string): Remedy =>
  consequence === undefined ? { label, patches, proof: 'untried' } : { label, consequence, patches, proof: 'untried' };
/** The joint without its glue, where its family has a word for that. */
export function withoutGlue(doc: Document, p: JointPlace): Patch[] {
  const { hold, glue } = p.family.params;
  const free = Object.keys(hold?.options ?? {}).find((word) => word !== 'glued');
  if (free !== undefined) return setPatch(doc, p.joint, 'hold', free);
  return glue?.options?.['no'] === undefined ? [] : setPatch(doc, p.joint, 'glue', 'no');
}
/** A length as the document's maker would write it: whole half millimetres or 32nds, rounded down so that it still clears. */
export const lengthText = (mm: number, unit: 'mm' | 'in'): string => exactText(lengthKept(mm, unit), unit);
/** A length as exactly as it is needed: in 64ths where that is what it is, else in mm. */
export function exactText(mm: number, unit: 'mm' | 'in'): string {
  const n = Math.round(mm / (25.4 / 64));
  if (unit === 'mm' || Math.abs((n * 25.4) / 64 - mm) > 1e-4) return `${Number(mm.toFixed(4))} mm`;
  const whole = Math.floor(n / 64);
  const rest = n - whole * 64;
  if (rest === 0) return `${whole} in`;
  const by = 64 / gcd(rest, 64);
  return `${whole > 0 ? `${whole}-` : ''}${(rest * by) / 64}/${by} in`;
}
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
/** Half a millimetre, or a 32nd of an inch, in mm. */
export const lengthTick = (unit: 'mm' | 'in'): number => (unit === 'mm' ? 0.5 : 25.4 / 32);
/** The same in mm, as the text will be read again. */
export const lengthKept = (mm: number, unit: 'mm' | 'in'): number => Math.floor(mm / lengthTick(unit) + 1e-6) * lengthTick(unit);
