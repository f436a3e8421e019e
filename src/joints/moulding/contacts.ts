import type { Vec3 } from '../../geom/vec3.ts';
import { type FlatPatch, faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { frameAlong, roundSide } from '../features.ts';
import { keySense } from './extras.ts';
import { EASY, type Laid, bite, halfKey, middleX, spanY, yAt } from './lay.ts';

/** The glued front, the back that slides, and screws or keys. */
export function contacts(l: Laid, at: readonly number[]): Contact[] {
  const front = laid(l, 'moulding glued at its front end', 0, l.glued, true);
  if (l.s.hold === 'glued') return [{ ...front, name: 'moulding on the side' }];
  const back = laid(l, 'moulding on the side, behind', l.glued, l.long, false);
  return [front, back, ...at.flatMap((a, i) => (l.s.hold === 'keys' ? keyed(l, a, i, at.length) : screwed(l, a, i)))];
}
const travel = (l: Laid): Pick<Contact, 'travel'> => (l.g.crossed ? { travel: { along: [0, 1, 0], low: -l.s.room, high: l.s.room } } : {});
function laid(l: Laid, name: string, a: number, b: number, glued: boolean): Contact {
  const { g } = l;
  return flatContact({
    name,
    // The side comes first: what is glued counts across its grain.
    a: { role: 'side', feature: 'stock', face: g.side.end },
    b: { role: 'moulding', feature: 'stock', face: g.moulding.end },
    on: flatAt('z-', g.gap, g.x, spanY(l, a, b)),
    apart: g.gap,
    fit: 'slip',
    hold: glued ? 'glued' : 'sliding',
    glue: glued ? glueAcross([0, 0, 1], g.moulding.grain, g.side.grain) : 'never',
    grain: g.side.grain,
    ...(glued ? {} : travel(l)),
  });
}
const pinned = { hold: 'pinned', glue: 'never' } as const;
function screwed(l: Laid, a: number, i: number): Contact[] {
  const [r, along] = [l.s.screw / 2, [0, 0, -1] as Vec3];
  const [x, y] = [middleX(l.g), yAt(l, a)];
  const head: Vec3 = [x, y, l.g.gap + l.g.thick];
  const face: Vec3 = [x, y, 0];
  const shank = (p: Vec3, long: number) => roundSide('extra', 'turning', 'round', p, along, r, long, i);
  return [
    {
      name: `screw ${i + 1} in its slot`,
      between: [shank(head, l.g.thick), roundSide('side', `slot ${i + 1}`, 'hole', head, along, r + EASY / 2, l.g.thick)],
      fit: 'loose',
      meant: EASY / 2,
      ...pinned,
      ...travel(l),
    },
    {
      name: `screw ${i + 1} in the moulding`,
      between: [shank(face, bite(l.g, l.s)), roundSide('moulding', `screw hole ${i + 1}`, 'hole', face, along, r, bite(l.g, l.s))],
      fit: 'tap',
      meant: 0,
      ...pinned,
    },
  ];
}
function keyed(l: Laid, a: number, i: number, count: number): Contact[] {
  const [r, along] = [l.s.screw / 2, [0, 0, 1] as Vec3];
  const [x, y] = [middleX(l.g), yAt(l, a)];
  const top: Vec3 = [x, y, l.g.gap - l.s.key_deep];
  const face: Vec3 = [x, y, l.g.gap];
  const shank = (p: Vec3, long: number) => roundSide('extra', 'turning', 'round', p, along, r, long, count + i);
  const half = l.s.key_long / 2;
  return [
    flatContact({
      name: `key ${i + 1} on the side`,
      a: { role: 'extra', index: i, feature: 'stock', face: 'bottom' },
      b: { role: 'side', feature: 'stock', face: l.g.side.end },
      on: flatAt('z+', l.g.gap, [x - halfKey(l.s, 0), x + halfKey(l.s, 0)], spanY(l, a - half, a + half)),
      fit: 'slip',
      ...pinned,
    }),
    ...([1, -1] as const).map((sign) => flank(l, a, i, sign)),
    {
      name: `screw ${i + 1} through its key`,
      between: [shank(top, l.s.key_deep), roundSide('extra', 'screw hole', 'hole', top, along, r + EASY / 2, l.s.key_deep, i)],
      fit: 'loose',
      meant: EASY / 2,
      ...pinned,
    },
    {
      name: `screw ${i + 1} in the side`,
      between: [shank(face, bite(l.g, l.s)), roundSide('side', `screw hole ${i + 1}`, 'hole', face, along, r, bite(l.g, l.s))],
      fit: 'tap',
      meant: 0,
      ...pinned,
    },
  ];
}
/** A key's slanted side against the groove's; the groove is cut from the moulding's own back. */
function flank(l: Laid, a: number, i: number, sign: 1 | -1): Contact {
  const x = middleX(l.g) + sign * halfKey(l.s, 0);
  const n: Vec3 = [sign, 0, l.s.slope];
  const frame = frameAlong([x, yAt(l, a), 0], n, [0, 1, 0]);
  const [half, run] = [l.s.key_long / 2, l.s.key_deep * Math.hypot(1, l.s.slope) * (frame.y[2] < 0 ? 1 : -1)];
  const on: FlatPatch = {
    frame,
    patch: [
      [-half, 0],
      [half, 0],
      [half, run],
      [-half, run],
    ],
  };
  return flatContact({
    name: `key ${i + 1}, flank ${faceToward(l.g.moulding, [sign, 0, 0])}`,
    a: { role: 'extra', index: i, feature: sign === keySense(l) ? 'flank high' : 'flank low', face: 'flank' },
    b: { role: 'moulding', feature: 'key groove', face: `flank ${faceToward(l.g.moulding, [sign, 0, 0])}` },
    on,
    fit: 'slip',
    hold: 'sliding',
    glue: 'never',
    ...travel(l),
  });
}
