import type { Built } from '../build/build.ts';
import type { JointPlace } from '../build/part.ts';
import { outPoint } from '../geom/frame.ts';
import type { Rule, Warning } from '../joints/family.ts';
import { type Check, type Facts, cap, exactText, finding, jointName, lengthKept, partsOf, reachOf, remedy, setPatch, the, whereAt } from './check.ts';

type Told = { readonly place: JointPlace; readonly rule: Rule<Record<string, unknown>>; readonly warning: Warning };

/** The rules that each joint family brings: thin walls beside a mortise, the grain of a button, wedges the wrong way. */
export const familyRules: Check = {
  id: 'family-rules',
  wave: 1,
  words: 'A joint breaks one of the rules of its own trade.',
  run: (facts) => [...oncePerReceiver(told(facts.built))].map((all) => describe(facts, all)),
};

const known = new WeakMap<Built, readonly Told[]>();
/** What the families' rules say of the piece as built, in the order of the places. Worked out once a build. */
function told(built: Built): readonly Told[] {
  const had = known.get(built);
  if (had) return had;
  const all = built.built.places.flatMap((place) => {
    const { made, sizes } = place;
    if (!made || !sizes) return [];
    return place.family.rules.flatMap((rule) => rule.run(place.input, sizes, made).map((warning): Told => ({ place, rule, warning })));
  });
  known.set(built, all);
  return all;
}
const receiverOf = (p: JointPlace): string => partsOf(p)[1] ?? '';

/** Two tenons that meet are told by the rule of each: one finding for the part that both enter. */
function oncePerReceiver(all: readonly Told[]): Iterable<readonly Told[]> {
  const groups = new Map<string, Told[]>();
  all.forEach((t, i) => {
    const key = t.rule.tells === 'collision' ? [t.rule.id, t.place.joint, receiverOf(t.place)].join(' ') : String(i);
    groups.set(key, [...(groups.get(key) ?? []), t]);
  });
  return groups.values();
}
/** Has a family's own rule spoken of these two in the part that both enter? Then the solids need not say it again. */
export function collisionTold(facts: Facts, p: JointPlace, q: JointPlace): boolean {
  if (p.joint !== q.joint || receiverOf(p) !== receiverOf(q)) return false;
  return told(facts.built).some((t) => t.rule.tells === 'collision' && (t.place === p || t.place === q));
}
/** Has a family's own rule spoken of the glue of this place? */
export const glueTold = (facts: Facts, p: JointPlace): boolean => told(facts.built).some((t) => t.rule.tells === 'glue' && t.place === p);

function describe(facts: Facts, all: readonly Told[]): ReturnType<typeof finding> {
  const [first] = all;
  if (!first) throw new Error('a group of warnings holds at least one');
  const { place: p, warning: w } = first;
  const parts = all.flatMap((t) => t.warning.roles.flatMap((r) => t.place.roles[r] ?? []));
  const whom = partsOf(p);
  const meets = `Where ${the(facts, whom[0] ?? '')} meets ${the(facts, whom[1] ?? '')}`;
  const also = all.slice(1).map((t) => the(facts, partsOf(t.place)[0] ?? ''));
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
    why: `${meets}${also.length ? `, as ${also.join(' and ')} does` : ''}: ${w.why}`,
    source: w.source,
    remedies: w.cures.flatMap((c) => asTyped(c, facts.doc.units)).flatMap((c) => {
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
    const set = Object.fromEntries(Object.entries(c.set).map(([k, v]) => [k, v !== null && TYPED.test(v) ? exactText(near(parseFloat(v)), unit) : v]));
    return { label: c.label.replace(/(\d+(?:\.\d+)?) mm\b/g, (_, n: string) => `{mm:${near(Number(n))}}`), set };
  });
}
const TYPED = /^\d+(\.\d+)? mm$/;
