/** Where the loose tenons lie: half in the end of one part, half in the other. */
import type { Meeting } from '../meeting.ts';
import { type Crossing, type Ground, type Span, type Tenon, across, crossings, ground, tenonsOf, whole } from '../tenons.ts';
import type { LooseTenon } from './params.ts';

export type Laid = {
  readonly g: Ground;
  readonly s: LooseTenon;
  readonly tenons: readonly Tenon[];
  readonly x: Span;
  readonly y: Span;
  /** z of a tenon's two ends, and of the bottoms of the two mortises. */
  readonly tenon: Span;
  readonly own: number;
  readonly floor: number;
  readonly meets: readonly Crossing[];
};
export function layOut(m: Meeting, siblings: readonly Meeting[], s: LooseTenon): Laid {
  const g = ground(m);
  if (!g) throw new Error('a loose tenon needs an end that points into the receiver: propose refuses the others');
  return {
    g,
    s,
    tenons: tenonsOf(g, s),
    x: across(g.enter, s),
    y: whole(g, s),
    // A shoulder that stands open as built leaves the tenon where it is glued into its own part.
    tenon: [-s.deep_own, s.deep_in],
    own: -s.deep_own - s.spare,
    floor: g.gap + s.deep_in + s.spare,
    meets: crossings(g, s, siblings),
  };
}
export const nameOf = (word: string, l: Laid, i: number): string => (l.tenons.length > 1 ? `${word} ${i + 1}` : word);
/** How far along its cheeks a tenon lies on each of its mortises. */
export const reachIn = (l: Laid, role: 'enter' | 'into'): Span => (role === 'enter' ? [l.tenon[0], 0] : [l.g.gap, l.tenon[1]]);
