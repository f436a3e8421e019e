import type { Box } from '../../geom/box.ts';
import { type Frame } from '../../geom/frame.ts';
import { circle } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { outside } from '../../shapes/section.ts';
import { block, boxOf, faceToward, flatAt, flatContact, looking } from '../blocks.ts';
import type { Contact, ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, cylinder, frameAlong, roundSide } from '../features.ts';
import { type Ground, ground, holeOfPeg, holes, pegX, pegYs } from './lay.ts';
import type { ShelfPeg } from './params.ts';

export function make(p: Place<ShelfPeg>, s: ShelfPeg): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a shelf on pegs stands square to its side: propose refuses the others');
  const pegs = pegYs(g, s).map((y, n) => peg(g, s, y, n));
  const out: Vec3 = [0, 0, -1];
  return {
    features: {
      shelf: [],
      side: holes(g, s).map((h) =>
        cylinder(h.name, 'remove', upright(g, h.x, h.y, g.gap), s.diameter, -CLEAR, s.depth, { round: 'wall', to: 'bottom' }),
      ),
    },
    extras: pegs,
    contacts: pegYs(g, s).flatMap((y, n) => [standsIn(g, s, y, n), lies(g, s, y, n)]),
    frees: [{ moves: ['shelf'], along: [g.up, 0, 0] }, ...pegs.map((e) => ({ moves: [e.name], along: out }))],
    holds: 'loose',
  };
}
/** z into the side, x up: the same for holes and pegs. */
const upright = (g: Ground, x: number, y: number, z: number): Frame => frameAlong([x, y, z], [0, 0, 1], [g.up, 0, 0]);
const lengthOf = (g: Ground, s: ShelfPeg): number => s.reach + g.gap + s.depth - 1;

/** Round in its hole, flat on top where the shelf lies on it; its record's z runs into the side, its x up. */
function peg(g: Ground, s: ShelfPeg, y: number, n: number): ExtraPart {
  const d = s.diameter;
  const f = upright(g, pegX(g, s), y, -s.reach);
  const o = [0, 1, 2].map((i) => (f.o[i] ?? 0) - (((f.x[i] ?? 0) + (f.y[i] ?? 0)) * d) / 2) as unknown as Vec3;
  const stock: Box = { min: [0, 0, 0], max: [d, d, lengthOf(g, s)] };
  const flat: Feature = {
    ...block('flat', 'remove', boxOf(d - s.flat, d + CLEAR, -CLEAR, d + CLEAR, -CLEAR, s.reach + g.gap / 2), { 'x-': 'flat' }),
    why: 'shape',
  };
  const features = [outside('turning', stock, 'z', circle(0, 0, d / 2)), flat];
  return {
    name: `peg${n + 1}`,
    words: 'shelf peg',
    record: partRecord(stock, 'z', s.peg === 'metal' ? 'brass' : g.side.wood, features),
    at: { ...f, o },
    ...(s.peg === 'metal' ? { hardware: true } : {}),
    enters: [0, 0, 1],
  };
}
const standsIn = (g: Ground, s: ShelfPeg, y: number, n: number): Contact => {
  const at: Vec3 = [pegX(g, s), y, g.gap];
  const [r, long] = [s.diameter / 2, s.depth - 1];
  return {
    name: `peg ${n + 1} in the side`,
    between: [
      roundSide('extra', 'turning', 'round', at, [0, 0, 1], r, long, n),
      roundSide('side', holeOfPeg(s, n), 'wall', at, [0, 0, 1], r, long),
    ],
    fit: 'slip',
    meant: 0,
    hold: 'dry',
    glue: 'never',
  };
};
/** Half the width of the flat, from the chord that it cuts. */
const flatHalf = (s: Pick<ShelfPeg, 'diameter' | 'flat'>): number => Math.sqrt(s.flat * (s.diameter - s.flat));
const lies = (g: Ground, s: ShelfPeg, y: number, n: number): Contact => {
  const half = flatHalf(s);
  return flatContact({
    name: `shelf on peg ${n + 1}`,
    a: { role: 'shelf', feature: 'stock', face: faceToward(g.shelf, [-g.up, 0, 0]) },
    b: { role: 'extra', index: n, feature: 'flat', face: 'flat' },
    on: flatAt(looking('x', g.up > 0 ? -1 : 1), g.under, [y - half, y + half], [-s.reach, 0]),
    fit: 'slip',
    hold: 'dry',
    glue: 'never',
  });
};
