import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { housing } from '../../src/joints/housing/housing.ts';
import type { Housing } from '../../src/joints/housing/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import {
  type Boards,
  SHOP,
  attempt,
  board,
  figures,
  lost,
  meetingOf,
  mirrorMeeting,
  mirroredBoards,
  shapesOf,
} from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(housing);
/** A shelf 300 x 280 x 18 against a side 18 thick, flush at front and back. */
const plain: Boards = { enter: board([18, 318], [0, 280], [150, 168], 'x'), into: board([0, 18], [0, 280], [0, 400], 'z') };
const right: Boards = { enter: board([18, 318], [0, 280], [150, 168], 'x'), into: board([318, 336], [0, 280], [0, 400], 'z') };

// Volumes worked by hand: thickness of the shelf x run x depth.
test.each<[string, Boards, Partial<Housing>, number]>([
  ['through, a quarter of 18 deep', plain, {}, 18 * 280 * 4.5],
  ['through, 6 deep', plain, { depth: 6 }, 18 * 280 * 6],
  ['stopped 12 at the front', plain, { depth: 6, stopped: 'front', stop: 12 }, 18 * 268 * 6],
  ['stopped 12 at both edges', plain, { depth: 6, stopped: 'both', stop: 12 }, 18 * 256 * 6],
  ['other end of the shelf, stopped at the back', right, { depth: 6, stopped: 'back', stop: 20 }, 18 * 260 * 6],
])('%s', (_name, boards, set, volume) => {
  const m = meetingOf(boards);
  const { made } = attempt(housing, m, set);
  const f = figures(m, made);
  expect(lost(m, f, 'into')).toBeCloseTo(volume, 3);
  expect(lost(m, f, 'enter')).toBeCloseTo(-volume, 3);
  expect(f.overlap['enter / into']).toBeCloseTo(0, 6);
  expect(f.union).toBeCloseTo((f.volume['enter'] ?? 0) + (f.volume['into'] ?? 0), 3);
  expect(f.pieces).toEqual({ enter: 1, into: 1 });
});

test('a shelf set back from the front leaves no empty housing in front of it', () => {
  const m = meetingOf({ ...plain, enter: board([18, 318], [30, 280], [150, 168], 'x') });
  const { made } = attempt(housing, m, { depth: 6 });
  expect(lost(m, figures(m, made), 'into')).toBeCloseTo(18 * 250 * 6, 3);
  expect(made.frees.map((x) => x.along)).toEqual([
    [0, 0, -1],
    [0, 1, 0],
  ]);
});
test('a through housing lets the shelf slide out both ways, one stopped at the front only to the back', () => {
  const m = meetingOf(plain);
  const ways = (set: Partial<Housing>): number[] => attempt(housing, m, set).made.frees.map((x) => x.along[1]);
  expect(ways({})).toEqual([0, 1, -1]);
  expect(ways({ stopped: 'front' })).toEqual([0, 1]);
  expect(ways({ stopped: 'both' })).toEqual([0]);
});
test('the shelf’s mirror image at the other side has the same numbers', () => {
  const image = meetingOf(mirroredBoards(plain, 'x', 250));
  const set: Partial<Housing> = { depth: 6, stopped: 'front', stop: 12 };
  expect(shapesOf(attempt(housing, image, set).made)).toEqual(shapesOf(attempt(housing, meetingOf(plain), set).made));
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    stopped: fc.constantFrom('none', 'front', 'back', 'both'),
    stop: fc.double({ min: 1, max: 60, noNaN: true }),
    depth: fc.double({ min: 1, max: 8, noNaN: true }),
    axis: fc.constantFrom('x', 'y'),
  }),
  ({ stopped, stop, depth, axis }) => {
    const m = meetingOf(plain);
    const set = { stopped, stop, depth } as Partial<Housing>;
    expect(shapesOf(attempt(housing, mirrorMeeting(m, axis as 'x' | 'y'), set).made)).toEqual(
      shapesOf(attempt(housing, m, set).made, axis as 'x' | 'y'),
    );
  },
);
law(
  'mates neither overlap nor leave a gap, whatever the boards',
  fc.record({
    w: fc.integer({ min: 60, max: 400 }),
    t: fc.integer({ min: 8, max: 40 }),
    side: fc.integer({ min: 9, max: 40 }),
    back: fc.integer({ min: 0, max: 30 }),
    stop: fc.integer({ min: 1, max: 14 }),
    at: fc.constantFrom('none', 'front', 'back', 'both'),
  }),
  ({ w, t, side, back, stop, at }) => {
    const m = meetingOf({
      enter: board([side, 500], [back, back + w], [100, 100 + t], 'x'),
      into: board([0, side], [0, w], [0, 400], 'z'),
    });
    const { made } = attempt(housing, m, { stopped: at as Housing['stopped'], stop });
    const f = figures(m, made);
    expect(f.overlap['enter / into']).toBeCloseTo(0, 5);
    expect(lost(m, f, 'into')).toBeCloseTo(-lost(m, f, 'enter'), 3);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
  },
  { runs: 40 },
);

test.each<[string, Partial<Housing>, Partial<Housing> | undefined]>([
  ['right through the side', { depth: 18 }, { depth: 4.5 }],
  ['no depth', { depth: 0 }, { depth: 4.5 }],
  ['a face that is no edge of the end', { stopped: 'top' }, { stopped: 'none' }],
  ['stops that meet', { stopped: 'both', stop: 140 }, { stop: 10 }],
])('refused with the nearest that goes: %s', (_name, set, nearest) => {
  const place = { meeting: meetingOf(plain), siblings: [], set };
  const p = housing.propose(place, SHOP);
  expect(isRefusal(p)).toBe(true);
  if (!isRefusal<Housing>(p)) return;
  expect(p.nearest).toEqual(nearest);
  expect(isRefusal(housing.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});

const speaks = (set: Partial<Housing>): string[] => {
  const t = attempt(housing, meetingOf(plain), set);
  return housing.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Partial<Housing>, string[]]>([
  [{}, []],
  [{ depth: 6 }, []],
  [{ depth: 6.1 }, ['housing too deep']],
  [{ depth: 2 }, ['housing shallow']],
  [{ stopped: 'front' }, []],
  [{ stopped: 'front', stop: 2.9 }, ['housing stop thin']],
])('rules on %j say %j', (set, rules) => expect(speaks(set)).toEqual(rules));

test('end grain in the housing hardly glues; the walls of a housing along the grain do', () => {
  const glue = (into: Boards['into'] & object): string[] =>
    attempt(housing, meetingOf({ ...plain, into })).made.contacts.map((c) => c.glue);
  expect(glue(board([0, 18], [0, 280], [0, 400], 'z'))).toEqual(['end', 'end', 'end']);
  expect(glue(board([0, 18], [0, 280], [0, 400], 'y'))).toEqual(['long', 'long', 'end']);
});
test('suits an end on a face, best across the grain, and nothing else', () => {
  expect(housing.suits(meetingOf(plain))?.rank).toBe(8);
  expect(
    housing.suits(meetingOf({ enter: board([0, 100], [0, 50], [0, 20], 'x'), into: board([0, 100], [50, 100], [0, 20], 'x') })),
  ).toBeNull();
});
test('as built a side that stands 1 off keeps its housing in itself and opens the bottom by 1', () => {
  const m = meetingOf({ ...plain, into: board([-1, 17], [0, 280], [0, 400], 'z') }, 'left');
  const { made } = attempt(housing, m, { depth: 6 });
  expect(m.gap).toBeCloseTo(1, 9);
  expect(lost(m, figures(m, made), 'into')).toBeCloseTo(18 * 280 * 6, 3);
  const bottom = made.contacts.find((c) => c.name.startsWith('end of'));
  const offs = bottom?.between.map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN)) ?? [];
  expect((offs[0] ?? 0) + (offs[1] ?? 0)).toBeCloseTo(-1, 9);
});

test.each<[string, Partial<Housing>, number, number]>([
  // Volume worked by hand, and the shoulder's share of the shelf: 18 - 9, 18 - 6.
  ['bare-faced, shoulder below', { depth: 6, shoulders: 'bottom', tongue: 9 }, 9 * 280 * 6, 1],
  ['two shoulders', { depth: 6, shoulders: 'both', tongue: 6 }, 6 * 280 * 6, 2],
  ['two shoulders, stopped', { depth: 6, shoulders: 'both', tongue: 6, stopped: 'both', stop: 12 }, 6 * 256 * 6, 2],
])('shouldered: %s', (_name, set, volume, shoulders) => {
  const m = meetingOf(plain);
  const { made } = attempt(housing, m, set);
  const f = figures(m, made);
  expect(lost(m, f, 'into')).toBeCloseTo(volume, 3);
  expect(lost(m, f, 'enter')).toBeCloseTo(-volume, 3);
  expect(made.contacts.filter((c) => c.name.endsWith('shoulder of the tongue'))).toHaveLength(shoulders);
});
test('a bare-faced tongue keeps the face that is not named flush with its shoulder gone', () => {
  const { made } = attempt(housing, meetingOf(plain), { depth: 6, shoulders: 'top', tongue: 9 });
  const cheek = made.contacts.find((c) => c.name === 'side bottom of the shelf in the housing');
  const s = cheek?.between[0].surface;
  // The shelf's under face runs on: 9 below its middle.
  expect(s && 'plane' in s ? Math.abs(s.plane.off) : 0).toBeCloseTo(9, 9);
});
test('a tongue thinner than a third of the shelf is spoken of, and cured', () => {
  expect(speaks({ shoulders: 'both', tongue: 6 })).toEqual([]);
  expect(speaks({ shoulders: 'both', tongue: 5.9 })).toEqual(['housing tongue thin']);
  expect(speaks({ shoulders: 'both', tongue: 9 })).toEqual([]);
});
law(
  'any settings: refused with a nearest that goes, or solid and sound',
  fc.record(
    {
      depth: fc.double({ min: -2, max: 25, noNaN: true }),
      stop: fc.double({ min: -2, max: 150, noNaN: true }),
      stopped: fc.constantFrom<Housing['stopped']>('none', 'both', 'front', 'top'),
      tongue: fc.double({ min: -1, max: 22, noNaN: true }),
      shoulders: fc.constantFrom<Housing['shoulders']>('none', 'both', 'top', 'bottom', 'front'),
    },
    { requiredKeys: [] },
  ),
  (set) => {
    const place = { meeting: meetingOf(plain), siblings: [], set };
    const p = housing.propose(place, SHOP);
    if (isRefusal<Housing>(p)) {
      expect(isRefusal(housing.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(place.meeting, housing.make(place, (p as { sizes: Housing }).sizes));
    expect(f.overlap['enter / into']).toBeCloseTo(0, 5);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
  },
  { runs: 30 },
);
