/** Tenons in pieces that were published or are usual: positions and depths worked by hand, in inches. Sources stand beside each. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { JointPlace } from '../../src/build/part.ts';
import { compose, outPoint, seenFrom } from '../../src/geom/frame.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { DEFAULT_CUTTING } from '../../src/joints/cutters.ts';
import { isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { mortiseTenon } from '../../src/joints/mortise-tenon/mortise-tenon.ts';
import type { MortiseTenon } from '../../src/joints/mortise-tenon/params.ts';
import { type Crossing, crossing, ground } from '../../src/joints/tenons.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';
import { board, meetingOf } from '../support/joint-bench.ts';
import { builtOf, jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());
const IN = 25.4;
type Pair = readonly [number, number];
const inch = (p: Pair): Pair => [p[0] * IN, p[1] * IN];

/** A leg `leg` square; a rail on its right face and one on its back, both `rail` from the outer face; inches. */
function twoRails(leg: number, rail: Pair): { m: Meeting; other: Meeting } {
  const into = board([0, leg * IN], [0, leg * IN], [0, 29 * IN], 'z');
  const z = inch([24, 28]);
  const m = meetingOf({ enter: board([leg * IN, 20 * IN], inch(rail), z, 'x'), into });
  const b = meetingOf({ enter: board(inch(rail), [leg * IN, 20 * IN], z, 'y'), into });
  return { m, other: { ...b, frame: seenFrom(m.frame, b.frame) } };
}
function cross(leg: number, rail: Pair, thickness: number, offset = 0): Crossing | null {
  const { m, other } = twoRails(leg, rail);
  const g = ground(m);
  if (!g) throw new Error('no ground');
  return crossing(g, { thickness: thickness * IN, offset: offset * IN, from: 'middle' }, other);
}
/** Low and high of a cut in the world, inches. */
function spanOf(p: JointPlace | undefined, role: string, name: string): { min: Vec3; max: Vec3 } {
  const f = p?.made?.features[role]?.find((x) => x.name === name);
  if (!p || f?.solid.kind !== 'prism') throw new Error(`no ${name}`);
  const { from, to, profile } = f.solid;
  const at = compose(p.meeting.frame, f.at);
  const all = (profile[0] ?? []).flatMap((c) => [from, to].map((z) => outPoint(at, [c.at[0], c.at[1], z])));
  const pick = (least: (...n: number[]) => number): Vec3 =>
    [0, 1, 2].map((i) => least(...all.map((q) => (q[i] ?? 0) / IN))) as unknown as Vec3;
  return { min: pick(Math.min), max: pick(Math.max) };
}

describe('a leg 2-1/4 in square with a rail on two sides, tenons 1 in long (common practice, worked here)', () => {
  // A tenon 1 in long begins 1-1/4 in from the outer face. The other, t thick with its middle m from the outer face, ends at m + t/2:
  // they just miss each other where m + t/2 = 1-1/4. The leg's middle is at 1-1/8, so with t = 3/8 the tenons stand off it by
  // 1-1/8 - (1-1/4 - 3/16) = 1/16 towards the outside, with t = 1/2 by 1/8.
  test.each([
    [3 / 8, 1 / 16],
    [1 / 2, 1 / 8],
  ])('%f in thick they just miss each other when set off by %f in', (t, off) => {
    const rail: Pair = [1.125 - 0.4375, 1.125 + 0.4375];
    expect((cross(2.25, rail, t, -off)?.square ?? 0) / IN).toBeCloseTo(1, 9);
    expect((cross(2.25, rail, t)?.square ?? 0) / IN).toBeCloseTo(1 - off, 9);
  });
  test('in the middle they are told to meet, set off by a sixteenth they are not', () => {
    const { m, other } = twoRails(2.25, [1.125 - 0.4375, 1.125 + 0.4375]);
    const said = (offset: number): string[] => {
      const place = { meeting: m, siblings: [other], set: { thickness: 0.375 * IN, length: IN, offset: offset * IN } };
      const p = mortiseTenon.propose(place, DEFAULT_CUTTING.in);
      if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
      return mortiseTenon.rules.flatMap((r) => r.run(place, p.sizes, mortiseTenon.make(place, p.sizes))).map((w) => w.rule);
    };
    expect(said(0)).toContain('tenons meet');
    expect(said(-1 / 16)).not.toContain('tenons meet');
  });
  test('their pegs are 1/4 in thick', () => {
    const { m } = twoRails(2.25, [0.6875, 1.5625]);
    const p = mortiseTenon.propose({ meeting: m, siblings: [], set: { length: IN, pegs: 2 } }, DEFAULT_CUTTING.in);
    expect('sizes' in p && p.sizes.peg_diameter / IN).toBeCloseTo(1 / 4, 9);
  });
});

describe('a leg tapered on the two faces that are mortised, the tapers begun below the rails (common practice)', () => {
  const table = (start: string): object => ({
    dryfit: 1,
    title: 'Tapered leg',
    units: 'in',
    parts: {
      leg: {
        wood: 'cherry',
        grain: 'z',
        left: '0',
        width: '2-1/4 in',
        front: '0',
        depth: '2-1/4 in',
        bottom: '0',
        top: '28 in',
        marks: { inner: 'right', inner2: 'back' },
        shape: [{ as: 'taper@1', faces: ['inner', 'inner2'], start, foot: '1-1/8 in' }],
      },
      long: {
        wood: 'cherry',
        grain: 'x',
        left: 'leg.right',
        width: '20 in',
        front: '3/8 in',
        depth: '7/8 in',
        top: 'leg.top',
        height: '4 in',
      },
      short: {
        wood: 'cherry',
        grain: 'y',
        front: 'leg.back',
        depth: '12 in',
        left: '3/8 in',
        width: '7/8 in',
        top: 'leg.top',
        height: '4 in',
      },
    },
    joints: {
      corners: {
        as: 'mortise_tenon@1',
        places: [
          { enter: 'long', into: 'leg' },
          { enter: 'short', into: 'leg' },
        ],
        set: { thickness: '3/8 in', length: '1 in', pegs: '1', peg_diameter: '1/4 in' },
      },
    },
  });
  test('begun 1/4 in below the rail they leave the joints as in a straight leg', () => {
    const loud = (start: string): string[] =>
      findingsOf(table(start))
        .filter((f) => f.grade !== 'note')
        .map((f) => f.rule);
    expect(loud('long.bottom - 1/4 in')).toEqual([]);
    const b = builtOf(jsonDocument(table('long.bottom - 1/4 in'))).drawn;
    // From the face at 2-1/4 in: the mortise ends a tenon and the spare, 1/8 in, farther in.
    const mortise = spanOf(b.places[0], 'into', 'mortise');
    expect(mortise.min[0]).toBeCloseTo(2.25 - 1 - 1 / 8, 6);
    expect(mortise.min[2]).toBeGreaterThan(24);
  });
  test('begun 2 in up the rail both shoulders stay open at the bottom: 2 in of a slope of 1-1/8 in 26', () => {
    const told = findingsOf(table('long.bottom + 2 in')).filter((f) => f.rule === 'shoulder-over-taper');
    expect(told.map((f) => [f.parts, f.grade])).toEqual([
      [['leg', 'long'], 'trouble'],
      [['leg', 'short'], 'trouble'],
    ]);
    // From its begin at 26 in down to the rail's lower edge at 24, square to the slope.
    const slope = Math.atan(1.125 / 26);
    for (const f of told) expect(f.measured / IN).toBeCloseTo(2 * Math.sin(slope), 6);
  });
});

// https://www.woodmagazine.com/measuring-marking/helpful-hints-on-sizing-mortises-and-tenons: 1/4 x 1-1/2 x 1 to 1-3/8.
test('stile and rail 3/4 x 2: a third thick, 1-1/2 wide between shoulders of 1/4, half to two thirds of the stile deep', () => {
  const m = meetingOf({
    enter: board(inch([2, 12]), inch([0, 0.75]), inch([8, 10]), 'x'),
    into: board(inch([0, 2]), inch([0, 0.75]), inch([0, 20]), 'z'),
  });
  const propose = (set: Partial<MortiseTenon>): MortiseTenon => {
    const p = mortiseTenon.propose({ meeting: m, siblings: [], set }, DEFAULT_CUTTING.in);
    if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
    return p.sizes;
  };
  expect(propose({}).thickness / IN).toBeCloseTo(1 / 4, 9);
  const s = propose({ width: 1.5 * IN, drop: 0 });
  expect((2 - s.width / IN) / 2).toBeCloseTo(1 / 4, 9);
  expect((s.length + s.spare) / IN).toBeGreaterThanOrEqual(1);
  expect((s.length + s.spare) / IN).toBeLessThanOrEqual(1 + 3 / 8);
});
// https://www.woodtalkonline.com/topic/3219-tenon-size-for-30x50-kitchen-table/: 3/8 in outside the mortise.
test('leg 2 square, apron 7/8 set 1/8 back, tenon 3/8: 3/8 outside the mortise, 1-1/4 long square, 1-5/8 at the long point of a mitre', () => {
  const rail: Pair = [1 / 8, 1];
  const c = cross(2, rail, 3 / 8);
  expect((c?.square ?? 0) / IN).toBeCloseTo(1.25, 9);
  expect((c?.long ?? 0) / IN).toBeCloseTo(1.625, 9);
  const { m } = twoRails(2, rail);
  const place = { meeting: m, siblings: [], set: { thickness: 0.375 * IN } };
  const p = mortiseTenon.propose(place, DEFAULT_CUTTING.in);
  if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
  const cut = mortiseTenon.make(place, p.sizes).features['into']?.find((f) => f.name === 'mortise');
  const x = cut?.solid.kind === 'prism' ? (cut.solid.profile[0] ?? []).map((q) => outPoint(compose(m.frame, cut.at), [...q.at, 0])[1]) : [];
  expect(Math.min(...x) / IN).toBeCloseTo(0.375, 6);
});

// https://sustainabley.blogspot.com/2014/12/build-shaker-bench.html
describe('a plank bench of 3/4 in boards: seat 36 x 12, legs 11-1/2 wide and 18-1/4 over a 1 in tenon, stretcher 28-1/4 over 1 in tenons', () => {
  const doc = {
    dryfit: 1,
    title: 'Plank bench',
    units: 'in',
    sizes: { thick: '3/4 in' },
    parts: {
      seat: {
        wood: 'pine',
        grain: 'x',
        midwidth: '0',
        width: '36 in',
        middepth: '0',
        depth: '12 in',
        bottom: '17-1/4 in',
        height: 'thick',
      },
      leg: {
        wood: 'pine',
        grain: 'z',
        copies: [{ mirror: 'x', names: ['left', 'right'] }],
        left: 'stretcher.left - thick',
        width: 'thick',
        middepth: '0',
        depth: '11-1/2 in',
        bottom: '0',
        top: 'seat.bottom',
      },
      // Over its tenons 28-1/4: 26-1/4 from shoulder to shoulder.
      stretcher: {
        wood: 'pine',
        grain: 'x',
        midwidth: '0',
        width: '28-1/4 in - 2 * 1 in',
        middepth: '0',
        depth: 'thick',
        top: 'seat.bottom',
        height: '6 in',
      },
    },
    joints: {
      // Through, 1/4 in proud: 1 in long. The outer edges 1-1/4 in from the edges of the leg: 9 in over both.
      top: {
        as: 'mortise_tenon@1',
        places: [{ enter: 'leg:*', into: 'seat' }],
        set: { thickness: 'thick', tenons: '2', width: '2 in', between: '5 in', drop: '0', through: 'yes', proud: '1/4 in', glue: 'no' },
      },
      // One begins 1 in below the upper edge, one is flush with the lower: 1-1/2 wide, 2 in between, half an inch below the middle.
      side: {
        as: 'mortise_tenon@1',
        places: [
          { enter: 'stretcher', into: 'leg:left' },
          { enter: 'stretcher', into: 'leg:right' },
        ],
        set: {
          thickness: 'thick',
          tenons: '2',
          width: '1-1/2 in',
          between: '2 in',
          drop: '1/2 in',
          through: 'yes',
          proud: '1/4 in',
          glue: 'no',
        },
      },
    },
  };
  const built = () => builtOf(jsonDocument(doc)).drawn;
  test('the legs are 27-3/4 apart outside, the seat goes 4-1/8 beyond them, the tenons stand 1-1/2 from the seat’s edges', () => {
    const b = built();
    const mortises = b.places.filter((p) => p.joint === 'top').flatMap((p) => ['mortise 1', 'mortise 2'].map((n) => spanOf(p, 'into', n)));
    const out = Math.max(...mortises.map((s) => s.max[0]));
    expect(2 * out).toBeCloseTo(27.75, 6);
    expect(18 - out).toBeCloseTo(4.125, 6);
    expect(Math.min(...mortises.map((s) => s.min[1])) + 6).toBeCloseTo(1.5, 6);
  });
  test('the lower mortise of the stretcher runs from 11-1/4 to 12-3/4 above the floor; the source’s 10-1/2 is 3/4 off', () => {
    const p = built().places.find((x) => x.joint === 'side');
    const spans = ['mortise 1', 'mortise 2'].map((n) => spanOf(p, 'into', n)).sort((a, c) => a.min[2] - c.min[2]);
    expect([spans[0]?.min[2], spans[0]?.max[2]].map((n) => Math.round((n ?? 0) * 1e6) / 1e6)).toEqual([11.25, 12.75]);
    expect([spans[1]?.min[2], spans[1]?.max[2]].map((n) => Math.round((n ?? 0) * 1e6) / 1e6)).toEqual([14.75, 16.25]);
    expect((spans[0]?.min[2] ?? 0) - 10.5).toBeCloseTo(0.75, 6);
  });
});
