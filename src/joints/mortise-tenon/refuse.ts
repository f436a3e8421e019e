/** Nonsense that cannot be drawn; everything that can is judged by the rules. */
import type { Place, Refusal } from '../family.ts';
import { type Ground, across, breadth, hasFaceSide, whole } from '../tenons.ts';
import type { MortiseTenon } from './params.ts';

type P = MortiseTenon;
/** The least of a tenon, and of the wood between two, that can be cut at all, mm. */
const LEAST = 1;
export function refuse(p: Place<P>, g: Ground, s: P): Refusal<P> | null {
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  const x = across(g.enter, s);
  const y = whole(g, s);
  if (s.from === 'face' && !hasFaceSide(g.enter))
    return {
      cannot: 'the entering part has no mark on a broad face to count the offset from',
      limit: 0,
      asked: 0,
      nearest: { from: 'middle' },
    };
  if (!Number.isInteger(s.twins) || s.twins < 1 || s.twins > 6)
    return { cannot: 'the number of twin tenons must be a whole number from 1 to 6', limit: 6, asked: s.twins, nearest: { twins: 1 } };
  if (s.twins > 1 && !(s.twin_between >= LEAST))
    return {
      cannot: 'twin tenons need wood left out between them',
      limit: 1,
      asked: s.twin_between,
      nearest: { twin_between: Math.max(LEAST, s.thickness) },
    };
  if (!(s.thickness >= LEAST) || breadth(s) > stock + 1e-6) {
    const fifth = stock / (2 * s.twins + 1);
    return {
      cannot: 'the tenon must be thinner than the part that carries it',
      limit: s.thickness >= LEAST ? stock : LEAST,
      asked: breadth(s),
      nearest: { thickness: fifth, ...(s.twins > 1 ? { twin_between: fifth } : {}) },
    };
  }
  if (!Number.isInteger(s.tenons) || s.tenons < 1 || s.tenons > 20)
    return { cannot: 'the number of tenons must be a whole number from 1 to 20', limit: 20, asked: s.tenons, nearest: { tenons: 1 } };
  if (!(s.width >= LEAST) || y[1] - y[0] > wide + 1e-6)
    return {
      cannot: 'the tenons must be narrower than the part that carries them',
      limit: wide,
      asked: y[1] - y[0],
      nearest: { width: ((wide * 2) / 3 - (s.tenons - 1) * s.between) / s.tenons },
    };
  if (x[0] < g.x[0] - 1e-6 || x[1] > g.x[1] + 1e-6)
    return {
      cannot: 'the offset sets the tenon beside the part that carries it',
      limit: (stock - breadth(s)) / 2,
      asked: Math.abs(s.offset),
      nearest: { offset: 0, from: 'middle' },
    };
  if (y[0] < g.y[0] - 1e-6 || y[1] > g.y[1] + 1e-6)
    return {
      cannot: 'the drop sets the tenon beside the part that carries it',
      limit: (wide - (y[1] - y[0])) / 2,
      asked: Math.abs(s.drop),
      nearest: { drop: 0 },
    };
  if (!(s.length >= LEAST))
    return p.set.length === undefined
      ? { cannot: 'the tenon has no length: another tenon stands in its way', limit: LEAST, asked: s.length, nearest: { end: 'mitred' } }
      : { cannot: 'a tenon has a length', limit: LEAST, asked: s.length, nearest: { length: g.deep / 2 } };
  if (s.tenons > 1 && !(s.between >= LEAST))
    return { cannot: 'tenons side by side need wood left out between them', limit: 1, asked: s.between, nearest: { between: s.width } };
  if (s.spare < 0 || s.proud < 0 || s.drawbore < 0)
    return {
      cannot: 'spare, proud and drawbore are 0 or more',
      limit: 0,
      asked: Math.min(s.spare, s.proud, s.drawbore),
      nearest: { spare: Math.max(0, s.spare), proud: Math.max(0, s.proud), drawbore: Math.max(0, s.drawbore) },
    };
  if (!Number.isInteger(s.pegs) || s.pegs < 0 || s.pegs > 20)
    return { cannot: 'the number of pegs must be a whole number from 0 to 20', limit: 20, asked: s.pegs, nearest: { pegs: 1 } };
  if (s.pegs > 0 && (!(s.peg_diameter > 0) || s.peg_diameter * s.pegs >= s.width * s.tenons))
    return {
      cannot: 'the pegs leave nothing of the tenon',
      limit: (s.width * s.tenons) / (4 * s.pegs),
      asked: s.peg_diameter,
      nearest: { pegs: 1 },
    };
  if (s.pegs > 0 && (s.peg_back - s.drawbore <= s.peg_diameter / 2 || s.peg_back >= s.length))
    return {
      cannot: 'the peg must pass through the tenon',
      limit: s.length / 2,
      asked: s.peg_back,
      // In a tenon shorter than the peg is thick there is no place for one.
      nearest: s.length > s.peg_diameter + 1e-6 ? { peg_back: s.length / 2, drawbore: 0 } : { pegs: 0 },
    };
  if (s.pegs > 0 && !(s.peg_length > 0))
    return { cannot: 'a peg needs a length above 0', limit: 1, asked: s.peg_length, nearest: { peg_length: 3 * s.peg_diameter } };
  const fox = refuseFox(s) ?? refuseStub(s);
  if (fox) return fox;
  if (s.wedge !== 'none' && s.through !== 'yes' && s.fox !== 'yes')
    return { cannot: 'only a through tenon can be wedged from outside', limit: 0, asked: 0, nearest: { through: 'yes' } };
  if (
    s.wedge !== 'none' &&
    (!Number.isInteger(s.wedges) ||
      s.wedges < 1 ||
      s.wedges > 6 ||
      !(s.wedge_thick > 0) ||
      s.wedges * s.wedge_thick > Math.min(s.width, 1e9))
  )
    return { cannot: 'the wedges leave nothing of the tenon', limit: 6, asked: s.wedges, nearest: { wedges: 1 } };
  if (s.haunch !== 'none' && (!(s.haunch_length > 0) || s.haunch_length > s.length))
    return {
      cannot: 'a haunch is shorter than its tenon',
      limit: s.length,
      asked: s.haunch_length,
      nearest: { haunch_length: Math.min(s.thickness, s.length / 2) },
    };
  return p.meeting.touch === 'share'
    ? { cannot: 'the two share wood here: the rail must end at the receiving part, its tenon is added', limit: 0, asked: 0 }
    : null;
}
/** A fox wedge is driven by the bottom of a blind mortise. */
function refuseFox(s: P): Refusal<P> | null {
  if (s.flare < 0) return { cannot: 'a mortise is not narrower at its far end', limit: 0, asked: s.flare, nearest: { flare: 0 } };
  if (s.fox !== 'yes') return null;
  if (s.through === 'yes')
    return { cannot: 'fox wedges need the bottom of a blind mortise', limit: 0, asked: 1, nearest: { through: 'no' } };
  if (s.wedge === 'none') return { cannot: 'a fox-wedged tenon has wedges', limit: 1, asked: 0, nearest: { wedge: 'across' } };
  return s.end === 'mitred'
    ? { cannot: 'a mitred end does not press wedges on the bottom of the mortise', limit: 0, asked: 1, nearest: { end: 'square' } }
    : null;
}
function refuseStub(s: P): Refusal<P> | null {
  if (s.stub !== 'yes') return null;
  if (s.through === 'yes') return { cannot: 'a stub stays in its groove: it is not through', limit: 0, asked: 1, nearest: { stub: 'no' } };
  return s.fox === 'yes' ? { cannot: 'a stub is too short for wedges', limit: 0, asked: 1, nearest: { stub: 'no' } } : null;
}
