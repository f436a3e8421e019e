import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { downTo, nearestOwned, stepOf } from '../cutters.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { PTSW } from '../sources.ts';
import { type Ground, clearLength, ground } from './lay.ts';
import type { RoundTenon } from './params.ts';

type P = RoundTenon;
type Proposed = { readonly sizes: P; readonly because: Readonly<Record<keyof P, Reason>> };

export function propose(p: Place<P>, shop: Cutting): Proposed | Refusal<P> {
  if (p.meeting.touch === 'share')
    return { cannot: 'the two share wood here: the part must end at the other, its tenon is added', limit: 0, asked: 0 };
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the axis of the part misses the other', limit: 0, asked: 0 };
  const through = p.set.through ?? 'no';
  const diameter = diameterFor(p, g, shop, through);
  const d = p.set.diameter ?? diameter[0];
  const length = lengthFor(p, g, d, through, stepOf(shop));
  const thick = Math.min(4, d / 5);
  const out = settle<P>(p.set, {
    diameter,
    length,
    through: ['no', byHabit('blind, unless it is to be wedged or shown')],
    proud: [0, byHabit('trimmed flush')],
    wedge: ['none', byHabit('none')],
    wedge_thick: [thick, byHabit('slim: a fifth of the tenon, 4 mm at most')],
    kerf: [Math.min(1.2, thick / 2), byHabit('the cut of a fine saw')],
    spare: [spareOf(stepOf(shop)), byHabit('about 2 mm for glue and chips', [1, 3.175])],
    glue: ['yes', byHabit('glued')],
  });
  return refuse(g, out.sizes) ?? out;
}

const spareOf = (step: number): number => (step === 1 ? 2 : 25.4 / 16);
/** About two thirds of the part, as a bit is owned; thinner where the tenons of others in the same part leave it too little length. */
function diameterFor(p: Place<P>, g: Ground, shop: Cutting, through: 'no' | 'yes'): readonly [number, Reason] {
  const most = g.room * 0.75;
  const usual = nearestOwned(shop.bits, (g.room * 2) / 3, [g.room * 0.5, most], stepOf(shop));
  const why = byHabit('about two thirds of the part, as a bit is owned', [g.room / 2, most]);
  if (through === 'yes' || p.siblings.length === 0) return [usual, why];
  const fits = shop.bits.filter((b) => b <= usual + 1e-6 && b >= g.room * 0.4 - 1e-6 && clearLength(b, p.siblings) + g.gap >= b);
  const best = fits.at(-1);
  if (best === undefined || best >= usual) return [best ?? Math.min(usual, ...shop.bits.filter((b) => b >= g.room * 0.4)), why];
  return [
    best,
    byHabit('thinner, so that the tenons that meet in the part keep at least their own thickness of length', [g.room * 0.4, most]),
  ];
}
function lengthFor(p: Place<P>, g: Ground, d: number, through: 'no' | 'yes', step: number): readonly [number, Reason] {
  if (through === 'yes') return [g.deep + (p.set.proud ?? 0), byHabit('right through')];
  const spare = p.set.spare ?? spareOf(step);
  // Two thirds of the way through; more where that is less than its thickness and the wood allows it.
  const free = Math.min(2 * d, Math.max((g.deep * 2) / 3, Math.min(d, g.deep - spare - 3)));
  const clear = clearLength(d, p.siblings);
  if (clear < free) {
    const fine = step / 4;
    return [
      Math.max(0, downTo(fine, clear)),
      { rule: 'the longest that clears the other tenons in the part', source: { name: 'computed from the parts', basis: 'derived' } },
    ];
  }
  return [
    downTo(step, free),
    byBook(
      '1.5 to 2 diameters, two thirds of the receiving part at most',
      `${PTSW} (mortise 3 times as deep as wide is the least for flat tenons)`,
      [1.5 * d, 2 * d],
    ),
  ];
}
function refuse(g: Ground, s: P): Refusal<P> | null {
  if (!(s.diameter > 0) || s.diameter > g.room + 1e-6)
    return {
      cannot: 'the tenon must lie inside the part that carries it',
      limit: g.room,
      asked: s.diameter,
      nearest: { diameter: (g.room * 2) / 3 },
    };
  if (!(s.length > 0)) return { cannot: 'the tenon has no length: another tenon stands in its way', limit: 1, asked: s.length };
  if (s.proud < 0 || s.spare < 0)
    return {
      cannot: 'proud and spare are 0 or more',
      limit: 0,
      asked: Math.min(s.proud, s.spare),
      nearest: { proud: Math.max(0, s.proud), spare: Math.max(0, s.spare) },
    };
  if (s.wedge !== 'none' && s.through !== 'yes')
    return { cannot: 'only a through tenon can be wedged from outside', limit: 0, asked: 0, nearest: { through: 'yes' } };
  if (s.wedge !== 'none' && (!(s.kerf > 0) || !(s.wedge_thick > s.kerf) || s.wedge_thick > s.diameter / 2))
    return {
      cannot: 'a wedge is thicker than its kerf and thinner than half the tenon',
      limit: s.diameter / 2,
      asked: s.wedge_thick,
      nearest: { wedge_thick: s.diameter / 5, kerf: s.diameter / 10 },
    };
  return null;
}
