/**
 * Wood screws through one part into another, in the meeting frame: holes, slots, counterbores, the screws themselves and the plugs over them.
 * z runs from the outer face of the part that the head lies on into the part that holds.
 */
import type { Box } from '../geom/box.ts';
import { type Frame, HOME } from '../geom/frame.ts';
import { type Loop, circle, polygon, slot } from '../geom/loop.ts';
import { type Vec2, type Vec3, axisVec, dot, quantise, scale } from '../geom/vec3.ts';
import { partRecord } from '../model/part-record.ts';
import type { FaceRef, Feature, PartRecord } from '../model/record.ts';
import { outside } from '../shapes/section.ts';
import { faceToward } from './blocks.ts';
import type { ExtraPart } from './family.ts';
import { CLEAR, frameAlong } from './features.ts';
import type { MeetSide } from './meeting.ts';

/**
 * How a head lies: countersunk flush, with a flat underside on the face (or in a counterbore), or the same under a plug of wood.
 * `hook` has no head at all: it is screwed in by hand.
 */
export type Head = 'countersunk' | 'round' | 'plugged';
export type ScrewSpec = {
  /** Diameter of the shank, and length from the seat of the head (a countersunk one: from its top), mm. */
  readonly diameter: number;
  readonly length: number;
  /** Diameters of the hole in the first part and of the one in which the thread cuts, and how deep that one is, mm. */
  readonly clearance: number;
  readonly pilot: number;
  readonly pilotDepth: number;
  readonly head: Head;
  /** How deep the seat of the head lies below the face, and the diameter of the counterbore over it, mm. */
  readonly sink: number;
  readonly bore: number;
};
/** Where a screw goes, and how long its slot is (no longer than the clearance hole: a round hole) and which way it lies. */
export type Spot = { readonly n: number; readonly at: Vec2; readonly slot: number; readonly way: 'x' | 'y' };
/** The two parts: the one under the head, with the z of its outer face, and the one that holds, with the z of its face. */
export type Bed = {
  readonly through: { readonly role: string; readonly side: MeetSide; readonly back: number };
  readonly into: { readonly role: string; readonly side: MeetSide; readonly face: number };
};

/** A flat head of a wood screw is about twice as wide as its shank, and about 0.6 of the shank high: from memory. */
export const headWidth = (d: number): number => 2 * d;
export const headHeight = (d: number): number => 0.6 * d;
/** How far the screw reaches into the part that holds, mm. */
export const biteOf = (b: Bed, s: ScrewSpec): number => s.length - (b.into.face - b.through.back - s.sink);
/** Where the head's seat lies on z. */
export const seatOf = (b: Bed, s: ScrewSpec): number => b.through.back + s.sink;
const isSlot = (s: ScrewSpec, p: Spot): boolean => p.slot > s.clearance + 1e-6;
/** A frame on the outer face with z along the screw and x along its slot. */
const spotFrame = (p: Spot, z: number): Frame => frameAlong([p.at[0], p.at[1], z], [0, 0, 1], axisVec(p.way));

/** An opening as long as the slot and as wide as a hole of this diameter. */
function opening(
  name: string,
  b: Bed,
  s: ScrewSpec,
  p: Spot,
  d: number,
  span: readonly [number, number],
  faces: { side: string; floor?: string },
): Feature {
  const at = spotFrame(p, 0);
  const half = (p.slot - s.clearance) / 2;
  const long = isSlot(s, p);
  const profile: Loop = long ? slot([-half, 0], [half, 0], d / 2) : circle(0, 0, d / 2);
  const toward = (v: Vec3, sign: 1 | -1): string => faceToward(b.through.side, scale(v, sign));
  // The sides of a slot in the order in which its outline runs: at -y, the end at +x, at +y, the end at -x.
  const sides: readonly string[] = long
    ? [
        `${faces.side} side ${toward(at.y, -1)}`,
        `${faces.side} end ${toward(at.x, 1)}`,
        `${faces.side} side ${toward(at.y, 1)}`,
        `${faces.side} end ${toward(at.x, -1)}`,
      ]
    : [faces.side];
  const named = Object.fromEntries(sides.map((word, corner): [string, FaceRef] => [word, { of: 'side', corner }]));
  return {
    name,
    op: 'remove',
    at,
    why: 'joint',
    solid: { kind: 'prism', profile: [profile], from: span[0], to: span[1] },
    faces: faces.floor ? { ...named, [faces.floor]: { of: 'to' } } : named,
  };
}
const countersink = (name: string, s: ScrewSpec, p: Spot, back: number): Feature => ({
  name,
  op: 'remove',
  at: spotFrame(p, back),
  why: 'joint',
  solid: { kind: 'turned', profile: polygon([0, -CLEAR], [s.diameter, -CLEAR], [s.diameter, 0], [0, s.diameter]) },
  faces: { seat: { of: 'side', corner: 2 } },
});
/** The name that the hole of a screw has in the first part. */
export const holeName = (s: ScrewSpec, p: Spot): string => `${isSlot(s, p) ? 'screw slot' : 'clearance hole'} ${p.n}`;
export function throughFeatures(b: Bed, s: ScrewSpec, spots: readonly Spot[]): Feature[] {
  const { back, side } = b.through;
  const far = Math.max(side.box.max[2], b.into.face);
  return spots.flatMap((p) => [
    opening(holeName(s, p), b, s, p, s.clearance, [back - CLEAR, far + CLEAR], { side: 'wall' }),
    ...(s.head === 'countersunk' ? [countersink(`countersink ${p.n}`, s, p, back)] : []),
    ...(s.sink > 0
      ? [opening(`counterbore ${p.n}`, b, s, p, s.bore, [back - CLEAR, back + s.sink], { side: 'side', floor: 'floor' })]
      : []),
  ]);
}
export const intoFeatures = (b: Bed, s: ScrewSpec, spots: readonly Spot[]): Feature[] =>
  spots.map((p) => ({
    name: `pilot hole ${p.n}`,
    op: 'remove',
    at: spotFrame(p, b.into.face),
    why: 'joint',
    solid: { kind: 'prism', profile: [circle(0, 0, s.pilot / 2)], from: -CLEAR, to: s.pilotDepth },
    faces: { wall: { of: 'side', corner: 0 }, end: { of: 'to' } },
  }));

/** A screw in its own frame, z from the top of its head to its tip; the thread, which cuts into the wood, is drawn by its core. */
function screwRecord(metal: string, s: ScrewSpec, shank: number): PartRecord {
  const { diameter: d, length, head, pilot } = s;
  const top = head === 'countersunk' ? 0 : headHeight(d);
  const [wide, long] = [headWidth(d), top + length];
  const stock: Box = { min: [0, 0, 0], max: [wide, wide, long] };
  const reach = wide + CLEAR;
  // What is turned away: from outside the head down to the core at the tip.
  const under: Vec2[] =
    head === 'countersunk'
      ? [[d / 2, d / 2]]
      : [
          [d / 2, top],
          [d, top],
        ];
  const profile: Vec2[] = [
    [d, -CLEAR],
    [reach, -CLEAR],
    [reach, long + CLEAR],
    [pilot / 2, long + CLEAR],
    [pilot / 2, top + shank],
    [d / 2, top + shank],
    ...under,
    [d, head === 'countersunk' ? 0 : top / 2],
  ];
  const turning: Feature = {
    name: 'turning',
    op: 'shape',
    at: { ...HOME, o: [d, d, 0] },
    why: 'shape',
    solid: { kind: 'turned', profile: polygon(...profile) },
    faces: { core: { of: 'side', corner: 3 }, shank: { of: 'side', corner: 5 }, 'under the head': { of: 'side', corner: 6 } },
  };
  return partRecord(stock, 'z', metal, [turning]);
}
/** The screws, in order, then the plugs over them. */
export function screwExtras(b: Bed, s: ScrewSpec, spots: readonly Spot[]): ExtraPart[] {
  const seat = seatOf(b, s);
  const shank = shankOf(b, s);
  const record = screwRecord('steel', s, shank);
  const top = s.head === 'countersunk' ? seat : seat - headHeight(s.diameter);
  const cornered = (p: Spot, z: number, half: number): Frame => {
    const f = spotFrame(p, z);
    const o = [0, 1, 2].map((i) => (f.o[i] ?? 0) - ((f.x[i] ?? 0) + (f.y[i] ?? 0)) * half) as unknown as Vec3;
    return { ...f, o };
  };
  const into: Vec3 = [0, 0, 1];
  const screws = spots.map((p): ExtraPart => ({
    name: `screw${p.n}`,
    words: 'screw',
    record,
    at: cornered(p, top, s.diameter),
    hardware: true,
    enters: into,
  }));
  return s.head === 'plugged' ? [...screws, ...spots.map((p) => plug(b, s, p))] : screws;
}
/** The unthreaded shank reaches to the face of the part that holds, never farther than the screw itself. */
export const shankOf = (b: Bed, s: ScrewSpec): number => Math.min(b.into.face - seatOf(b, s), s.length - 1);
export const plugLength = (s: ScrewSpec): number => quantise(s.sink - headHeight(s.diameter));
/** A plug of the same wood, its grain laid with the grain of the face that it fills. */
function plug(b: Bed, s: ScrewSpec, p: Spot): ExtraPart {
  const { side, back } = b.through;
  const grain = side.grain;
  const endGrain = Math.abs(dot(grain, [0, 0, 1])) > 0.7;
  const x: Vec3 = endGrain ? [1, 0, 0] : grain;
  const f = frameAlong([p.at[0], p.at[1], back], [0, 0, 1], x);
  const [r, long] = [s.bore / 2, plugLength(s)];
  const o = [0, 1, 2].map((i) => (f.o[i] ?? 0) - ((f.x[i] ?? 0) + (f.y[i] ?? 0)) * r) as unknown as Vec3;
  const stock: Box = { min: [0, 0, 0], max: [s.bore, s.bore, long] };
  const record = partRecord(stock, endGrain ? 'z' : 'x', side.wood, [outside('turning', stock, 'z', circle(0, 0, r))]);
  return { name: `plug${p.n}`, words: 'plug', record, at: { ...f, o }, enters: [0, 0, 1] };
}
