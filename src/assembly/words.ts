/** Steps, sub-assemblies and blocked parts in a maker's words, as seen by a person who stands in front of the piece. */
import type { Vec3 } from '../geom/vec3.ts';
import { engagementAlong, entering } from './contact.ts';
import { vecOf } from './directions.ts';
import { type Scene, contactOf } from './scene.ts';
import type { Step } from './spread.ts';

const SIDES: readonly (readonly [string, string])[] = [
  ['right', 'left'],
  ['back', 'front'],
  ['above', 'below'],
];
/** Components of a direction smaller than this share of the greatest are not spoken of. */
const SPOKEN = 0.35;

/** The side that lies along `d`: 'right', 'above', 'front and above'. */
export function sideOf(d: Vec3): string {
  const most = Math.max(...d.map(Math.abs));
  const all = [0, 1, 2].filter((i) => Math.abs(d[i]!) >= SPOKEN * most).sort((a, b) => Math.abs(d[b]!) - Math.abs(d[a]!) || a - b);
  return all.map((i) => SIDES[i]![d[i]! > 0 ? 0 : 1]).join(' and ');
}
/** Where something comes from that lies on that side: 'from the right', 'from above and the left'. */
export const fromSide = (d: Vec3): string => `from ${sideOf(d).split(' and ').map(withArticle).join(' and ')}`;
const withArticle = (side: string): string => (side === 'above' || side === 'below' ? side : `the ${side}`);
/** The way that something goes: 'to the left', 'up', 'forwards and down'. */
export function wayOf(d: Vec3): string {
  const word: Record<string, string> = {
    right: 'to the right',
    left: 'to the left',
    back: 'backwards',
    front: 'forwards',
    above: 'up',
    below: 'down',
  };
  return sideOf(d)
    .split(' and ')
    .map((s) => word[s]!)
    .join(' and ');
}
/** 'a', 'a and b', 'a, b and c'. */
export const listed = (all: readonly string[]): string =>
  all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;

/** Names for several parts at once: labels alike but for a number are counted ('3 pegs'), labels with one ending drawn together ('left and right stiles'). */
export function partsInWords(labels: readonly string[]): string {
  const kinds = counted(labels, bare);
  const names = kinds.map(([kind, all]) => (all.length > 1 ? `${all.length} ${plural(kind)}` : all[0]!));
  if (names.length < 2 || kinds.some(([, all]) => all.length > 1)) return listed(names);
  const tail = commonTail(names);
  const starts = names.map((n) => n.slice(0, n.length - tail.length).trim());
  if (tail !== '' && starts.every((h) => h !== ''))
    return starts.length > 4 ? `${names.length} ${plural(tail)}` : `${listed(starts)} ${plural(tail)}`;
  if (names.length < 4) return listed(names);
  const ends = counted(names, (n) => n.split(' ').at(-1)!)
    .map(([end, all]) => (all.length > 2 ? [`${all.length} ${plural(end)}`] : all))
    .flat();
  return ends.length > 4 ? `${listed(ends.slice(0, 3))} and ${ends.length - 3} more` : listed(ends);
}
function counted(labels: readonly string[], kindOf: (label: string) => string): [string, string[]][] {
  const kinds = new Map<string, string[]>();
  for (const l of labels) kinds.set(kindOf(l), [...(kinds.get(kindOf(l)) ?? []), l]);
  return [...kinds];
}
/** A label without its number and its host: 'peg 2 in the leg' is a peg. */
const bare = (label: string): string => label.split(' in the ')[0]!.replace(/ \d+\b/g, '');
/** 'the left stile', but 'leg 2'. */
export const the = (words: string): string => (/^\S+ \d+$/.test(words) ? words : `the ${words}`);
function commonTail(names: readonly string[]): string {
  const words = names.map((n) => n.split(' '));
  const out: string[] = [];
  for (let k = 1; words.every((w) => w.length >= k && w.at(-k) === words[0]!.at(-k)); k++) out.unshift(words[0]!.at(-k)!);
  return out.join(' ');
}
function plural(label: string): string {
  if (/(s|x|z|ch|sh)$/.test(label)) return `${label}es`;
  if (/[^aeiou]y$/.test(label)) return `${label.slice(0, -1)}ies`;
  return /[^f]fe?$/.test(label) && /(shelf|half|leaf|knife)$/.test(label) ? `${label.replace(/fe?$/, '')}ves` : `${label}s`;
}
/** A sub-assembly: its group's name, or the words that all its labels share, or its parts. */
export function assemblyName(s: Scene, parts: readonly number[], group: string | null): string {
  if (group !== null) return groupWords(group);
  const labels = parts.filter((p) => s.parts[p]!.kind !== 'extra' && s.parts[p]!.kind !== 'hardware').map((p) => s.parts[p]!.label);
  if (labels.length === 1) return labels[0]!;
  const shared = (labels[0] ?? '').split(' ').filter((w) => !/^\d+$/.test(w) && labels.every((l) => l.split(' ').includes(w)));
  if (shared.length > 0 && labels.length > 1) return `${shared.join(' ')} assembly`;
  return `assembly of ${partsInWords(labels.length > 0 ? labels : parts.map((p) => s.parts[p]!.label))}`;
}
/** 'drawer:left' is the left drawer, 'drawer:2' drawer 2. */
export function groupWords(group: string): string {
  const [id = '', ...names] = group.split(':');
  const numbers = names.filter((n) => /^\d+$/.test(n));
  const sides = names.filter((n) => !numbers.includes(n)).toReversed();
  return [...sides, id, ...numbers].join(' ').replaceAll(/[_-]/g, ' ');
}
/** 'front apron into the left front leg, from the right' */
export function stepWords(s: Scene, step: Step): string {
  const back = vecOf(s.lines, step.dir);
  if (step.within.atOnce) return atOnceWords(s, step);
  const who =
    step.moves.length === 1 && step.parts.length > 1
      ? assemblyName(s, step.parts, step.moves[0]!.tree.group)
      : partsInWords(step.parts.map((p) => (isExtra(s, p) ? s.parts[p]!.label.split(' in the ')[0]! : s.parts[p]!.label)));
  const mates = matesOf(s, step);
  const whom = mates.parts.length > 0 ? theParts(s, mates.parts) : 'its place';
  return `${who} ${mates.parts.length > 0 ? howItMeets(mates.engaged, mates.enters, back) : 'to'} ${whom}, ${fromSide(back)}`;
}
function atOnceWords(s: Scene, step: Step): string {
  const who = partsInWords(step.parts.filter((p) => !isExtra(s, p)).map((p) => s.parts[p]!.label));
  const whom = step.onto.length > 0 ? ` with ${theParts(s, step.onto)}` : '';
  return `${who}${whom}, all at once: start every joint, then draw them together`;
}
const theParts = (s: Scene, parts: readonly number[]): string => the(partsInWords(parts.map((p) => s.parts[p]!.label)));
function howItMeets(engaged: boolean, enters: boolean, back: Vec3): string {
  if (engaged) return enters ? 'into' : 'onto';
  return back[2] > 0.7 ? 'onto' : back[2] < -0.7 ? 'under' : 'against';
}
/** The parts that the step joins to, the joints that hold before those that lie loose; whether they engage, and whether it is the moving side that enters. */
function matesOf(s: Scene, step: Step): { parts: number[]; engaged: boolean; enters: boolean } {
  const d = vecOf(s.lines, step.dir);
  const touches = (j: number): boolean => step.parts.some((i) => contactOf(s, i, j).length > 0);
  const linked = (loose: boolean): number[] => {
    const here = s.links.filter((l) => l.loose === loose && l.parts.some((p) => step.parts.includes(p)));
    const all = [...new Set(here.flatMap((l) => l.parts))].filter((p) => step.onto.includes(p) && !isExtra(s, p));
    return all.some(touches) ? all.filter(touches) : all;
  };
  const parts = [linked(false), linked(true), step.onto.filter(touches)].find((all) => all.length > 0) ?? [];
  let engaged = false;
  let inside = 0;
  for (const i of step.parts)
    for (const j of parts) {
      const patches = contactOf(s, i, j);
      if (engagementAlong(patches, d) <= 1) continue;
      engaged = true;
      inside += (i < j ? 1 : -1) * entering(patches, d);
    }
  return { parts: parts.sort((a, b) => a - b), engaged, enters: inside > 0 };
}
const isExtra = (s: Scene, p: number): boolean => s.parts[p]!.kind === 'extra' || s.parts[p]!.kind === 'hardware';
