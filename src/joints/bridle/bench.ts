import type { Operation, Place } from '../family.ts';
import { sizeAlong } from '../shared-box.ts';
import { LEAST, notchesOf } from './lay.ts';
import { layOut } from './lay.ts';
import type { Bridle } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const SAW = 'A tall tenoning jig that holds the work, guard and push sticks; never free-hand; follow the saw’s manual.';

export function bench(p: Place<Bridle>, s: Bridle, hand: boolean): readonly Operation[] {
  const l = layOut(p, s);
  const deep = sizeAlong(l.g.s.box, 'z');
  const wide = sizeAlong(l.g.s.box, l.g.run);
  const notch = notchesOf(l.g, l.t);
  const notched = notch.filter((n) => n >= LEAST);
  const out: Operation[] = [
    {
      role: 'fork',
      words: `Gauge the slot {mm:${s.thickness}} wide round the end, from the face side, {mm:${deep}} deep.`,
      tool: 'mortise gauge',
    },
    {
      role: 'fork',
      words: hand
        ? 'Saw down both lines inside the waste, bore or chop it out from both edges, and pare the root square.'
        : 'Cut the slot on end in several passes, and pare its root square.',
      tool: hand ? 'tenon saw, mortise chisel' : 'table saw with a tenoning jig, or bandsaw',
      caution: hand ? CHISEL : SAW,
    },
  ];
  if (notched.length)
    out.push({
      role: 'tongue',
      words: `Knife the shoulders ${l.g.kind === 'tee' ? `{mm:${wide}} apart, from the fork itself,` : `{mm:${wide}} from the end, from the fork itself,`} and cut ${notched.length === 2 ? 'both faces' : 'one face'} back to the tongue: {mm:${notched[0] ?? 0}}${notched.length === 2 && Math.abs((notched[0] ?? 0) - (notched[1] ?? 0)) > 0.05 ? ` and {mm:${notched[1] ?? 0}}` : ''}.`,
      tool: hand ? 'knife, tenon saw and router plane' : 'table saw or router, several passes',
      caution: hand ? CHISEL : SAW,
    });
  out.push({
    role: 'fork',
    words:
      s.glue === 'yes'
        ? 'Fit the cheeks until they slide on under hand pressure; glue them, clamp along both parts, then once across the cheeks.'
        : 'Fit the cheeks until they slide on under hand pressure.',
    tool: 'shoulder plane and clamps',
  });
  return out;
}
