import type { Box } from '../../geom/box.ts';
import { type Frame, HOME } from '../../geom/frame.ts';
import { circle, polygon } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { outside } from '../../shapes/section.ts';
import { ROOT, type Looks, block, boxOf, faceToward, looking } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, cylinder, frameAlong } from '../features.ts';
import type { MeetSide } from '../meeting.ts';
import { contacts } from './contacts.ts';
import { type Ground, boltYs, ground, headHigh, headWide, middleOf, nutSign, seatZ, stubThick, stubs } from './lay.ts';
import type { BedBolt } from './params.ts';

/** How much larger a pocket is than the nut behind it, and a square one beside it, mm. */
const PLAY = 1;
export function make(p: Place<BedBolt>, s: BedBolt): Made {
  const g = ground(p.meeting);
  const sign = g && nutSign(g, s);
  if (!g || !sign) throw new Error('a bolt needs the end of a rail on a post: propose refuses the others');
  const ys = boltYs(g, s);
  const bolts = ys.map((y, n) => bolt(g, s, y, n));
  const nuts = ys.map((y, n) => nut(g, s, y, n, sign));
  return {
    features: {
      rail: [
        ...tenons(g, s),
        ...ys.flatMap((y, n) => [hole(g, s, y, n, [-s.depth, Math.max(s.stub, 0) + CLEAR]), pocket(g, s, y, n, sign)]),
      ],
      post: [
        ...mortises(g, s),
        ...ys.flatMap((y, n) => [hole(g, s, y, n, [g.gap - CLEAR, g.gap + g.deep + CLEAR]), ...counterbore(g, s, y, n)]),
      ],
    },
    extras: [...bolts, ...nuts],
    contacts: contacts(g, s, sign),
    frees: [
      ...bolts.map((e) => ({ moves: [e.name], along: [0, 0, 1] as Vec3 })),
      ...nuts.map((e) => ({ moves: [e.name], along: [sign, 0, 0] as Vec3 })),
      { moves: ['rail'], along: [0, 0, -1] },
    ],
    holds: 'dry',
  };
}
/** Holes and bolt share one way of drawing a circle, so that round lies on round. */
const down = (g: Ground, y: number, z: number): Frame => frameAlong([middleOf(g.x), y, z], [0, 0, -1], [1, 0, 0]);
const hole = (g: Ground, s: BedBolt, y: number, n: number, [low, high]: readonly [number, number]): Feature =>
  cylinder(`bolt hole ${n + 1}`, 'remove', down(g, y, high), s.hole, 0, high - low, { round: 'wall', to: 'end' });
const counterbore = (g: Ground, s: BedBolt, y: number, n: number): Feature[] =>
  s.sink > 0
    ? [
        cylinder(`counterbore ${n + 1}`, 'remove', down(g, y, g.gap + g.deep + CLEAR), s.bore, 0, s.sink + CLEAR, {
          round: 'wall',
          to: 'floor',
        }),
      ]
    : [];
/** The mortise or hole for the nut, from one face past the middle of the rail. */
function pocket(g: Ground, s: BedBolt, y: number, n: number, sign: 1 | -1): Feature {
  const mid = middleOf(g.x);
  const face = sign > 0 ? g.x[1] : g.x[0];
  if (s.nut === 'barrel') {
    const at = frameAlong([face, y, -s.back], [-sign, 0, 0], [0, 0, 1]);
    const long = Math.abs(face - mid) + s.nut_long / 2;
    return cylinder(`nut hole ${n + 1}`, 'remove', at, s.nut_size, -CLEAR, long, { round: 'wall', to: 'bottom' });
  }
  const half = s.nut_size / 2;
  const box = boxOf(
    face + sign * CLEAR,
    mid - sign * (half + PLAY),
    y - half,
    y + half,
    -s.back - s.nut_long / 2 - PLAY,
    -s.back + s.nut_long / 2,
  );
  return block(`nut mortise ${n + 1}`, 'remove', box, { 'z+': 'bearing', [looking('x', sign > 0 ? -1 : 1)]: 'bottom' });
}
const around = (side: MeetSide, word: string): Partial<Record<Looks, string>> => ({
  'x-': `${word} ${faceToward(side, [-1, 0, 0])}`,
  'x+': `${word} ${faceToward(side, [1, 0, 0])}`,
  'y-': `edge ${faceToward(side, [0, -1, 0])}`,
  'y+': `edge ${faceToward(side, [0, 1, 0])}`,
});
const stubBox = (g: Ground, y: readonly [number, number], from: number, to: number): Box => {
  const half = stubThick(g) / 2;
  return boxOf(middleOf(g.x) - half, middleOf(g.x) + half, y[0], y[1], from, to);
};
const tenons = (g: Ground, s: BedBolt): Feature[] =>
  stubs(g, s).map((y, n) => block(`stub tenon ${n + 1}`, 'add', stubBox(g, y, -ROOT, s.stub), { ...around(g.rail, 'cheek'), 'z+': 'end' }));
const mortises = (g: Ground, s: BedBolt): Feature[] =>
  stubs(g, s).map((y, n) =>
    block(`mortise ${n + 1}`, 'remove', stubBox(g, y, g.gap, g.gap + s.stub + 1), { ...around(g.post, 'cheek'), 'z+': 'bottom' }),
  );

/** A bolt in its own frame, z from the top of its head to its tip. The head is drawn round, with its washer. */
function bolt(g: Ground, s: BedBolt, y: number, n: number): ExtraPart {
  const [wide, top] = [headWide(s.diameter), headHigh(s.diameter)];
  const long = top + s.length;
  const stock: Box = { min: [0, 0, 0], max: [wide, wide, long] };
  const out = wide + CLEAR;
  const turning: Feature = {
    name: 'turning',
    op: 'shape',
    at: { ...HOME, o: [wide / 2, wide / 2, 0] },
    why: 'shape',
    solid: {
      kind: 'turned',
      profile: polygon(
        [wide / 2, -CLEAR],
        [out, -CLEAR],
        [out, long + CLEAR],
        [s.diameter / 2, long + CLEAR],
        [s.diameter / 2, top],
        [wide / 2, top],
      ),
    },
    faces: { shank: { of: 'side', corner: 3 }, 'under the head': { of: 'side', corner: 4 } },
  };
  const f = down(g, y, seatZ(g, s) + top);
  return {
    name: `bolt${n + 1}`,
    words: 'bolt',
    record: partRecord(stock, 'z', 'steel', [turning]),
    at: { ...f, o: cornered(f, wide / 2, wide / 2) },
    hardware: true,
    enters: [0, 0, -1],
  };
}
const cornered = (f: Frame, x: number, y: number): Vec3 =>
  [0, 1, 2].map((i) => (f.o[i] ?? 0) - (f.x[i] ?? 0) * x - (f.y[i] ?? 0) * y) as unknown as Vec3;

function nut(g: Ground, s: BedBolt, y: number, n: number, sign: 1 | -1): ExtraPart {
  const common = {
    name: `nut${n + 1}`,
    words: s.nut === 'square' ? 'square nut' : 'barrel nut',
    hardware: true,
    enters: [-sign, 0, 0] as Vec3,
  };
  const { nut_size: d, nut_long: l } = s;
  if (s.nut === 'square') {
    const stock: Box = { min: [0, 0, 0], max: [d, d, l] };
    const thread = cylinder('thread', 'remove', { ...HOME, o: [d / 2, d / 2, 0] }, s.diameter, -CLEAR, l + CLEAR, { round: 'thread' });
    const f = down(g, y, -s.back + l / 2);
    return { ...common, record: partRecord(stock, 'z', 'steel', [thread]), at: { ...f, o: cornered(f, d / 2, d / 2) } };
  }
  // Its own z runs into the rail; the thread crosses it in the middle.
  const stock: Box = { min: [0, 0, 0], max: [d, d, l] };
  const across: Frame = { o: [0, d / 2, l / 2], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };
  const features = [
    outside('turning', stock, 'z', circle(0, 0, d / 2)),
    cylinder('thread', 'remove', across, s.diameter, -CLEAR, d + CLEAR, { round: 'thread' }),
  ];
  const f = frameAlong([middleOf(g.x) + (sign * l) / 2, y, -s.back], [-sign, 0, 0], [0, 0, 1]);
  return { ...common, record: partRecord(stock, 'z', 'steel', features), at: { ...f, o: cornered(f, d / 2, d / 2) } };
}
