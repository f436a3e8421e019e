/** Forms of the mortise and tenon: twin, fox-wedged, flared, stub, bare, staggered pegs; any settings; each rule fired and cured. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { mortiseTenon } from '../../src/joints/mortise-tenon/mortise-tenon.ts';
import type { MortiseTenon } from '../../src/joints/mortise-tenon/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { madeOrRefused, spoken } from '../support/any-settings.ts';
import { findingsOf, board as part, joint, piece } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
type Set = Partial<MortiseTenon>;
/** A heavy rail 50 x 90 half way down a post 60 square. */
const heavy: Boards = {
  enter: board([60, 500], [5, 55], [300, 390], 'x', { face: 'front' }),
  into: board([0, 60], [0, 60], [0, 700], 'z'),
};
/** A rail 20 thick in a post 45 square. */
const light: Boards = {
  enter: board([45, 500], [12, 32], [300, 390], 'x', { face: 'front' }),
  into: board([0, 45], [0, 45], [0, 700], 'z'),
};
const sizesOf = (boards: Boards, set: Set = {}): MortiseTenon => attempt(mortiseTenon, meetingOf(boards), set).sizes;

describe('twin', () => {
  test('tenons, the wood between them and the shoulders are equally thick: fifths (common practice)', () => {
    const s = sizesOf(heavy, { twins: 2 });
    expect([s.thickness, s.twin_between]).toEqual([10, 10]);
    const names = attempt(mortiseTenon, meetingOf(heavy), { twins: 2 }).made.contacts.map((c) => c.name);
    expect(names.filter((n) => n.startsWith('shoulder'))).toContain('shoulder between the twins');
  });
  test('two mortises, each as wide as one fifth: worked by hand', () => {
    const m = meetingOf(heavy);
    const { made } = attempt(mortiseTenon, m, {
      twins: 2,
      thickness: 10,
      twin_between: 8,
      width: 60,
      length: 30,
      spare: 2,
      haunch: 'none',
    });
    const f = figures(m, made);
    expect(lost(m, f, 'into')).toBeCloseTo(2 * 10 * 60 * 32, 3);
    expect(lost(m, f, 'enter')).toBeCloseTo(-2 * 10 * 60 * 30, 3);
  });
  test('twice the cheeks to glue, not twice the length over which they hold the post', () => {
    const glued = attempt(mortiseTenon, meetingOf(heavy), { twins: 2, width: 60 }).made.contacts.filter((c) => c.hold === 'glued');
    expect(glued.map((c) => c.gluedLength)).toEqual([60, 60, 60, 60]);
  });
  test('one peg goes through both', () => {
    const m = meetingOf(heavy);
    const { made } = attempt(mortiseTenon, m, { twins: 2, pegs: 1, width: 60 });
    expect(made.extras).toHaveLength(1);
    const through = made.contacts.find((c) => c.name === 'peg1 through the tenon');
    expect(through && 'length' in through.between[0].surface ? through.between[0].surface.length : 0).toBeCloseTo(30, 9);
    expect(figures(m, made).overlap['enter / peg1']).toBeLessThan(0.05);
  });
});
describe('double: one above the other', () => {
  test.each([
    // A rail 54 x t and narrower behind one tenon of 6 t: the tenon takes two thirds.
    [90, 1],
    [108, 1],
    [150, 2],
    [240, 3],
  ])('a rail %d wide with tenons 8 thick: %d of them, none wider than 6 times its thickness (PTSW)', (wide, n) => {
    const s = sizesOf({ ...light, enter: board([45, 500], [12, 32], [100, 100 + wide], 'x') }, { thickness: 8 });
    expect(s.tenons).toBe(n);
    expect(s.width).toBeLessThanOrEqual(48);
  });
  test('one that is too wide is cured by the count that the rule has', () => {
    const wide: Boards = { ...light, enter: board([45, 500], [12, 32], [100, 280], 'x') };
    expect(spoken(mortiseTenon, meetingOf(wide), { tenons: 1, thickness: 8, width: 120 })).toEqual([{ rule: 'tenon wide', cured: true }]);
  });
});
describe('wedged', () => {
  const fox: Set = { fox: 'yes', thickness: 8, width: 48, length: 30, spare: 2, wedges: 2, wedge_thick: 4 };
  test('the fox mortise is wider at its bottom by as much as the wedges spread the tenon (Noyes: slightly wider)', () => {
    // Two wedges from 1.5 to 4 thick: 2 x 2.5 / 2 on either side.
    expect(sizesOf(light, fox).flare).toBeCloseTo(2.5, 9);
    expect(sizesOf(light, { ...fox, wedges: 1 }).flare).toBeCloseTo(1.25, 9);
  });
  test('its wedges go in with the tenon, and the bottom of the mortise drives them', () => {
    const { made } = attempt(mortiseTenon, meetingOf(light), fox);
    expect(made.frees[0]).toEqual({ moves: ['enter', 'wedge1', 'wedge2'], along: [0, 0, -1] });
    const driven = made.contacts.filter((c) => c.name.endsWith('on the bottom'));
    expect(driven).toHaveLength(2);
    for (const c of driven) expect('plane' in c.between[0].surface ? c.between[0].surface.plane.off : 0).toBeCloseTo(32, 9);
  });
  test('a through mortise may be flared too: worked by hand', () => {
    const m = meetingOf(light);
    const { made } = attempt(mortiseTenon, m, {
      through: 'yes',
      wedge: 'across',
      wedges: 2,
      wedge_thick: 4,
      flare: 2,
      thickness: 8,
      width: 48,
    });
    // 15 straight, 48 high; then 30 from 48 to 52.
    expect(lost(m, figures(m, made), 'into')).toBeCloseTo(8 * (48 * 15 + 50 * 30), 3);
  });
  test.each<[string, Set, string[]]>([
    ['as the rule has them', fox, []],
    ['along the grain, through', { through: 'yes', wedge: 'along', wedges: 1, thickness: 8 }, ['wedge along the grain']],
    ['along the grain, fox', { ...fox, wedge: 'along', wedges: 1, wedge_thick: 2 }, ['wedge along the grain']],
    ['a straight mortise', { ...fox, flare: 0 }, ['fox mortise']],
    ['a wide one', { ...fox, flare: 5 }, ['fox mortise']],
    ['blunt', { ...fox, wedge_thick: 8 }, ['wedge slope']],
  ])('rules on %s', (_name, set, rules) => {
    expect(spoken(mortiseTenon, meetingOf(light), set)).toEqual(rules.map((rule) => ({ rule, cured: true })));
  });
  test('in a part whose grain runs across the width the same way of wedging turns by a quarter', () => {
    const plank: Boards = { ...light, into: board([0, 45], [-100, 145], [280, 410], 'y') };
    const kerfs = (boards: Boards): boolean => {
      const { made } = attempt(mortiseTenon, meetingOf(boards), { through: 'yes', wedge: 'across', wedges: 1, thickness: 8, width: 48 });
      const kerf = made.features['enter']?.find((f) => f.name.startsWith('kerf'));
      return Math.abs(kerf?.at.z[0] ?? 0) > 0.5;
    };
    expect([kerfs(light), kerfs(plank)]).toEqual([true, false]);
  });
});
describe('stub and bare', () => {
  const frame: Boards = { enter: board([60, 300], [0, 20], [340, 400], 'x'), into: board([0, 60], [0, 20], [0, 400], 'z') };
  test('a stub is as long as the usual groove, over the whole width, and open at the stile’s end without blame', () => {
    const s = sizesOf(frame, { stub: 'yes' });
    expect([s.length, s.width, s.tenons, s.shoulders]).toEqual([10, 60, 1, 'broad']);
    expect(spoken(mortiseTenon, meetingOf(frame), { stub: 'yes' })).toEqual([{ rule: 'tenon short', cured: true }]);
  });
  test.each<[string, 'low' | 'high', string, string]>([
    ['its own front', 'low', 'front', 'back'],
    ['its own back', 'high', 'back', 'front'],
  ])('bare on %s: no shoulder there, one behind', (_name, from, bare, other) => {
    const names = attempt(mortiseTenon, meetingOf(light), { from, offset: 0, thickness: 9 }).made.contacts.map((c) => c.name);
    expect(names).not.toContain(`shoulder ${bare}`);
    expect(names).toContain(`shoulder ${other}`);
  });
});
test('staggered pegs: those in a post’s front and back stand higher, those in its other faces lower, by half each', () => {
  const back: Boards = { ...light, enter: board([12, 32], [45, 500], [300, 390], 'y') };
  const height = (boards: Boards): number => {
    const m = meetingOf(boards);
    const hole = attempt(mortiseTenon, m, { pegs: 1, peg_stagger: 10 }).made.features['into']?.find((f) => f.name === 'peg1 hole');
    return (hole?.at.o[1] ?? 0) + m.frame.o[2];
  };
  expect([height(light), height(back)]).toEqual([340, 350]);
});
test.each<[string, Set]>([
  ['three twins too thick together', { twins: 3, thickness: 12, twin_between: 4 }],
  ['twins without wood between', { twins: 2, twin_between: 0, thickness: 5 }],
  ['no twin', { twins: 0 }],
  ['fox wedges right through', { fox: 'yes', through: 'yes' }],
  ['fox wedges without wedges', { fox: 'yes', wedge: 'none' }],
  ['fox wedges in a stub', { fox: 'yes', stub: 'yes' }],
  ['a stub right through', { stub: 'yes', through: 'yes' }],
  ['narrower at the bottom', { fox: 'yes', flare: -1 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  const p = mortiseTenon.propose({ meeting: meetingOf(light), siblings: [], set }, SHOP);
  if (!isRefusal<MortiseTenon>(p)) throw new Error('not refused');
  expect(madeOrRefused(mortiseTenon, meetingOf(light), set)).toBeNull();
});
law(
  'any settings of the forms: refused with a nearest that goes, or sound; handed copies alike',
  fc.record(
    {
      twins: fc.integer({ min: 0, max: 4 }),
      twin_between: fc.double({ min: -1, max: 20, noNaN: true }),
      thickness: fc.double({ min: -1, max: 30, noNaN: true }),
      tenons: fc.integer({ min: 0, max: 3 }),
      width: fc.double({ min: -1, max: 60, noNaN: true }),
      length: fc.double({ min: -1, max: 55, noNaN: true }),
      from: fc.constantFrom<MortiseTenon['from']>('middle', 'face', 'low', 'high'),
      haunch: fc.constantFrom<MortiseTenon['haunch']>('none', 'square', 'sloped'),
      stub: fc.constantFrom<MortiseTenon['stub']>('no', 'yes'),
      through: fc.constantFrom<MortiseTenon['through']>('no', 'yes'),
      wedge: fc.constantFrom<MortiseTenon['wedge']>('none', 'across', 'along'),
      fox: fc.constantFrom<MortiseTenon['fox']>('no', 'yes'),
      flare: fc.double({ min: -1, max: 6, noNaN: true }),
      pegs: fc.integer({ min: 0, max: 2 }),
      peg_stagger: fc.double({ min: -10, max: 10, noNaN: true }),
    },
    { requiredKeys: [] },
  ),
  (set) => {
    const m = meetingOf(heavy);
    // A peg that a wedge's kerf meets, and the drawbore, are drawn straight.
    const t = madeOrRefused(mortiseTenon, m, set, /peg|wedge/);
    if (!t) return;
    expect(shapesOf(attempt(mortiseTenon, meetingOf(mirroredBoards(heavy, 'y', 50)), set).made)).toEqual(shapesOf(t.made));
  },
  { runs: 40 },
);
test('a fox-wedged rail in a whole piece: nothing stands in anything, and there is a way to put it together', () => {
  const doc = piece(
    { post: part('z', [0, 45], [0, 45], [0, 500]), rail: part('x', [45, 400], [12, 32], [200, 290]) },
    { end: joint('mortise_tenon', [{ enter: 'rail', into: 'post' }], { fox: 'yes' }) },
  );
  expect(
    findingsOf(doc)
      .filter((f) => f.grade !== 'note')
      .map((f) => f.key),
  ).toEqual([]);
});
