/** Mortise and tenon: sizes against handbook rules and hand-worked figures, tenons that meet in a leg, refusals, rules, laws. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { HOME, compose, seenFrom, turned } from '../../src/geom/frame.ts';
import { DEFAULT_CUTTING } from '../../src/joints/cutters.ts';
import { families } from '../../src/joints/families.ts';
import { type Place, isRefusal } from '../../src/joints/family.ts';
import { type MeetPart, meet } from '../../src/joints/meet.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { crossing, ground } from '../../src/joints/tenons.ts';
import { mortiseTenon } from '../../src/joints/mortise-tenon/mortise-tenon.ts';
import type { MortiseTenon } from '../../src/joints/mortise-tenon/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';
import { jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());
const IN = 25.4;
type Set = Partial<MortiseTenon>;

/** A rail 20 x 90 into a leg 45 x 45, flush with its top: the table's corner. */
const corner: Boards = {
  enter: board([45, 500], [3, 23], [623, 713], 'x', { face: 'front' }),
  into: board([0, 45], [0, 45], [0, 713], 'z'),
};
/** The same rail half way down the leg. */
const middle: Boards = { ...corner, enter: board([45, 500], [3, 23], [300, 390], 'x', { face: 'front' }) };
const sizesOf = (boards: Boards, set: Set = {}, siblings: readonly Meeting[] = [], shop = SHOP): MortiseTenon => {
  const p = mortiseTenon.propose({ meeting: meetingOf(boards), siblings, set }, shop);
  if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
  return p.sizes;
};

describe('proposals', () => {
  test('thickness is a third or, into a thicker post, up to a half, as a cutter is owned (PTSW, Rivington)', () => {
    expect(sizesOf(corner).thickness).toBe(8);
    // A frame of equal parts 20 thick: a third is 6.67, the nearest owned 6.
    expect(sizesOf({ enter: board([60, 300], [0, 20], [100, 160], 'x'), into: board([0, 60], [0, 20], [0, 400], 'z') }).thickness).toBe(6);
    expect(
      sizesOf(
        { enter: board([60, 300], [0, 0.75 * IN], [100, 160], 'x'), into: board([0, 60], [0, 0.75 * IN], [0, 400], 'z') },
        {},
        [],
        DEFAULT_CUTTING.in,
      ).thickness,
    ).toBeCloseTo(IN / 4, 6);
  });
  test('width is two thirds of the rail, at most 6 thicknesses (PTSW after Moxon)', () => {
    expect(sizesOf(corner).width).toBe(48);
    expect(sizesOf({ ...middle, enter: board([45, 500], [3, 23], [300, 360], 'x') }).width).toBe(40);
  });
  test('a wide rail is given several tenons', () => {
    const s = sizesOf({ ...corner, enter: board([45, 500], [3, 23], [100, 340], 'x') });
    expect(s.tenons).toBe(3);
    expect(s.width).toBeLessThanOrEqual(6 * s.thickness);
    expect(s.tenons * s.width + (s.tenons - 1) * s.between).toBeLessThanOrEqual((240 * 2) / 3 + 1);
  });
  test('the wide shoulder stands towards the end of the leg (Noyes), in the middle elsewhere', () => {
    expect(sizesOf(corner).drop).toBe(7);
    expect(sizesOf(middle).drop).toBe(0);
    expect(sizesOf({ ...corner, enter: board([45, 500], [3, 23], [0, 90], 'x') }).drop).toBe(-7);
  });
  test('a blind tenon goes two thirds deep at most, the mortise 3 to 5 times its width (PTSW: 5/16 wide wants 15/16 to 1-9/16)', () => {
    expect(sizesOf(corner).length).toBe(30);
    const thick = { enter: board([100, 500], [0, 15], [100, 160], 'x'), into: board([0, 100], [-40, 60], [0, 400], 'z') };
    const s = sizesOf(thick, { thickness: (5 / 16) * IN });
    expect(s.length + s.spare).toBeLessThanOrEqual((1 + 9 / 16) * IN + 1e-6);
    expect(s.length + s.spare).toBeGreaterThanOrEqual((15 / 16) * IN);
  });
  test('what is set stands, and what follows reads it', () => {
    const s = sizesOf(corner, { thickness: 10, width: 55 });
    expect([s.thickness, s.width]).toEqual([10, 55]);
    expect(sizesOf(corner, { through: 'yes', proud: 4 }).length).toBe(49);
  });
  test('every size has a reason with a source', () => {
    const p = mortiseTenon.propose({ meeting: meetingOf(corner), siblings: [], set: { width: 50 } }, SHOP);
    if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
    expect(Object.keys(p.because).sort()).toEqual(Object.keys(mortiseTenon.params).sort());
    for (const r of Object.values(p.because)) expect(r.source.name).not.toBe('');
    expect(p.because.width.source.name).toBe('the document');
  });
});

/** A leg with a rail on its right face and one on its back face, as `meet` and the build see them. */
function twoIn(
  leg: readonly [number, number],
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number] = [300, 390],
): { a: Meeting; b: Meeting; aSib: Meeting; bSib: Meeting } {
  const into = board([0, leg[0]], [0, leg[1]], [0, 700], 'z');
  const a = meetingOf({ enter: board([leg[0], 500], y, z, 'x'), into });
  const b = meetingOf({ enter: board(x, [leg[1], 500], z, 'y'), into });
  return { a, b, aSib: { ...a, frame: seenFrom(b.frame, a.frame) }, bSib: { ...b, frame: seenFrom(a.frame, b.frame) } };
}
describe('tenons that meet in a leg', () => {
  test('walnut side table: 3/8 in the middle of a 2 x 2-1/8 leg, worked by hand: 13/16 and 7/8 clear, mitred 1-3/16 and 1-1/4 long', () => {
    const t = 0.375 * IN;
    const rail = (mid: number): [number, number] => [(mid - 9 / 32) * IN, (mid + 9 / 32) * IN];
    const { a, b, aSib, bSib } = twoIn([2 * IN, 2.125 * IN], rail(1), rail(1.0625));
    const set = { thickness: t, offset: 0, from: 'middle' as const };
    const [ga, gb] = [ground(a), ground(b)];
    if (!ga || !gb) throw new Error('no ground');
    expect((crossing(ga, set, bSib)?.square ?? 0) / IN).toBeCloseTo(2 - 1 - 3 / 16, 9);
    expect((crossing(gb, set, aSib)?.square ?? 0) / IN).toBeCloseTo(2.125 / 2 - 3 / 16, 9);
    expect((crossing(ga, set, bSib)?.long ?? 0) / IN).toBeCloseTo(2 - 1 + 3 / 16, 9);
    expect((crossing(gb, set, aSib)?.long ?? 0) / IN).toBeCloseTo(2.125 / 2 + 3 / 16, 9);
    // The source's tenon, 1 in long and mitred, goes; 1 in long and square it does not.
    const run = (end: 'square' | 'mitred'): string[] => {
      const place: Place<MortiseTenon> = { meeting: a, siblings: [bSib], set: { thickness: t, length: IN, end } };
      const p = mortiseTenon.propose(place, DEFAULT_CUTTING.in);
      if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
      return mortiseTenon.rules.flatMap((r) => r.run(place, p.sizes, mortiseTenon.make(place, p.sizes))).map((w) => w.rule);
    };
    expect(run('square')).toContain('tenons meet');
    expect(run('mitred')).not.toContain('tenons meet');
  });
  test('square ones are proposed the longest that clears, mitred ones reach farther', () => {
    const { a, bSib } = twoIn([45, 45], [3, 23], [3, 23]);
    const propose = (set: Set): MortiseTenon => {
      const p = mortiseTenon.propose({ meeting: a, siblings: [bSib], set }, SHOP);
      if (isRefusal<MortiseTenon>(p)) throw new Error(p.cannot);
      return p.sizes;
    };
    // Middles 13 from the outer faces, 32 from the inner: an 8 mm tenon begins 28 in.
    expect(propose({}).length).toBe(27);
    expect(propose({ end: 'mitred' }).length).toBe(30);
    expect(propose({ offset: -4, end: 'square' }).length).toBe(30);
  });
  test('tenons one above the other do not trouble each other', () => {
    const { a } = twoIn([45, 45], [3, 23], [3, 23]);
    const { bSib } = twoIn([45, 45], [3, 23], [3, 23], [500, 590]);
    const far = { ...bSib, frame: { ...bSib.frame, o: [bSib.frame.o[0], bSib.frame.o[1] + 200, bSib.frame.o[2]] as const } };
    const g = ground(a);
    expect(g && crossing(g, { thickness: 8, offset: 0, from: 'middle' }, far)).toBeNull();
  });
  test('tenons from opposite faces share the leg between them', () => {
    const into = board([0, 45], [0, 45], [0, 700], 'z');
    const a = meetingOf({ enter: board([45, 500], [12, 32], [300, 390], 'x'), into });
    const b = meetingOf({ enter: board([-500, 0], [12, 32], [300, 390], 'x'), into });
    const sib = { ...b, frame: seenFrom(a.frame, b.frame) };
    const g = ground(a);
    expect(g && crossing(g, { thickness: 8, offset: 0, from: 'middle' }, sib)?.square).toBeCloseTo(22.5, 9);
    const p = mortiseTenon.propose({ meeting: a, siblings: [sib], set: {} }, SHOP);
    expect('sizes' in p && p.sizes.length).toBe(21);
  });
});

test('window table: four legs are one record, no wood is asked for twice, a mitred tenon is a quarter of a turn from its neighbour', () => {
  const part = { wood: 'cherry', bottom: '613', height: '90' };
  const doc = jsonDocument({
    dryfit: 1,
    title: 'Frame',
    units: 'mm',
    parts: {
      leg: {
        wood: 'cherry',
        grain: 'z',
        copies: [
          { mirror: 'x', names: ['left', 'right'] },
          { mirror: 'y', names: ['front', 'rear'] },
        ],
        left: '-500',
        width: '45',
        front: '-300',
        depth: '45',
        bottom: '0',
        top: '713',
      },
      long: {
        ...part,
        grain: 'x',
        copies: [{ mirror: 'y', names: ['front', 'rear'] }],
        left: 'leg:left:*.right',
        right: 'leg:right:*.left',
        front: 'leg:left:*.front + 3',
        depth: '20',
      },
      short: {
        ...part,
        grain: 'y',
        copies: [{ mirror: 'x', names: ['left', 'right'] }],
        front: 'leg:*:front.back',
        back: 'leg:*:rear.front',
        left: 'leg:*:front.left + 3',
        width: '20',
      },
    },
    joints: {
      corners: {
        as: 'mortise_tenon@1',
        set: { end: 'mitred', pegs: '1' },
        places: [
          { enter: 'long:*', into: 'leg:left:*' },
          { enter: 'long:*', into: 'leg:right:*' },
          { enter: 'short:*', into: 'leg:*:front' },
          { enter: 'short:*', into: 'leg:*:rear' },
        ],
      },
    },
  });
  const b = buildPiece(doc, families);
  expect(b.problems).toEqual([]);
  expect(b.drawn.places).toHaveLength(8);
  const legs = [...b.drawn.parts].filter(([p]) => p.startsWith('leg')).map(([, p]) => p.record.key);
  expect(new Set(legs).size).toBe(1);
  expect(new Set(b.drawn.places.map((p) => JSON.stringify(p.sizes))).size).toBe(1);
});

test('as built a rail 1 mm short opens its shoulder by 1, the mortise stays where it was in the leg', () => {
  const short = meetingOf({ ...middle, enter: board([46, 500], [3, 23], [300, 390], 'x') });
  const set: Set = { thickness: 8, width: 60, length: 28, spare: 2, drop: 0 };
  const drawn = attempt(mortiseTenon, meetingOf(middle), set);
  const built = attempt(mortiseTenon, short, set);
  const f = figures(short, built.made);
  expect(lost(short, f, 'into')).toBeCloseTo(8 * 60 * 30, 3);
  expect(lost(short, f, 'enter')).toBeCloseTo(-8 * 60 * 28, 3);
  const apart = (m: typeof drawn, name: string): number => {
    const c = m.made.contacts.find((x) => x.name.startsWith(name));
    const [p, q] = (c?.between ?? []).map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN));
    return -(p ?? NaN) - (q ?? NaN);
  };
  expect(apart(drawn, 'shoulder')).toBeCloseTo(0, 9);
  expect(apart(built, 'shoulder')).toBeCloseTo(1, 9);
  expect(apart(built, 'end of')).toBeCloseTo(3, 9);
});

test('a cross-grain pair is told with its whole glued length: two tenons over 5 in of a plank 6 in wide', () => {
  const boards: Boards = {
    enter: board([0.75 * IN, 28 * IN], [0, 0.75 * IN], [0, 6 * IN], 'x'),
    into: board([0, 0.75 * IN], [-5 * IN, 6 * IN], [-11 * IN, 6 * IN], 'z'),
  };
  const t = attempt(mortiseTenon, meetingOf(boards), {
    thickness: 0.75 * IN,
    tenons: 2,
    width: 1.5 * IN,
    between: 2 * IN,
    drop: 0.5 * IN,
    through: 'yes',
  });
  const cheeks = t.made.contacts.filter((c) => c.name.startsWith('cheek'));
  expect(cheeks).toHaveLength(4);
  for (const c of cheeks) expect([(c.gluedLength ?? 0) / IN, c.hold, c.glue]).toEqual([5, 'glued', 'long']);
});

const speaks = (boards: Boards, set: Set): string[] => {
  const t = attempt(mortiseTenon, meetingOf(boards), set);
  return mortiseTenon.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[string, Boards, Set, string[]]>([
  ['the table’s corner as proposed', corner, {}, []],
  ['a rail half way down', middle, {}, []],
  ['with pegs', corner, { pegs: 1 }, []],
  ['a thick tenon', middle, { thickness: 12, length: 34 }, ['tenon thick']],
  ['a thin one', middle, { thickness: 4, width: 24 }, ['tenon thin']],
  ['a wide one', middle, { width: 60 }, ['tenon wide']],
  ['near the face of the leg', middle, { offset: -6, thickness: 8 }, ['mortise wall']],
  [
    'open at the end of the leg',
    corner,
    { width: 90, thickness: 16, drop: 0, length: 30 },
    ['tenon thick', 'mortise near the end', 'tenon short'],
  ],
  ['short grain above', corner, { drop: -20 }, ['mortise near the end']],
  ['deeper than the leg', middle, { length: 44 }, ['mortise too deep']],
  ['hardly a bottom', middle, { length: 40 }, ['mortise too deep']],
  ['a stub', middle, { length: 10 }, ['tenon short']],
  ['a peg too thick', middle, { pegs: 1, peg_diameter: 14, peg_back: 9 }, ['peg thick', 'peg near the end']],
  ['a peg at the end', middle, { pegs: 1, peg_back: 24 }, ['peg near the end']],
  ['a strong drawbore', middle, { pegs: 1, drawbore: 3 }, ['drawbore strong']],
  ['wedges along the grain', middle, { through: 'yes', wedge: 'along', wedges: 1 }, ['wedge along the grain']],
])('rules on %s', (_name, boards, set, rules) => expect(speaks(boards, set).sort()).toEqual([...rules].sort()));

test.each<[string, Set, Set | undefined]>([
  ['thicker than the rail', { thickness: 21 }, { thickness: 20 / 3 }],
  ['wider than the rail', { width: 95 }, { width: 60 }],
  ['beside the rail', { offset: 9 }, { offset: 0, from: 'middle' }],
  ['dropped out of the rail', { drop: 40 }, { drop: 0 }],
  ['a wedge in a blind mortise', { wedge: 'across' }, { through: 'yes' }],
  ['half a peg', { pegs: 1.5 }, { pegs: 1 }],
  ['a haunch longer than the tenon', { haunch: 'square', haunch_length: 60, length: 30 }, { haunch_length: 8 }],
  ['tenons without wood between', { tenons: 2, between: 0, width: 20 }, { between: 20 }],
])('refused with the nearest that goes: %s', (_name, set, nearest) => {
  const place = { meeting: meetingOf(middle), siblings: [], set };
  const p = mortiseTenon.propose(place, SHOP);
  if (!isRefusal<MortiseTenon>(p)) throw new Error('not refused');
  expect(p.nearest).toEqual(nearest);
  expect(isRefusal(mortiseTenon.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});
test('from the face side: a cheek flush with the marked face leaves no shoulder there', () => {
  const t = attempt(mortiseTenon, meetingOf(middle), { from: 'face', offset: 0 });
  expect(t.made.contacts.map((c) => c.name)).not.toContain('shoulder front');
  expect(t.made.contacts.map((c) => c.name)).toContain('shoulder back');
});

law(
  'tenon and mortise: nothing shared, nothing left open but the spare, one piece each; the mirror image has equal features',
  fc.record({
    leg: fc.integer({ min: 30, max: 80 }),
    thick: fc.integer({ min: 12, max: 28 }),
    high: fc.integer({ min: 40, max: 160 }),
    z: fc.integer({ min: 0, max: 200 }),
    haunch: fc.constantFrom('none', 'square', 'sloped'),
    through: fc.constantFrom('no', 'yes'),
    pegs: fc.integer({ min: 0, max: 2 }),
    glue: fc.constantFrom('yes', 'no'),
    shoulders: fc.constantFrom('all', 'broad', 'top', 'bottom'),
    axis: fc.constantFrom('x', 'y', 'z'),
  }),
  ({ leg, thick, high, z, axis, pegs, ...choice }) => {
    const set = { ...choice, pegs } as Set;
    const boards: Boards = { enter: board([leg, 400], [1, 1 + thick], [z, z + high], 'x'), into: board([0, leg], [0, leg], [0, 360], 'z') };
    const m = meetingOf(boards);
    const { made, sizes } = attempt(mortiseTenon, m, set);
    const f = figures(m, made);
    for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeLessThan(0.02);
    expect(f.pieces).toEqual(Object.fromEntries(Object.keys(f.pieces).map((k) => [k, 1])));
    const void_ = lost(m, f, 'into') + lost(m, f, 'enter');
    const extras = made.extras.reduce((v, e) => v + (f.volume[e.name] ?? 0), 0);
    // What the leg loses is filled by tenon and pegs, but for the spare at the bottom of a blind mortise.
    const spare = sizes.through === 'yes' ? 0 : sizes.tenons * sizes.width * sizes.thickness * sizes.spare;
    const proud = sizes.through === 'yes' ? sizes.tenons * sizes.width * sizes.thickness * sizes.proud : 0;
    expect(void_ - extras).toBeCloseTo(spare - proud, 1);
    expect(shapesOf(attempt(mortiseTenon, meetingOf(mirroredBoards(boards, axis as 'x', 100)), set).made)).toEqual(shapesOf(made));
  },
  { runs: 40 },
);
test('suits an end on a post best, an end on a thin board less, and no sharing or side by side', () => {
  expect(mortiseTenon.suits(meetingOf(corner))?.rank).toBe(9);
  expect(
    mortiseTenon.suits(meetingOf({ enter: board([0, 100], [0, 50], [0, 20], 'x'), into: board([0, 100], [50, 100], [0, 20], 'x') })),
  ).toBeNull();
  expect(
    mortiseTenon.suits(meetingOf({ enter: board([0, 100], [0, 50], [0, 20], 'x'), into: board([80, 100], [0, 50], [0, 200], 'z') })),
  ).toBeNull();
});

law(
  'a rail trimmed to a leaning leg: the tenon is rooted, the shoulder stays the trim, nothing is shared',
  fc.record({
    lean: fc.integer({ min: -15, max: 15 }),
    splay: fc.integer({ min: -10, max: 10 }),
    thick: fc.integer({ min: 14, max: 30 }),
    high: fc.integer({ min: 50, max: 120 }),
  }),
  ({ lean, splay, thick, high }) => {
    const rad = (deg: number): number => (deg * Math.PI) / 180;
    // The leg's near face passes through the origin; the rail runs along x up to it and is cut by its plane.
    const frame = compose(turned('y', rad(lean)), turned('z', rad(splay)));
    const leg: MeetPart = {
      path: 'leg',
      wood: 'oak',
      grain: 'z',
      marks: {},
      shapes: [],
      stock: { min: [-50, -60, -300], max: [0, 60, 300] },
      frame,
    };
    const n = frame.x;
    const long = ((thick / 2) * Math.abs(n[1]) + (high / 2) * Math.abs(n[2])) / n[0];
    const rail: MeetPart = {
      path: 'rail',
      wood: 'oak',
      grain: 'x',
      marks: {},
      frame: HOME,
      stock: { min: [-long, -thick / 2, -high / 2], max: [300, thick / 2, high / 2] },
      shapes: [
        {
          name: 'trim',
          op: 'shape',
          why: 'trim',
          at: HOME,
          faces: { cut: { of: 'plane' } },
          solid: { kind: 'half', normal: [-n[0], -n[1], -n[2]], off: 0 },
        },
      ],
    };
    const m = meet({ enter: [rail], into: [leg] });
    expect([m.kind, m.touch, m.gap]).toEqual(['end-to-face', 'touch', 0]);
    const { made } = attempt(mortiseTenon, m, {});
    const f = figures(m, {
      ...made,
      features: { ...made.features, enter: [...(m.sides['enter']?.[0]?.shapes ?? []), ...(made.features['enter'] ?? [])] },
    });
    for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeLessThan(0.02);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
    expect(
      made.contacts
        .filter((c) => c.name.startsWith('shoulder'))
        .every((c) => c.between[0].feature === (lean === 0 && splay === 0 ? c.between[0].feature : 'trim')),
    ).toBe(true);
  },
  { runs: 40 },
);
