/** Round tenons: leaning legs, rungs in surfaces that are not flat, wedges; the three-legged stool worked out by hand. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { HOME, compose, mirrored, turned } from '../../src/geom/frame.ts';
import { type Vec3, dot, quantise } from '../../src/geom/vec3.ts';
import { families } from '../../src/joints/families.ts';
import { type Place, isRefusal } from '../../src/joints/family.ts';
import { type MeetPart, meet } from '../../src/joints/meet.ts';
import { clearLength, ground, layOut } from '../../src/joints/round-tenon/lay.ts';
import type { RoundTenon } from '../../src/joints/round-tenon/params.ts';
import { roundTenon } from '../../src/joints/round-tenon/round-tenon.ts';
import { kernel, loadKernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';
import { type Boards, SHOP, attempt, board, figures, meetingOf, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';
import { documentOf, fixtureText, jsonDocument } from '../support/piece.ts';
import { cutOf, expectSound } from '../support/sound.ts';

beforeAll(() => loadKernel());
const IN = 25.4;
type Set = Partial<RoundTenon>;
const seat: Boards = { enter: board([80, 120], [80, 120], [0, 400], 'z'), into: board([0, 200], [0, 200], [400, 440], 'x') };

describe('three-legged stool', () => {
  const stool = () => buildPiece(documentOf(fixtureText('hearth-stool')), families);
  test('nine places, all made; leaning 15 degrees; 1 in through the seat as two thirds of 1-1/2 in', () => {
    const b = stool();
    expect(b.problems).toEqual([]);
    expect(b.drawn.places).toHaveLength(9);
    for (const p of b.drawn.places) expect(p.refused).toBeNull();
    for (const p of b.drawn.places.filter((x) => x.joint === 'legs')) {
      expect(Math.hypot(p.meeting.angle.rake, p.meeting.angle.splay)).toBeCloseTo((15 * Math.PI) / 180, 9);
      expect([p.meeting.touch, p.meeting.gap]).toEqual(['touch', 0]);
      expect(p.sizes?.['diameter']).toBeCloseTo(IN, 6);
      // Along the axis the seat is 1-1/2 in / cos 15°.
      expect(p.sizes?.['length']).toBeCloseTo((1.5 * IN) / Math.cos((15 * Math.PI) / 180), 6);
    }
  });
  test('the wedges stand across the seat’s grain, whichever way the leg looks', () => {
    for (const p of stool().drawn.places.filter((x) => x.joint === 'legs')) {
      const l = layOut(p.meeting, p.sizes as unknown as RoundTenon);
      const grain = p.meeting.sides['into']?.[0]?.grain ?? [0, 0, 0];
      // The wedge's faces spread along x of its frame; its width runs along y, square to the grain.
      expect(Math.abs(dot(l.wedge?.at.y ?? [1, 0, 0], grain))).toBeLessThan(1e-9);
      expect(p.family.rules.flatMap((r) => r.run(p.input, p.sizes ?? {}, p.made as never)).map((w) => w.rule)).toEqual([]);
    }
  });
  test('rungs: the eight-sided legs stand into the rung’s end, so the shoulder is set back and nothing bites', () => {
    const rungs = stool().drawn.places.filter((x) => x.joint === 'rungs');
    expect(new Set(rungs.map((p) => JSON.stringify(p.sizes))).size).toBe(1);
    for (const p of rungs) {
      const g = ground(p.meeting);
      // The leg's octagon reaches at most 19.05 / cos 22.5° = 20.62 from its axis, the rung's end stands at 19.05.
      expect(g?.bite).toBeGreaterThan(0.5);
      expect(p.meeting.gap).toBe(0);
      expect(p.made?.features['enter']?.map((f) => f.name)).toEqual(['round tenon', 'shoulder set back']);
    }
    const keys = [...stool().drawn.parts].filter(([p]) => p.startsWith('rung')).map(([, p]) => p.record.key);
    expect(new Set(keys).size).toBe(1);
  });
  test('two rungs in one leg open at 60 degrees: their tenons keep r / tan 30° from the leg’s middle', () => {
    const p = stool().drawn.places.find((x) => x.joint === 'rungs');
    const s = p?.sizes as unknown as RoundTenon;
    // The rung's stock ends at 1-1/2 in / 2 from the leg's axis.
    const byHand = 0.75 * IN - s.diameter / 2 / Math.tan(Math.PI / 6) - 0.25 / Math.sin(Math.PI / 6);
    expect(clearLength(s.diameter, p?.input.siblings ?? [])).toBeCloseTo(byHand, 6);
    expect(s.length).toBeLessThanOrEqual(byHand);
    expect(s.length).toBeGreaterThan(byHand - 0.5);
  });
  test('nothing of it is asked for twice, and every part holds together', () => {
    const b = stool().built;
    withSolids(() => {
      const { Manifold } = kernel();
      const all = [...b.parts, ...b.extras].map(([path, p]) => {
        const solid = cutOf(p.record, path);
        expectSound(solid);
        return { path, body: placed(solid.body, p.frame) };
      });
      all.forEach((x, i) => {
        for (const y of all.slice(i + 1)) {
          const both = Manifold.intersection([x.body, y.body]);
          const [v, area] = [both.volume(), both.surfaceArea()];
          both.delete();
          // Rounded records lie up to some 1e-6 off: a skin, thinner than 1e-4.
          if (v > 1e-3) expect((2 * v) / area, `${x.path} and ${y.path} share ${v}`).toBeLessThan(1e-4);
        }
      });
    });
  });
});

test('a through tenon that leans is trimmed flush with the seat, or proud of it square to its face', () => {
  const piece = (set: Record<string, string>) =>
    jsonDocument({
      dryfit: 1,
      title: 'Leg',
      units: 'mm',
      parts: {
        seat: { wood: 'ash', grain: 'x', left: '0', width: '200', front: '0', depth: '200', bottom: '400', height: '40' },
        leg: {
          wood: 'ash',
          grain: 'z',
          at: ['100', '100', '400'],
          turn: [
            ['x', '12 deg'],
            ['y', '7 deg'],
          ],
          midwidth: '0',
          width: '40',
          middepth: '0',
          depth: '40',
          top: { meets: 'seat.bottom' },
          bottom: '-300',
        },
      },
      joints: { stub: { as: 'round_tenon@1', places: [{ enter: 'leg', into: 'seat' }], set: { diameter: '24', through: 'yes', ...set } } },
    });
  const top = (set: Record<string, string>): number => {
    const b = buildPiece(piece(set), families).drawn;
    const leg = b.parts.get('leg');
    if (!leg) throw new Error('no leg');
    return withSolids(() => placed(cutOf(leg.record).body, leg.frame).boundingBox().max[2]);
  };
  expect(top({})).toBeCloseTo(440, 4);
  expect(top({ proud: '6' })).toBeCloseTo(446, 4);
});

test('a rung into a round leg closes on a line only: no shoulder is claimed; biting by 3 it is set back', () => {
  const round = (d: number, x: number) =>
    jsonDocument({
      dryfit: 1,
      title: 'Rung',
      units: 'mm',
      parts: {
        leg: {
          wood: 'ash',
          grain: 'z',
          midwidth: '0',
          width: '40',
          middepth: '0',
          depth: '40',
          bottom: '0',
          height: '400',
          shape: [{ as: 'turned@1' }],
        },
        rung: {
          wood: 'ash',
          grain: 'x',
          left: String(x),
          width: '200',
          middepth: '0',
          depth: String(d),
          midheight: '200',
          height: String(d),
          shape: [{ as: 'turned@1' }],
        },
      },
      joints: { stub: { as: 'round_tenon@1', places: [{ enter: 'rung', into: 'leg' }], set: { diameter: '12', length: '18' } } },
    });
  const made = (x: number) => buildPiece(round(22, x), families).drawn.places[0];
  expect(made(20)?.made?.contacts.map((c) => c.name)).not.toContain('shoulder');
  expect(made(20)?.made?.features['enter']).toHaveLength(1);
  const bites = made(17);
  if (!bites) throw new Error('no place');
  expect(bites.meeting.gap).toBe(0);
  expect(ground(bites.meeting)?.gap).toBeCloseTo(-3, 6);
  // The surface stands 3 in at the middle, so the shoulder goes back 3 and the air of half a millimetre.
  expect(layOut(bites.meeting, bites.sizes as unknown as RoundTenon).back).toBeCloseTo(3.5, 2);
});

const speaks = (boards: Boards, set: Set): string[] => {
  const t = attempt(roundTenon, meetingOf(boards), set);
  return roundTenon.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[string, Boards, Set, string[]]>([
  ['a leg in a seat', seat, {}, []],
  ['wedged', seat, { through: 'yes', wedge: 'across' }, []],
  ['no shoulder to speak of', seat, { diameter: 38 }, ['round tenon thick', 'round tenon short']],
  ['in whole', seat, { diameter: 40, through: 'yes' }, []],
  ['thin', seat, { diameter: 12 }, ['round tenon thin']],
  ['at the edge', { ...seat, enter: board([0, 40], [80, 120], [0, 400], 'z') }, { diameter: 36, through: 'yes' }, ['hole wall']],
  ['out at the top', seat, { length: 39 }, ['hole too deep']],
  ['wedge along the grain', seat, { through: 'yes', wedge: 'along' }, ['round wedge along the grain']],
])('rules on %s', (_name, boards, set, rules) => expect(speaks(boards, set).sort()).toEqual([...rules].sort()));

test.each<[string, Set, Set | undefined]>([
  ['thicker than the leg', { diameter: 41 }, { diameter: 80 / 3 }],
  ['a wedge in a blind hole', { wedge: 'across' }, { through: 'yes' }],
  [
    'a wedge thinner than its kerf',
    { through: 'yes', wedge: 'across', diameter: 25, wedge_thick: 1, kerf: 1 },
    { wedge_thick: 5, kerf: 2.5 },
  ],
  ['standing in', { proud: -1 }, { proud: 0, spare: 2 }],
])('refused with the nearest that goes: %s', (_name, set, nearest) => {
  const place: Place<RoundTenon> = { meeting: meetingOf(seat), siblings: [], set };
  const p = roundTenon.propose(place, SHOP);
  if (!isRefusal<RoundTenon>(p)) throw new Error('not refused');
  expect(p.nearest).toEqual(nearest);
  expect(isRefusal(roundTenon.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});

const seatPart: MeetPart = {
  path: 'seat',
  wood: 'ash',
  grain: 'x',
  marks: {},
  shapes: [],
  stock: { min: [0, 0, 0], max: [200, 200, 40] },
  frame: { ...HOME, o: [0, 0, 400] },
};
law(
  'square or leaning, blind or through: nothing shared, one piece each; the mirror image has equal features',
  fc.record({
    lean: fc.integer({ min: -18, max: 18 }),
    tilt: fc.integer({ min: -18, max: 18 }),
    d: fc.integer({ min: 10, max: 36 }),
    through: fc.constantFrom('no', 'yes'),
    wedge: fc.constantFrom('none', 'across', 'along'),
    proud: fc.integer({ min: 0, max: 8 }),
    axis: fc.constantFrom('x', 'y'),
  }),
  ({ lean, tilt, d, through, wedge, proud, axis }) => {
    const set = { diameter: d, through, wedge: through === 'yes' ? wedge : 'none', proud: through === 'yes' ? proud : 0 } as Set;
    const rad = (deg: number): number => (deg * Math.PI) / 180;
    const frame = compose({ ...HOME, o: [100, 100, 400] }, compose(turned('x', rad(lean)), turned('y', rad(tilt))));
    // A leg whose end was cut square and just reaches the seat with its long edge is not what a document gives: it is trimmed there.
    const down: Vec3 = [dot(frame.x, [0, 0, 1]), dot(frame.y, [0, 0, 1]), dot(frame.z, [0, 0, 1])];
    const reach = (20 * (Math.abs(down[0]) + Math.abs(down[1]))) / down[2];
    const part: MeetPart = {
      path: 'leg',
      wood: 'ash',
      grain: 'z' as const,
      marks: {},
      stock: { min: [-20, -20, -300] as Vec3, max: [20, 20, quantise(reach)] as Vec3 },
      frame,
      shapes: [
        {
          name: 'trim',
          op: 'shape' as const,
          why: 'trim' as const,
          at: HOME,
          faces: { cut: { of: 'plane' as const } },
          solid: { kind: 'half' as const, normal: down, off: 0 },
        },
      ],
    };
    const m = meet({ enter: [part], into: [seatPart] });
    expect(m.gap).toBe(0);
    const { made } = attempt(roundTenon, m, set);
    const f = figures(m, {
      ...made,
      features: { ...made.features, enter: [...(m.sides['enter']?.[0]?.shapes ?? []), ...(made.features['enter'] ?? [])] },
    });
    for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeLessThan(0.05);
    expect(f.pieces).toEqual(Object.fromEntries(Object.keys(f.pieces).map((k) => [k, 1])));
    const image = (p: MeetPart): MeetPart => ({ ...p, frame: compose(mirrored(axis as 'x', 40), p.frame) });
    expect(shapesOf(attempt(roundTenon, meet({ enter: [image(part)], into: [image(seatPart)] }), set).made)).toEqual(shapesOf(made));
  },
  { runs: 40 },
);
