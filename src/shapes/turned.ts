import { circle } from '../geom/loop.ts';
import { outside, sectionFrame } from './section.ts';
import { type ShapeKind, lengthIn } from './shape.ts';

/** A part turned round along its grain, as thick as its stock allows unless a diameter is given. */
export const turnedRound: ShapeKind = {
  id: 'turned',
  version: 1,
  title: 'Turned',
  words: 'Turns a part round along its grain.',
  params: { diameter: { kind: 'length', words: 'diameter' } },
  required: [],
  make: ({ stock, grain }, set) => {
    const { half } = sectionFrame(stock, grain);
    const most = 2 * Math.min(half[0], half[1]);
    const d = lengthIn(set, 'diameter') ?? most;
    if (!(d > 0) || d > most + 1e-6)
      return { ok: false, problem: `a diameter of ${d.toFixed(2)} mm does not come out of stock ${most.toFixed(2)} mm thick.` };
    return { ok: true, features: [outside('turning', stock, grain, circle(0, 0, d / 2))] };
  },
};
