import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { grooveTongue } from '../../src/joints/groove-tongue/groove-tongue.ts';
import type { GrooveTongue } from '../../src/joints/groove-tongue/params.ts';
import { roomFor } from '../../src/joints/groove-tongue/propose.ts';
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
/** A panel 200 x 300 x 6, grain up, against a stile 45 x 18 that runs 45 past it at both ends. */
const panel = board([0, 200], [-3, 3], [0, 300], 'z');
const plain: Boards = { enter: panel, into: board([-45, 0], [-9, 9], [-45, 345], 'z') };
const rail: Boards = { enter: panel, into: board([0, 200], [-9, 9], [-45, 0], 'x') };
/** A board 20 thick beside another of the same thickness. */
const boards: Boards = { enter: board([0, 100], [0, 20], [0, 500], 'z'), into: board([-100, 0], [0, 20], [0, 500], 'z') };

type Row = [string, Boards, Partial<GrooveTongue>, number, number];
test.each<Row>([
  // Groove 6 x 9 x 390; tongue (9 - 2) x 6 x 300.
  ['thin panel in a stile, through', plain, { depth: 9, spare: 2 }, 6 * 9 * 390, 7 * 6 * 300],
  [
    'the same, stopped at both ends where the tongue ends, with 2 of play',
    plain,
    { depth: 9, spare: 2, stopped: 'both' },
    6 * 9 * 304,
    7 * 6 * 300,
  ],
  ['stopped 30 from the top', plain, { depth: 9, spare: 2, stopped: 'top', stop: 30 }, 6 * 9 * 360, 7 * 6 * 300],
  [
    'stopped 50 from the top: the tongue is cut back to leave 2',
    plain,
    { depth: 9, spare: 2, stopped: 'top', stop: 50 },
    6 * 9 * 340,
    7 * 6 * 293,
  ],
  ['round both corners', plain, { depth: 9, spare: 2, corners: 'all' }, 6 * 9 * 390, 7 * 6 * 314],
  ['round both corners, stopped', plain, { depth: 9, spare: 2, corners: 'all', stopped: 'both' }, 6 * 9 * 318, 7 * 6 * 314],
  ['in a rail, round the corners past its ends', rail, { depth: 9, spare: 2, corners: 'all' }, 6 * 9 * 200, 7 * 6 * 214],
  // Tongue 6 in 20: shoulders set back 1.5 on both sides, 14 wide together.
  ['boards, loose, with shoulders', boards, { tongue: 6, depth: 9.5, spare: 1.5, clear: 1.5 }, 6 * 9.5 * 500, 8 * 6 * 500 - 14 * 1.5 * 500],
  ['boards, glued, closed shoulders', boards, { tongue: 6, depth: 9, spare: 0.5, hold: 'glued' }, 6 * 9 * 500, 8.5 * 6 * 500],
  ['bare-faced', boards, { tongue: 6, bare: 'back', depth: 9, spare: 0.5, hold: 'glued' }, 6 * 9 * 500, 8.5 * 6 * 500],
])('%s', (_name, b, set, groove, tongue) => {
  const wide = b === boards && set.bare ? { ...b, into: board([-100, 0], [-10, 30], [0, 500], 'z') } : b;
  const m = meetingOf(wide);
  const { made } = attempt(grooveTongue, m, set);
  const f = figures(m, made);
  expect(lost(m, f, 'into')).toBeCloseTo(groove, 3);
  expect(lost(m, f, 'enter')).toBeCloseTo(-tongue, 3);
  expect(f.overlap['enter / into']).toBeCloseTo(0, 6);
  expect(f.pieces).toEqual({ enter: 1, into: 1 });
});
testExamples(grooveTongue);

test('room behind a panel: 1/8 in for each 12 in of width, half on each side (woodworkingtips.com); 24 in gives 1/8 in a side', () => {
  expect(roomFor(24 * 25.4)).toBeCloseTo(25.4 / 8, 1);
  expect(roomFor(12 * 25.4)).toBeCloseTo(25.4 / 16, 1);
  expect(roomFor(50)).toBe(1.5);
});
test('a third of the thickness: 3/4 in boards take a 1/4 in tongue (NAVEDTRA 14119)', () => {
  const inch = { ...SHOP, grooveWidths: [3.175, 4.7625, 6.35, 9.525] };
  const m = meetingOf({ enter: board([0, 100], [0, 19.05], [0, 500], 'z'), into: board([-100, 0], [0, 19.05], [0, 500], 'z') });
  const p = grooveTongue.propose({ meeting: m, siblings: [], set: {} }, inch);
  expect(!isRefusal<GrooveTongue>(p) && p.sizes.tongue).toBeCloseTo(6.35, 9);
});
test('a floating panel slides, is never glued and has its travel; a glued solid panel across the frame’s grain must not be', () => {
  const loose = attempt(grooveTongue, meetingOf(plain)).made;
  expect(loose.holds).toBe('loose');
  expect(loose.contacts.every((c) => c.hold === 'sliding' && c.glue === 'never')).toBe(true);
  expect(loose.contacts[0]?.travel).toEqual({ along: [0, 0, 1], low: -1.5, high: 1.5 });
  const glued = (b: Boards): string[] =>
    attempt(grooveTongue, meetingOf(b), { hold: 'glued' })
      .made.contacts.filter((c) => c.hold === 'glued')
      .map((c) => c.glue);
  expect(glued(rail)).toEqual(['never', 'never']);
  expect(new Set(glued(boards))).toEqual(new Set(['long']));
});
test('the room behind the tongue is meant: its two surfaces lie that far apart', () => {
  const tip = attempt(grooveTongue, meetingOf(plain), { depth: 9, spare: 2 }).made.contacts.find((c) => c.name.startsWith('tip'));
  const [a, b] = (tip?.between ?? []).map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN));
  expect([tip?.meant, -(b ?? 0) - (a ?? 0)]).toEqual([2, -2 + 4 - 0]);
});
test('a through groove lets the panel slide out at both ends, a stopped one does not', () => {
  const ways = (set: Partial<GrooveTongue>): number[] => attempt(grooveTongue, meetingOf(plain), set).made.frees.map((x) => x.along[1]);
  expect(ways({})).toEqual([0, 1, -1]);
  expect(ways({ stopped: 'top' })).toEqual([0, -1]);
  expect(ways({ stopped: 'both' })).toEqual([0]);
});
test('a mirrored copy has the same numbers', () => {
  const set: Partial<GrooveTongue> = { depth: 9, spare: 2, stopped: 'top', corners: 'bottom' };
  expect(shapesOf(attempt(grooveTongue, meetingOf(mirroredBoards(plain, 'x', 100)), set).made)).toEqual(
    shapesOf(attempt(grooveTongue, meetingOf(plain), set).made),
  );
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    stopped: fc.constantFrom('none' as const, 'top' as const, 'bottom' as const, 'both' as const),
    corners: fc.constantFrom('none' as const, 'all' as const, 'top' as const, 'bottom' as const),
    bare: fc.constantFrom('none' as const, 'front' as const, 'back' as const),
    tongue: fc.double({ min: 2, max: 6, noNaN: true }),
    stop: fc.double({ min: 0, max: 60, noNaN: true }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(plain);
    expect(shapesOf(attempt(grooveTongue, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(grooveTongue, m, set).made, axis));
  },
);
law(
  'the panel and its part never overlap, and the groove holds the tongue with the room that was asked for',
  fc.record({
    stopped: fc.constantFrom('none' as const, 'top' as const, 'bottom' as const, 'both' as const),
    corners: fc.constantFrom('none' as const, 'all' as const),
    hold: fc.constantFrom('loose' as const, 'glued' as const),
    thick: fc.integer({ min: 4, max: 18 }),
    long: fc.integer({ min: 100, max: 400 }),
    past: fc.integer({ min: 0, max: 60 }),
    stop: fc.integer({ min: 0, max: 30 }),
  }),
  ({ thick, long, past, stopped, corners, hold, stop }) => {
    const m = meetingOf({ enter: board([0, 200], [0, thick], [0, long], 'z'), into: board([-45, 0], [-1, 19], [-past, long + past], 'z') });
    const place = { meeting: m, siblings: [], set: { stopped, corners, hold, stop } };
    if (isRefusal(grooveTongue.propose(place, SHOP))) return;
    const { made } = attempt(grooveTongue, m, place.set);
    const f = figures(m, made);
    expect(f.overlap['enter / into']).toBeCloseTo(0, 5);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
  },
  { runs: 60 },
);
const speaks = (b: Boards, set: Partial<GrooveTongue>): string[] => {
  const t = attempt(grooveTongue, meetingOf(b), set);
  return grooveTongue.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Boards, Partial<GrooveTongue>, string[]]>([
  [plain, {}, []],
  [rail, {}, []],
  [boards, {}, []],
  [plain, { depth: 22.5 }, []],
  [plain, { depth: 23 }, ['groove too deep']],
  [plain, { depth: 7, spare: 2 }, []],
  [plain, { depth: 6.5, spare: 2 }, ['panel drops out']],
  [rail, { depth: 6.5, spare: 2 }, []],
  [plain, { spare: 0.5 }, ['panel without room']],
  [rail, { spare: 0.5 }, []],
  [boards, { clear: 0 }, ['panel without room']],
  [boards, { hold: 'glued', clear: 0 }, []],
])('rules %#', (b, set, rules) => expect(speaks(b, set)).toEqual(rules));
test.each<[string, Partial<GrooveTongue>]>([
  ['a tongue thicker than the panel', { tongue: 7 }],
  ['a face that is no side of the panel here', { bare: 'top' }],
  ['right through the stile', { depth: 45 }],
  ['more room than depth', { depth: 5, spare: 5 }],
  ['stops that meet', { stopped: 'both', stop: 200 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  const place = { meeting: meetingOf(plain), siblings: [], set };
  const p = grooveTongue.propose(place, SHOP);
  if (!isRefusal<GrooveTongue>(p)) throw new Error('should be refused');
  expect(isRefusal(grooveTongue.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});

/** Boards of a back, 3/4 in thick and 6 in wide, edge to edge. */
const inches = (n: number): number => n * 25.4;
const backBoards: Boards = {
  enter: board([0, inches(6)], [0, inches(0.75)], [0, 500], 'z'),
  into: board([-inches(6), 0], [0, inches(0.75)], [0, 500], 'z'),
};
test('boards edge to edge: tongue a third of the thickness, dry, with a gap for what both of them move', () => {
  // NAVEDTRA 14119: a third, 1/4 in of 3/4 in. woodworkingtips.com: 1/8 in of movement in 12 in; two boards of 6 in bring half of theirs each.
  const shop = { ...SHOP, grooveWidths: [inches(1 / 4), inches(3 / 8)] };
  const p = grooveTongue.propose({ meeting: meetingOf(backBoards), siblings: [], set: {} }, shop);
  if (isRefusal(p)) throw new Error(p.cannot);
  const { sizes } = p as { sizes: GrooveTongue };
  expect([sizes.joins, sizes.hold, sizes.tongue]).toEqual(['boards', 'loose', inches(1 / 4)]);
  expect(sizes.clear).toBeCloseTo(roomFor(inches(12)), 9);
  expect(sizes.clear).toBeCloseTo(inches(1 / 16), 1);
});
test('boards without a gap are spoken of, and cured by letting it follow them', () => {
  expect(speaks(backBoards, {})).toEqual([]);
  expect(speaks(backBoards, { clear: 0.5 })).toEqual(['panel without room']);
  // A panel in a frame of its own thickness is said to be one.
  expect(attempt(grooveTongue, meetingOf(backBoards), { joins: 'panel' }).sizes.spare).toBe(roomFor(inches(6)));
});
