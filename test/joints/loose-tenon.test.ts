/** Loose tenon: two mortises and a separate tenon, tenons that meet in a leg, any settings, each rule fired and cured. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { seenFrom } from '../../src/geom/frame.ts';
import { isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { looseTenon } from '../../src/joints/loose-tenon/loose-tenon.ts';
import type { LooseTenon } from '../../src/joints/loose-tenon/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { madeOrRefused, spoken } from '../support/any-settings.ts';
import { findingsOf, board as part, joint, piece } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
const rail: Boards = {
  enter: board([45, 500], [12, 33], [300, 390], 'x', { face: 'front' }),
  into: board([0, 45], [0, 45], [0, 700], 'z'),
};

test('both parts keep their drawn length; each loses its mortise, the tenon is an extra', () => {
  const m = meetingOf(rail);
  const { made } = attempt(looseTenon, m, { thickness: 8, width: 50, deep_in: 26, deep_own: 30, spare: 1.5 });
  const f = figures(m, made);
  expect([lost(m, f, 'enter'), lost(m, f, 'into'), f.volume['tenon1']]).toEqual(
    [8 * 50 * 31.5, 8 * 50 * 27.5, 8 * 50 * 56].map((v) => expect.closeTo(v, 3) as number),
  );
  expect(
    Object.values(made.features)
      .flat()
      .filter((x) => x.op === 'add'),
  ).toEqual([]);
});
test('on an edge, on a face; the mortise 3 to 5 times as deep as wide, two thirds of the part at most (PTSW)', () => {
  const door: Boards = { enter: board([90, 400], [0, 24], [90, 210], 'x'), into: board([0, 90], [0, 24], [0, 600], 'z') };
  for (const [boards, kind] of [
    [rail, 'end-to-face'],
    [door, 'end-to-edge'],
  ] as const) {
    const m = meetingOf(boards);
    expect(m.kind).toBe(kind);
    const { sizes } = attempt(looseTenon, m);
    const deep = m.sides['into']?.[0]?.box.max[2] ?? 0;
    expect((sizes.deep_in + sizes.spare) / sizes.thickness).toBeGreaterThanOrEqual(3);
    expect((sizes.deep_in + sizes.spare) / sizes.thickness).toBeLessThanOrEqual(5);
    expect(sizes.deep_in + sizes.spare).toBeLessThanOrEqual((deep * 2) / 3 + 1e-6);
  }
});
test('as a router leaves them: the rounded tenon fills its mortises but for the spare', () => {
  const m = meetingOf(rail);
  const { made } = attempt(looseTenon, m, { thickness: 8, width: 50, deep_in: 25, deep_own: 25, spare: 1, ends: 'round' });
  const f = figures(m, made);
  const slot = (f.volume['tenon1'] ?? 0) / 50;
  expect(slot).toBeGreaterThan(42 * 8 + 15.8 * Math.PI);
  expect(lost(m, f, 'into')).toBeCloseTo(slot * 26, 2);
  expect(lost(m, f, 'enter')).toBeCloseTo(slot * 26, 2);
});
test('as built a part 1 mm short opens the shoulder by 1; the tenon stays in its own end', () => {
  const m = meetingOf({ ...rail, enter: board([46, 500], [12, 33], [300, 390], 'x') });
  const { made } = attempt(looseTenon, m, { tenons: 1, deep_in: 26, deep_own: 30, spare: 1.5 });
  const apart = (name: string): number => {
    const c = made.contacts.find((x) => x.name.startsWith(name));
    const [p, q] = (c?.between ?? []).map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN));
    return -(p ?? NaN) - (q ?? NaN);
  };
  expect(apart('shoulder')).toBeCloseTo(1, 9);
  expect(apart('end of the tenon in the end')).toBeCloseTo(1.5, 9);
  expect(apart('end of the tenon in the other part')).toBeCloseTo(2.5, 9);
});
/** A second rail on the leg's back, and how the first one sees it. */
function sibling(): { m: Meeting; other: Meeting } {
  const m = meetingOf(rail);
  const b = meetingOf({ ...rail, enter: board([12, 33], [45, 500], [300, 390], 'y') });
  return { m, other: { ...b, frame: seenFrom(m.frame, b.frame) } };
}
test('two that meet in a leg: proposed the longest that clears; longer ones are told once, with a cure', () => {
  const { m, other } = sibling();
  const p = looseTenon.propose({ meeting: m, siblings: [other], set: { thickness: 8 } }, SHOP);
  // Middles 22.5 from the outer faces, 22.5 from the inner: the other's cheek begins 18.5 in, 1 is left clear.
  expect('sizes' in p && p.sizes.deep_in).toBe(17);
  expect(spoken(looseTenon, m, { thickness: 8, deep_in: 26 }, [other])).toEqual([{ rule: 'loose tenons meet', cured: true }]);
  const doc = piece(
    {
      leg: part('z', [0, 45], [0, 45], [0, 700]),
      a: part('x', [45, 500], [12, 33], [300, 390]),
      b: part('y', [12, 33], [45, 500], [300, 390]),
    },
    {
      rails: joint(
        'loose_tenon',
        [
          { enter: 'a', into: 'leg' },
          { enter: 'b', into: 'leg' },
        ],
        { deep_in: '26' },
      ),
    },
  );
  expect(
    findingsOf(doc)
      .filter((f) => f.grade === 'stops')
      .map((f) => f.rule),
  ).toEqual(['loose-tenons-meet']);
});
test.each<[string, Partial<LooseTenon>, string[]]>([
  ['as proposed', {}, []],
  ['thin', { thickness: 4, width: 20 }, ['loose tenon thin']],
  ['thick', { thickness: 11 }, ['loose tenon thick']],
  ['wide', { width: 60, thickness: 8 }, ['loose tenon wide']],
  ['short', { deep_in: 10 }, ['loose tenon short']],
  ['short in its own end', { deep_own: 10 }, ['loose tenon short']],
  ['hardly a bottom', { deep_in: 42 }, ['loose mortise too deep']],
  ['out at the back', { deep_in: 46 }, ['loose mortise too deep']],
])('rules on %s', (_name, set, rules) => {
  expect(spoken(looseTenon, meetingOf(rail), set)).toEqual(rules.map((rule) => ({ rule, cured: true })));
});
test('at the end of the leg, at its side, and across its grain', () => {
  const top: Boards = { ...rail, enter: board([45, 500], [12, 33], [610, 700], 'x') };
  expect(spoken(looseTenon, meetingOf(top), { thickness: 8, tenons: 1, drop: -18, width: 48 })).toEqual([
    { rule: 'loose mortise near the end', cured: true },
  ]);
  const side: Boards = { ...rail, enter: board([45, 500], [0, 21], [300, 390], 'x') };
  expect(spoken(looseTenon, meetingOf(side), { offset: -4 })).toEqual([{ rule: 'loose mortise wall', cured: true }]);
  const wide: Boards = { ...rail, enter: board([45, 500], [12, 33], [100, 340], 'x') };
  expect(spoken(looseTenon, meetingOf(wide), {})).toEqual([{ rule: 'loose tenons across the grain', cured: true }]);
});
test.each<[string, Partial<LooseTenon>]>([
  ['thicker than the part', { thickness: 22 }],
  ['wider than the part', { width: 95 }],
  ['through its side', { offset: 8 }],
  ['through its edge', { drop: 40 }],
  ['half a tenon', { tenons: 1.5 }],
  ['no wood between', { tenons: 2, between: 0 }],
  ['round and square at once', { ends: 'round', width: 8, thickness: 8 }],
  ['nothing in the post', { deep_in: 0 }],
  ['longer than the part', { deep_own: 500 }],
  ['a mortise shallower than its tenon', { spare: -1 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  expect(madeOrRefused(looseTenon, meetingOf(rail), set)).toBeNull();
});
test('refused on a part that shares its wood; suits an end on a post, not an end on an end', () => {
  const shared = meetingOf({ ...rail, enter: board([20, 500], [12, 33], [300, 390], 'x') });
  expect(isRefusal(looseTenon.propose({ meeting: shared, siblings: [], set: {} }, SHOP))).toBe(true);
  expect(looseTenon.suits(meetingOf(rail))?.rank).toBe(6);
  expect(looseTenon.suits(shared)).toBeNull();
});
law(
  'any settings: refused with a nearest that goes, or sound, the voids no more than the spares; handed copies alike',
  fc.record(
    {
      thickness: fc.double({ min: -1, max: 24, noNaN: true }),
      width: fc.double({ min: -1, max: 95, noNaN: true }),
      deep_in: fc.double({ min: -1, max: 42, noNaN: true }),
      deep_own: fc.double({ min: -1, max: 460, noNaN: true }),
      tenons: fc.integer({ min: 0, max: 4 }),
      between: fc.double({ min: -1, max: 40, noNaN: true }),
      offset: fc.double({ min: -10, max: 10, noNaN: true }),
      from: fc.constantFrom<LooseTenon['from']>('middle', 'face', 'low', 'high'),
      drop: fc.double({ min: -30, max: 30, noNaN: true }),
      ends: fc.constantFrom<LooseTenon['ends']>('square', 'round'),
      spare: fc.double({ min: -1, max: 4, noNaN: true }),
    },
    { requiredKeys: [] },
  ),
  (set) => {
    const m = meetingOf(rail);
    const t = madeOrRefused(looseTenon, m, set);
    if (!t || t.sizes.deep_in + t.sizes.spare > 44) return;
    const f = figures(m, t.made);
    expect(Object.values(f.pieces).every((n) => n === 1)).toBe(true);
    const extras = t.made.extras.reduce((v, e) => v + (f.volume[e.name] ?? 0), 0);
    const section = extras / (t.sizes.deep_in + t.sizes.deep_own);
    expect(lost(m, f, 'enter') + lost(m, f, 'into') - extras).toBeCloseTo(section * 2 * t.sizes.spare, 1);
    expect(shapesOf(attempt(looseTenon, meetingOf(mirroredBoards(rail, 'y', 50)), set).made)).toEqual(shapesOf(t.made));
  },
  { runs: 40 },
);
