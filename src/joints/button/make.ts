import type { Box } from '../../geom/box.ts';
import type { Frame } from '../../geom/frame.ts';
import { type Vec3, axisVec, scale } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, block, boxOf, faceToward, looking } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, cylinder, frameAlong, pinRecord } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Span, SLACK, bite, boxAt, ground, grooveSpan, height, point, slotDepth, spots } from './lay.ts';
import type { Button } from './params.ts';

export function make(p: Place<Button>, s: Button): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('buttons need a rail square under the top: propose refuses the others');
  const at = spots(g, s);
  const buttons = at.map((a, i) => button(g, s, a, i));
  const screws = at.map((a, i) => screw(g, s, a, i));
  const inward = scale(axisVec(g.across), g.inner);
  return {
    features: {
      under: at.map((a, i) =>
        cylinder(`screw hole ${i + 1}`, 'remove', upward(g, s, a, 0), s.screw, -CLEAR, bite(g, s), { round: 'hole', to: 'end' }),
      ),
      rail: s.slot === 'groove' ? [slot(g, s, 'groove', grooveSpan(g, s))] : at.map((a, i) => slot(g, s, `slot ${i + 1}`, slotSpan(s, a))),
    },
    extras: [...buttons, ...screws],
    contacts: contacts(g, s, at),
    frees: [
      ...screws.map((e) => ({ moves: [e.name], along: [0, 0, 1] as Vec3 })),
      ...buttons.map((e) => ({ moves: [e.name], along: inward })),
      { moves: ['under'], along: [0, 0, -1] },
    ],
    holds: 'slides',
  };
}
const slotSpan = (s: Button, a: number): Span => [a - s.width / 2 - s.allow, a + s.width / 2 + s.allow];
/** Where the screw's middle goes through the button, inward from the rail's face. */
const screwAt = (s: Button): number => s.room + s.length / 2;
const upward = (g: Ground, s: Button, a: number, down: number): Frame => frameAlong(point(g, a, screwAt(s), down), [0, 0, -1]);

function slot(g: Ground, s: Button, name: string, along: Span): Feature {
  const faces: Partial<Record<Looks, string>> = {
    'z-': 'upper wall',
    'z+': 'lower wall',
    [looking(g.across, g.inner > 0 ? -1 : 1)]: 'bottom',
    [looking(g.along, 1)]: `end ${faceToward(g.rail, axisVec(g.along))}`,
    [looking(g.along, -1)]: `end ${faceToward(g.rail, axisVec(g.along, -1))}`,
  };
  return block(name, 'remove', boxAt(g, along, [s.room - slotDepth(s), 0], [g.gap + s.lip, g.gap + s.lip + s.tongue + SLACK]), faces);
}
/** A block whose x runs from the tip of its tongue to its heel, y along the rail, z up; cut away above the tongue. */
function button(g: Ground, s: Button, a: number, i: number): ExtraPart {
  const high = height(s);
  const stock: Box = { min: [0, 0, 0], max: [s.reach + s.length, s.width, high] };
  const hole = frameAlong([s.reach + s.length / 2, s.width / 2, 0], [0, 0, 1]);
  const features: Feature[] = [
    block('rebate', 'remove', boxOf(0, s.reach, 0, s.width, s.tongue, high), { 'z-': 'tongue', 'x+': 'shoulder' }),
    cylinder('screw hole', 'remove', hole, s.screw, -CLEAR, high + CLEAR, { round: 'hole' }),
  ];
  const x = scale(axisVec(g.across), g.inner);
  const at: Frame = { o: point(g, a - s.width / 2, s.room - s.reach, g.gap + s.lip + s.tongue), x, y: axisVec(g.along), z: [0, 0, -1] };
  return {
    name: `button${i + 1}`,
    words: 'button',
    record: partRecord(stock, s.grain === 'along' ? 'x' : 'y', g.rail.wood, features),
    at,
    enters: scale(x, -1),
  };
}
function screw(g: Ground, s: Button, a: number, i: number): ExtraPart {
  const axis = upward(g, s, a, g.gap + s.lip + s.tongue);
  const o = [0, 1, 2].map((k) => (axis.o[k] ?? 0) - ((axis.x[k] ?? 0) + (axis.y[k] ?? 0)) * (s.screw / 2)) as unknown as Vec3;
  return {
    name: `screw${i + 1}`,
    words: 'screw',
    record: pinRecord('steel', s.screw, s.screw_length),
    at: { ...axis, o },
    hardware: true,
    enters: [0, 0, -1],
  };
}
