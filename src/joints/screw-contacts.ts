/** The contacts that a row of screws makes: the two parts drawn together, each shank in its hole, each thread in its pilot hole, each head, each plug. */
import type { Vec3 } from '../geom/vec3.ts';
import { axisVec } from '../geom/vec3.ts';
import { faceToward, flatAt, flatContact } from './blocks.ts';
import type { Contact, Side } from './family.ts';
import { roundSide } from './features.ts';
import { type Bed, type ScrewSpec, type Spot, biteOf, holeName, plugLength, seatOf, shankOf } from './screws.ts';

const INTO: Vec3 = [0, 0, 1];
const OUT: Vec3 = [0, 0, -1];
/** `travel`: how far the parts may move on each other each way at this screw, mm. */
export function screwContacts(b: Bed, s: ScrewSpec, spots: readonly Spot[]): Contact[] {
  return spots.flatMap((p, i) => [
    thread(b, s, p, i),
    ...(p.slot > s.clearance + 1e-6 ? [] : [shank(b, s, p, i)]),
    ...(s.head === 'countersunk' ? [] : [head(b, s, p, i)]),
    ...(s.head === 'plugged' ? plugged(b, s, p, spots.length + i) : []),
  ]);
}
const on = (p: Spot, z: number): Vec3 => [p.at[0], p.at[1], z];
const thread = (b: Bed, s: ScrewSpec, p: Spot, i: number): Contact => {
  const long = biteOf(b, s);
  const at = on(p, b.into.face);
  return {
    name: `thread of screw ${p.n}`,
    between: [
      roundSide('extra', 'turning', 'core', at, INTO, s.pilot / 2, long, i),
      roundSide(b.into.role, `pilot hole ${p.n}`, 'wall', at, INTO, s.pilot / 2, long),
    ],
    fit: 'press',
    meant: 0,
    hold: 'pinned',
    glue: 'never',
  };
};
const shank = (b: Bed, s: ScrewSpec, p: Spot, i: number): Contact => {
  const at = on(p, seatOf(b, s));
  const long = shankOf(b, s);
  return {
    name: `shank of screw ${p.n}`,
    between: [
      roundSide('extra', 'turning', 'shank', at, INTO, s.diameter / 2, long, i),
      roundSide(b.through.role, holeName(s, p), 'wall', at, INTO, s.clearance / 2, long),
    ],
    fit: 'loose',
    meant: (s.clearance - s.diameter) / 2,
    hold: 'sliding',
    glue: 'never',
  };
};
/** The underside of a head beside its hole or slot; in a slot it slides. */
function head(b: Bed, s: ScrewSpec, p: Spot, i: number): Contact {
  const far = (p.slot - s.clearance) / 2;
  const [u, v] = p.way === 'x' ? [0, 1] : [1, 0];
  const along = p.at[u as 0 | 1];
  const beside = p.at[v as 0 | 1];
  const spans: [readonly [number, number], readonly [number, number]] = [
    [along - s.diameter / 2, along + s.diameter / 2],
    [beside + s.clearance / 2, beside + s.diameter * 0.85],
  ];
  const [x, y] = p.way === 'x' ? spans : [spans[1], spans[0]];
  return flatContact({
    name: `head of screw ${p.n}`,
    a: { role: 'extra', index: i, feature: 'turning', face: 'under the head' },
    b:
      s.sink > 0
        ? { role: b.through.role, feature: `counterbore ${p.n}`, face: 'floor' }
        : { role: b.through.role, feature: 'stock', face: faceToward(b.through.side, OUT) },
    on: flatAt('z+', seatOf(b, s), x, y),
    fit: 'slip',
    hold: far > 0 ? 'sliding' : 'pinned',
    glue: 'never',
    ...(far > 0 ? { travel: { along: axisVec(p.way), low: -far, high: far } } : {}),
  });
}
function plugged(b: Bed, s: ScrewSpec, p: Spot, index: number): Contact[] {
  const at = on(p, b.through.back);
  const long = plugLength(s);
  const r = s.bore / 2;
  const of: Side = roundSide('extra', 'turning', 'round', at, INTO, r, long, index);
  const hole: Side = roundSide(b.through.role, `counterbore ${p.n}`, 'side', at, INTO, r, long);
  return [{ name: `plug ${p.n}`, between: [of, hole], fit: 'tap', meant: 0, hold: 'glued', glue: 'long', gluedLength: long }];
}
