import type { Built } from '../build/build.ts';
import type { JointPlace } from '../build/part.ts';
import { outPoint } from '../geom/frame.ts';
import type { Rule, Warning } from '../joints/family.ts';
import {
  type Check,
  type Facts,
  cap,
  exactText,
  finding,
  jointName,
  lengthKept,
  partsOf,
  reachOf,
  remedy,
  setPatch,
  the,
  whereAt,
} from './check.ts';

type Said = { readonly rule: Rule<Record<string, unknown>>; readonly warning: Warning };
type Told = Said & { readonly place: JointPlace };

/** The rules that each joint family brings: thin walls beside a mortise, the grain of a button, wedges the wrong way. */
export const familyRules: Check = {
  id: 'family-rules',
  wave: 1,
  words: 'A joint breaks one of the rules of its own trade.',
  run: (facts) => [...gathered(told(facts.built))].map((all) => describe(facts, all)),
};

/** What the families' rules say of the piece as built, in the order of the places. */
const told = (built: Built): Told[] => built.built.places.flatMap((place) => saidOf(place).map((s): Told => ({ place, ...s })));
/** What they say of one place, in the meeting frame: the same for all places that are made alike, which share what went in. */
function saidOf(p: JointPlace): readonly Said[] {
  const { made, sizes } = p;
  if (!made || !sizes) return [];
  const before = said.get(p.input);
  if (before) return before;
  const all = p.family.rules.flatMap((rule) => rule.run(p.input, sizes, made).map((warning): Said => ({ rule, warning })));
  said.set(p.input, all);
  return all;
}
const said = new WeakMap<JointPlace['input'], readonly Said[]>();
const receiverOf = (p: JointPlace): string => partsOf(p)[1] ?? '';

/**
 * Two tenons that meet are told by the rule of each: one finding for the part that both enter. Anything else that is said of several
 * places of one joint in the same words and numbers is one finding of them all: they share their settings.
 */
function gathered(all: readonly Told[]): Iterable<readonly Told[]> {
  const groups = new Map<string, Told[]>();
  for (const t of all) {
    const same = t.rule.tells === 'collision' ? [receiverOf(t.place)] : [t.warning.grade, t.warning.title, t.warning.why];
    const key = [t.rule.id, t.place.joint, ...same].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), t]);
  }
  return groups.values();
}
/** Has a family's own rule spoken of these two in the part that both enter? Then the solids need not say it again. */
export function collisionTold(p: JointPlace, q: JointPlace): boolean {
  if (p.joint !== q.joint || receiverOf(p) !== receiverOf(q)) return false;
  return [p, q].some((place) => saidOf(place).some((s) => s.rule.tells === 'collision'));
}
/** Has a family's own rule spoken of the glue of this place? */
export const glueTold = (p: JointPlace): boolean => saidOf(p).some((s) => s.rule.tells === 'glue');

function describe(facts: Facts, all: readonly Told[]): ReturnType<typeof finding> {
  const [first] = all;
  if (!first) throw new Error('a group of warnings holds at least one');
  const { place: p, warning: w } = first;
  const parts = all.flatMap((t) => t.warning.roles.flatMap((r) => t.place.roles[r] ?? []));
  const whom = partsOf(p);
  const meets = `Where ${the(facts, whom[0] ?? '')} meets ${the(facts, whom[1] ?? '')}`;
  const more = all.filter((t) => t.place !== p);
  const others = more.map((t) => the(facts, partsOf(t.place)[0] ?? ''));
  const also =
    more.length === 0
      ? ''
      : first.rule.tells === 'collision'
        ? `, as ${others.join(' and ')} does`
        : more.length === 1
          ? `, and in one more place like it`
          : `, and in ${more.length} more places like it`;
  return finding({
    rule: w.rule.replaceAll(' ', '-'),
    grade: w.grade,
    title: w.title,
    parts: parts.length ? parts : whom,
    joint: jointName(p),
    where: { ...whereAt(p.meeting.frame, reachOf(p)), at: outPoint(p.meeting.frame, w.at) },
    measured: w.measured,
    limit: w.limit,
    unit: w.unit,
    basis: 'computed',
    why: `${meets}${also}: ${w.why}`,
    source: w.source,
    remedies: w.cures
      .flatMap((c) => asTyped(c, facts.doc.units))
      .flatMap((c) => {
        const patches = Object.entries(c.set).flatMap(([k, v]) => setPatch(facts.doc, p.joint, k, v));
        return patches.length ? [remedy(cap(c.label), patches)] : [];
      }),
  });
}
type Cure = Warning['cures'][number];
/** Families name lengths in mm; a maker who works in inches is offered the next 32nd below and above, whichever proves to hold. */
function asTyped(c: Cure, unit: 'mm' | 'in'): Cure[] {
  const lengths = Object.entries(c.set).filter(([, v]) => v !== null && TYPED.test(v));
  if (lengths.length === 0) return [c];
  const ticks = unit === 'mm' ? [0] : [0, 1];
  return ticks.map((up) => {
    const near = (mm: number): number => (unit === 'mm' ? mm : lengthKept(mm, unit) + (up * 25.4) / 32);
    const set = Object.fromEntries(
      Object.entries(c.set).map(([k, v]) => [k, v !== null && TYPED.test(v) ? exactText(near(parseFloat(v)), unit) : v]),
    );
    return { label: c.label.replace(/(\d+(?:\.\d+)?) mm\b/g, (_, n: string) => `{mm:${near(Number(n))}}`), set };
  });
}
const TYPED = /^\d+(\.\d+)? mm$/;
