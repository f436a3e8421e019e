import type { Box } from '../../geom/box.ts';
import type { Frame } from '../../geom/frame.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { ROOT, block } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, cylinder, frameAlong } from '../features.ts';
import { sweptProfile } from '../profile.ts';
import { contacts } from './contacts.ts';
import { type Laid, SLACK, about, boxAt, ground, hingeSpan, layOut, loopOf, onLeaf, onTop, spots, under, xAt } from './lay.ts';
import type { RuleJoint } from './params.ts';

const XZ = { u: 'x', v: 'z' } as const;
export function make(p: Place<RuleJoint>, s: RuleJoint): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a rule joint needs a leaf flush with the top: propose refuses the others');
  const l = layOut(g, s);
  const at = spots(l);
  const hinges = at.map((a, i) => hinge(l, a, i));
  return {
    features: {
      leaf: [cove(l), ...at.map((a, i) => leafRecess(l, a, i))],
      top: [round(l), ...at.flatMap((a, i) => [topRecess(l, a, i), channel(l, a, i)])],
    },
    extras: hinges,
    contacts: contacts(l, at),
    frees: [
      ...hinges.map((h) => ({ moves: [h.name], along: [-l.up, 0, 0] as const })),
      { moves: ['leaf'], along: [0, 0, -1] },
      { moves: ['leaf'], along: [l.up, 0, 0] },
    ],
    holds: 'slides',
  };
}
/** A little over a quarter of a circle, carried on past the pin down to the underside, so that the leaf's lower edge clears it as it swings. */
function round(l: Laid): Feature {
  const end = Math.PI / 2 + Math.asin(l.above / l.s.radius);
  const { fillet, radius } = l.s;
  const corners = [
    { at: about(l, radius, 0), via: about(l, radius, end / 2) },
    { at: [l.g.thick, l.foot] as const },
    { at: [l.g.thick, -ROOT] as const },
    { at: [fillet, -ROOT] as const },
  ];
  const profile = loopOf((q) => onTop(l, q), corners);
  return sweptProfile('round', 'add', XZ, profile, l.g.run, ['round', 'underside', null, 'step']);
}
/** A quarter of a larger circle about the same centre, and straight down from there. */
function cove(l: Laid): Feature {
  const low = under(l) + CLEAR;
  const corners = [
    { at: about(l, l.cove, 0), via: about(l, l.cove, Math.PI / 4) },
    { at: [l.pin, l.cove] as const },
    { at: [low, l.cove] as const },
    { at: [low, -CLEAR] as const },
    { at: [l.s.fillet - l.s.clearance, -CLEAR] as const },
  ];
  const profile = loopOf((q) => onLeaf(l, q), corners);
  return sweptProfile('cove', 'remove', XZ, profile, [l.g.leaf.box.min[1], l.g.leaf.box.max[1]], ['cove', 'wall', null, null, 'lip']);
}
const ceiling = (l: Laid): Record<string, string> => ({ [l.up > 0 ? 'x+' : 'x-']: 'ceiling' });
function topRecess(l: Laid, a: number, i: number): Feature {
  const box = boxAt(l, [l.flap[0], under(l) + CLEAR], hingeSpan(l, a), [-l.s.flap_top, l.s.radius + CLEAR], l.g.gap);
  return block(`hinge recess ${i + 1}`, 'remove', box, { ...ceiling(l), 'z+': 'end' });
}
function leafRecess(l: Laid, a: number, i: number): Feature {
  const box = boxAt(l, [l.flap[0], under(l) + CLEAR], hingeSpan(l, a), [0, l.s.flap_leaf], 0);
  return block(`hinge recess ${i + 1}`, 'remove', box, { ...ceiling(l), 'z-': 'end' });
}
/** Room for the knuckle, half round at its top. */
function channel(l: Laid, a: number, i: number): Feature {
  const r = l.s.knuckle / 2 + SLACK;
  const low = under(l) + CLEAR;
  const corners = [
    { at: [l.pin, -r] as const, via: [l.pin - r, 0] as const },
    { at: [l.pin, r] as const },
    { at: [low, r] as const },
    { at: [low, -r] as const },
  ];
  return sweptProfile(
    `knuckle channel ${i + 1}`,
    'remove',
    XZ,
    loopOf((q) => onTop(l, q), corners),
    hingeSpan(l, a),
    ['round', null, null, null],
  );
}
/** Both flaps in one, x towards the leaf and z up; the knuckle stands up from them round the pin. */
function hinge(l: Laid, a: number, i: number): ExtraPart {
  const { flap_top, flap_leaf, flap_thick, hinge_long, knuckle } = l.s;
  const stock: Box = { min: [0, 0, 0], max: [flap_top + flap_leaf, hinge_long, flap_thick] };
  const axis = frameAlong([flap_top, 0, knuckle / 2], [0, 1, 0]);
  const at: Frame = {
    o: [xAt(l, l.flap[1]), a - hinge_long / 2, l.g.gap + flap_top],
    x: [0, 0, -1],
    y: [0, 1, 0],
    z: [l.up, 0, 0],
  };
  return {
    name: `hinge${i + 1}`,
    words: 'rule joint hinge',
    record: partRecord(stock, 'y', 'steel', [cylinder('knuckle', 'add', axis, knuckle, 0, hinge_long, { round: 'round' })]),
    at,
    hardware: true,
    enters: [l.up, 0, 0],
  };
}
