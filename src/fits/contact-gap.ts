import { outPoint } from '../geom/frame.ts';
import { type Vec3, add, cross, dot, length, scale, sub } from '../geom/vec3.ts';
import type { Contact, Made } from '../joints/family.ts';
import type { JointPlace } from '../build/part.ts';
import { OPEN_SHOULDER } from '../units/tolerance.ts';
import { reachFarther } from './move-face.ts';
import { once } from './once.ts';
import { type Check, type Facts, cap, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';

/** Least and greatest distance between the two surfaces of a contact, mm, from the surfaces themselves: exact, no mesh. Below 0 they bite. */
function gapOf(c: Contact): { readonly low: number; readonly high: number } | null {
  const [{ surface: a }, { surface: b }] = c.between;
  if ('plane' in a && 'plane' in b) {
    // How far each corner of the first patch stands out of the second one's wood.
    let [low, high] = [Infinity, -Infinity];
    for (const q of a.patch) {
      const far = dot(b.plane.normal, outPoint(a.patchFrame, [q[0], q[1], 0])) - b.plane.off;
      low = Math.min(low, far);
      high = Math.max(high, far);
    }
    return a.patch.length ? { low, high } : null;
  }
  if ('round' in a && 'round' in b) {
    const off = axesApart(a.round, b.round);
    const room = b.r - a.r;
    return off === null ? null : { low: room - off, high: room - off };
  }
  return null;
}
/** Distance between two parallel axes; null when they are not parallel. */
function axesApart(a: { at: Vec3; along: Vec3 }, b: { at: Vec3; along: Vec3 }): number | null {
  if (length(cross(a.along, b.along)) > 1e-6) return null;
  const d = sub(b.at, a.at);
  return length(add(d, scale(a.along, -dot(d, a.along))));
}

/** How far a contact is from what it is meant to be: above 0 open, below 0 biting, 0 as it should be. */
export function misfitOf(c: Contact): number {
  const gap = gapOf(c);
  if (!gap) return 0;
  // What may be loose only must not bite.
  if (c.fit === 'gap' || c.fit === 'loose') return gap.low < -OPEN_SHOULDER ? gap.low : 0;
  const [low, high] = [gap.low - c.meant, gap.high - c.meant];
  if (low < -OPEN_SHOULDER) return low;
  return high > OPEN_SHOULDER ? high : 0;
}

/** A shoulder or another contact that stands open or bites: judged from the two surfaces as built, never from an overlap. */
export const contactGap: Check = {
  id: 'contact-gap',
  wave: 1,
  bySize: ['open-shoulder', 'biting-shoulder'],
  words: 'A shoulder stands open, or bites into the part that it should only touch.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      const worst = worstOf(p);
      return worst ? [describe(facts, p, worst.contact, worst.by)] : [];
    }),
};
/** Does a shoulder bite here? Then the wood that both claim has been told of. */
export const bites = (p: JointPlace): boolean => (worstOf(p)?.by ?? 0) < 0;

/** The contact that is farthest from what it is meant to be; of equals the first, so that a shoulder speaks before what lies behind it. */
const worstOf = (p: JointPlace): Misfit | null => (p.made ? worstIn(p.made) : null);
type Misfit = { readonly contact: Contact; readonly by: number };
const worstIn = once((made: Made): Misfit | null => {
  const shoulders = (c: Contact): number => (/shoulder|rest|on the/.test(c.name) ? 0 : 1);
  let worst: Misfit | null = null;
  for (const contact of [...made.contacts].sort((x, y) => shoulders(x) - shoulders(y))) {
    const by = misfitOf(contact);
    if (by !== 0 && (!worst || Math.abs(by) > Math.abs(worst.by) + 1e-6)) worst = { contact, by };
  }
  return worst;
});
function describe(facts: Facts, p: JointPlace, c: Contact, by: number): ReturnType<typeof finding> {
  const open = by > 0;
  const [a, b] = partsOf(p).map((path) => the(facts, path));
  const bench = partsOf(p).some(
    (path) => (facts.built.built.parts.get(path)?.resolved.misfits.length ?? 0) > 0 || facts.built.built.parts.get(path)?.frozen,
  );
  return finding({
    rule: open ? 'open-shoulder' : 'biting-shoulder',
    grade: 'stops',
    title: open ? 'A shoulder stands open' : 'A shoulder bites',
    parts: partsOf(p),
    joint: jointName(p),
    where: whereAt(p.meeting.frame, reachOf(p)),
    measured: Math.abs(by),
    limit: OPEN_SHOULDER,
    unit: 'mm',
    basis: bench ? 'measured' : 'computed',
    why: open
      ? `Between ${a ?? ''} and ${b ?? ''} the ${c.name} stands {mm:${Math.abs(by)}} open.`
      : `${cap(a ?? '')} is {mm:${Math.abs(by)}} too long: the ${c.name} bites into ${b ?? ''}.`,
    source: { name: 'the two surfaces as built', basis: 'derived' },
    remedies: reachFarther(facts, p, by),
  });
}
