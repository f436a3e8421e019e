import { downTo, stepOf } from '../cutters.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { signAlong } from '../blocks.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { withNearest } from '../nearest.ts';
import { type Ground, SLACK, ground, upperOf } from './lay.ts';
import type { RuleJoint } from './params.ts';

export const HINGES = 'whitechapel-ltd.com, drop leaf rule joint';
/** The least fillet that works, mm: 1/8 in, since the leaf's lip is no thicker. */
export const LEAST_FILLET = 25.4 / 8;
/** The least of the longer flap that lies under the leaf, mm; common practice, room for two screws. */
export const LEAST_HOLD = 12;
type Proposed = { readonly sizes: RuleJoint; readonly because: Readonly<Record<keyof RuleJoint, Reason>> };

/** The hinge comes first: it says how high the pin lies, and fillet and radius share what is left above that. */
export function propose(p: Place<RuleJoint>, shop: Cutting): Proposed | Refusal<RuleJoint> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'leaf and top do not meet edge to edge with their faces flush', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => {
    const out = proposals(g, set, stepOf(shop));
    return refuse(g, out.sizes) ?? out;
  });
}
function proposals(g: Ground, set: Partial<RuleJoint>, step: number): Proposed {
  const inch = step !== 1;
  const long = g.run[1] - g.run[0];
  const knuckle = set.knuckle ?? (inch ? 25.4 / 4 : 6);
  const room = g.thick - knuckle / 2;
  const ample = downTo(step, room - LEAST_FILLET);
  const radius = set.radius ?? (set.fillet === undefined ? ample : room - set.fillet);
  const fillet = set.fillet ?? room - radius;
  const clearance = set.clearance ?? 0.4;
  const hinge = set.hinge_long ?? Math.min(38, tenths(long / 4));
  const flap = radius + clearance + 25;
  return settle<RuleJoint>(set, {
    upper: [upperOf(g), byHabit('the face side; else the top')],
    fillet: [
      fillet,
      byBook('what the round and half the knuckle leave of the top, 1/8 in at least', HINGES, [LEAST_FILLET, LEAST_FILLET * 2]),
    ],
    radius: [
      radius,
      byBook('the pin lies in the round’s centre: top less fillet less half the knuckle; 1/2 in with a top of 3/4 in', HINGES, [
        ample - step,
        ample,
      ]),
    ],
    clearance: [clearance, byHabit('1/64 to 1/32 in, for finish, crumbs and movement', [0.4, 0.8])],
    hinges: [Math.max(2, 1 + Math.ceil((long - 300) / 600)), byHabit('two, and one more for each 600 mm beyond 900')],
    inset: [Math.max(tenths(hinge / 2 + 6), Math.min(125, tenths(long / 5))), byHabit('about 125 mm from the ends')],
    hinge_long: [hinge, byHabit('the usual hinge for drop leaves, about 38 mm')],
    flap_top: [Math.min(27, tenths(g.topDeep / 2)), byHabit('the hinge’s short flap, as sold')],
    flap_leaf: [Math.min(Math.ceil(flap), tenths(g.leafDeep - 5)), byBook('its longer flap spans the cove and holds beyond it', HINGES)],
    flap_thick: [Math.min(2, knuckle / 3), byHabit('as the hinge is sold')],
    knuckle: [knuckle, byBook('the pin half the knuckle above the underside, 1/8 in with the usual hinge', HINGES)],
  });
}

type No = Refusal<RuleJoint> | null;
function refuse(g: Ground, s: RuleJoint): No {
  if (signAlong(g.leaf, s.upper, 'x') === null)
    return { cannot: `"${s.upper}" is no face of the leaf’s surface`, limit: 0, asked: 0, nearest: { upper: upperOf(g) } };
  const least = Math.min(s.fillet, s.radius, s.clearance, s.hinge_long, s.flap_top, s.flap_leaf, s.flap_thick, s.knuckle);
  if (!(least > 0)) return { cannot: 'sizes of a rule joint are above nothing', limit: 0, asked: least };
  return refuseProfile(g, s) ?? refuseHinge(g, s);
}
function refuseProfile(g: Ground, s: RuleJoint): No {
  const room = g.thick - s.fillet - s.knuckle / 2;
  if (s.radius > room + 1e-6)
    return { cannot: 'the hinge would stand out below the top', limit: Math.max(0, room), asked: s.radius, nearest: { radius: room } };
  const least = (g.thick - s.fillet) / 2 + 0.5;
  if (s.radius < least)
    return { cannot: 'so small a round does not reach down to the hinge', limit: least, asked: s.radius, nearest: { radius: room } };
  if (s.clearance < 0.1 || s.clearance > s.radius / 4)
    return {
      cannot: 'the cove is larger than the round by a little',
      limit: s.clearance < 0.1 ? 0.1 : s.radius / 4,
      asked: s.clearance,
      nearest: { clearance: Math.min(0.4, s.radius / 4) },
    };
  if (s.fillet - s.clearance < 0.5)
    return { cannot: 'the leaf keeps no lip over the round', limit: s.clearance + 0.5, asked: s.fillet, nearest: { fillet: LEAST_FILLET } };
  return s.radius + s.clearance > g.leafDeep - 5
    ? { cannot: 'the cove takes the whole leaf', limit: g.leafDeep - 5 - s.clearance, asked: s.radius }
    : null;
}
function refuseHinge(g: Ground, s: RuleJoint): No {
  const long = g.run[1] - g.run[0];
  const knuckle = s.knuckle / 2 + SLACK;
  if (knuckle > s.radius - 1) return { cannot: 'the knuckle needs wood round it', limit: 2 * (s.radius - 1 - SLACK), asked: s.knuckle };
  const sunk = g.thick - (s.fillet + s.radius + s.knuckle / 2 - s.flap_thick);
  if (s.flap_thick > s.knuckle / 2 || sunk < 0.1)
    return {
      cannot: 'a flap is thinner than half the knuckle',
      limit: s.knuckle / 2,
      asked: s.flap_thick,
      nearest: { flap_thick: s.knuckle / 3 },
    };
  if (s.flap_leaf < s.radius + s.clearance + 2 || s.flap_leaf > g.leafDeep - 1)
    return {
      cannot: 'the longer flap spans the cove and stays under the leaf',
      limit: s.flap_leaf > g.leafDeep - 1 ? g.leafDeep - 1 : s.radius + s.clearance + 2,
      asked: s.flap_leaf,
      nearest: { flap_leaf: Math.min(s.radius + s.clearance + 25, g.leafDeep - 1) },
    };
  if (s.flap_top < knuckle + 2 || s.flap_top > g.topDeep - 1)
    return {
      cannot: 'the shorter flap lies under the top, beyond the knuckle',
      limit: s.flap_top < knuckle + 2 ? knuckle + 2 : g.topDeep - 1,
      asked: s.flap_top,
      nearest: { flap_top: Math.max(knuckle + 2, Math.min(27, g.topDeep / 2)) },
    };
  if (!Number.isInteger(s.hinges) || s.hinges < 1 || s.hinges > 20)
    return {
      cannot: 'the number of hinges is a whole number from 1 to 20',
      limit: s.hinges > 20 ? 20 : 1,
      asked: s.hinges,
      nearest: { hinges: 2 },
    };
  const pitch = s.hinges > 1 ? (long - 2 * s.inset) / (s.hinges - 1) : Infinity;
  if (s.inset < s.hinge_long / 2 + 1 || pitch < s.hinge_long + 1 || s.hinge_long > long - 2)
    return { cannot: 'the hinges need their length along the joint', limit: s.hinge_long / 2 + 1, asked: s.inset };
  return null;
}
