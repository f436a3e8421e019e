/** Rule joint: the geometry of its swing, sizes as published, settings that cannot be cut, rules. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { HOME, compose, turned } from '../../src/geom/frame.ts';
import { pinAt, ground, layOut } from '../../src/joints/rule-joint/lay.ts';
import type { RuleJoint } from '../../src/joints/rule-joint/params.ts';
import { ruleJoint } from '../../src/joints/rule-joint/rule-joint.ts';
import { cutPart } from '../../src/solids/cut.ts';
import { kernel, loadKernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';
import { type Boards, attempt, board, meetingOf, mirroredBoards, recordOf, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(ruleJoint);

const IN = 25.4;
/** A leaf behind a fixed top, both of one thickness, 600 along the joint. */
const boards = (thick: number, grain: 'x' | 'y' = 'x'): Boards => ({
  leaf: board([0, 600], [300, 550], [0, thick], grain),
  top: board([0, 600], [0, 300], [0, thick], 'x'),
});
const plain = meetingOf(boards(20));

test('a top of 3/4 in with the usual hinge takes a round of 1/2 in and a fillet of 1/8 in (whitechapel-ltd.com, drop leaf rule joint)', () => {
  const { sizes } = attempt(ruleJoint, meetingOf(boards(0.75 * IN)), { knuckle: IN / 4 });
  // The pin lies 1/8 in, half the knuckle, above the underside: 3/4 - 1/2 - 1/8 leaves 1/8, not the 1/4 that one might take 3/4 - 1/2 for.
  expect(attempt(ruleJoint, meetingOf(boards(0.75 * IN)), { knuckle: IN / 4, radius: IN / 2 }).sizes.fillet).toBeCloseTo(IN / 8, 9);
  expect(attempt(ruleJoint, meetingOf(boards(0.75 * IN)), { knuckle: IN / 4, fillet: IN / 8 }).sizes.radius).toBeCloseTo(IN / 2, 9);
  expect(sizes.fillet + sizes.radius + sizes.knuckle / 2).toBeCloseTo(0.75 * IN, 9);
});
test.each([18, 20, 25])(
  'in a top of %d mm the pin lies fillet and radius below the surface, the centre of round and cove alike',
  (thick) => {
    const t = attempt(ruleJoint, meetingOf(boards(thick)));
    const swing = t.made.contacts.find((c) => c.name.startsWith('cove swings'));
    const [round, cove] = swing?.between.map((s) => ('round' in s.surface ? s.surface : null)) ?? [];
    expect(round?.round.at).toEqual(cove?.round.at);
    expect((cove?.r ?? 0) - (round?.r ?? 0)).toBeCloseTo(t.sizes.clearance, 9);
    // Depth below the surface of the leaf, whose upper face is its own top.
    const m = t.place.meeting;
    const g = ground(m);
    const l = g && layOut(g, t.sizes);
    expect(Math.abs((round?.round.at[0] ?? 0) - (l?.surface ?? 0))).toBeCloseTo(t.sizes.fillet + t.sizes.radius, 9);
  },
);
/** The leaf's solid turned down, in the meeting frame, about the pin or a centre `higher` than it: what it shares with the top's, mm³. */
function sharedAt(degrees: number, higher = 0): number {
  const t = attempt(ruleJoint, plain);
  const m = t.place.meeting;
  const g = ground(m);
  const l = g && layOut(g, t.sizes);
  const [leaf, top] = [m.sides['leaf']?.[0], m.sides['top']?.[0]];
  if (!l || !leaf || !top) throw new Error('no rule joint');
  const pin = pinAt(l, 0);
  const centre = [pin[0] + l.up * higher, 0, pin[2]] as const;
  // The leaf lies at -z and goes down, against the way that the surface looks along x.
  const turn = turned('y', (l.up * degrees * Math.PI) / 180);
  const about = compose(compose({ ...HOME, o: centre }, turn), { ...HOME, o: [-centre[0], 0, -centre[2]] });
  return withSolids(() => {
    const solid = (side: typeof leaf, role: string) => {
      const cut = cutPart(recordOf(side, t.made.features[role] ?? []), { who: role });
      if (!cut.ok) throw new Error(cut.problem);
      return cut.solid.body;
    };
    const swung = placed(placed(solid(leaf, 'leaf'), leaf.frame), about);
    const both = kernel().Manifold.intersection([swung, placed(solid(top, 'top'), top.frame)]);
    const volume = both.volume();
    both.delete();
    const box = swung.boundingBox();
    const lowest = (l.surface - (l.up > 0 ? box.min[0] : box.max[0])) * l.up;
    if (degrees === 90) expect(lowest, 'hangs down').toBeGreaterThan(250);
    return volume;
  });
}
test.each([0, 1, 5, 10, 15, 20, 30, 45, 60, 75, 90])('the leaf swings clear of the top: %d degrees down', (degrees) => {
  expect(sharedAt(degrees)).toBeCloseTo(0, 3);
});
test('about a pin 2 mm too high the same leaf bites: the trial can fail', () => {
  expect(sharedAt(45, 2)).toBeGreaterThan(100);
});

test('its mirror image has the same numbers', () => {
  for (const axis of ['x', 'y'] as const)
    expect(shapesOf(attempt(ruleJoint, meetingOf(mirroredBoards(boards(20), axis, 70))).made)).toEqual(
      shapesOf(attempt(ruleJoint, plain).made),
    );
});
test('the surface is the face side where that is marked', () => {
  const marked = meetingOf({ ...boards(20), leaf: board([0, 600], [300, 550], [0, 20], 'x', { face: 'bottom' }) });
  expect(attempt(ruleJoint, marked).sizes.upper).toBe('bottom');
  expect(attempt(ruleJoint, plain).sizes.upper).toBe('top');
});
test('no leaf hangs on a top of another thickness or on its face', () => {
  const other = { ...boards(20), leaf: board([0, 600], [300, 550], [0, 25], 'x') };
  expect(
    ruleJoint.propose({ meeting: meetingOf(other), siblings: [], set: {} }, { mortiseWidths: [], bits: [], grooveWidths: [] }),
  ).toHaveProperty('cannot');
  expect(ruleJoint.suits(plain)?.rank).toBe(3);
});
const size = (max: number) => fc.option(fc.double({ min: -1, max, noNaN: true }), { nil: undefined });
lawOfSettings(
  ruleJoint,
  [plain, meetingOf(boards(25))],
  fc
    .record({
      upper: fc.constantFrom('top', 'bottom', 'left', undefined),
      fillet: size(12),
      radius: size(25),
      clearance: size(2),
      hinges: fc.option(fc.integer({ min: 0, max: 8 }), { nil: undefined }),
      inset: size(300),
      hinge_long: size(120),
      flap_top: size(60),
      flap_leaf: size(260),
      flap_thick: size(4),
      knuckle: size(12),
    })
    .map((s) => Object.fromEntries(Object.entries(s).filter(([, v]) => v !== undefined)) as Partial<RuleJoint>),
  { runs: 40 },
);
rulesSpeak(ruleJoint, [
  [plain, {}, []],
  [plain, { fillet: 4, radius: 13 }, []],
  [plain, { fillet: 2, radius: 15 }, ['leaf’s lip thin']],
  [plain, { clearance: 0.2 }, ['rule joint binds']],
  [plain, { clearance: 1.5 }, ['rule joint gapes']],
  [plain, { flap_leaf: 20 }, ['hinge’s hold on the leaf']],
  [meetingOf(boards(20, 'y')), {}, ['rule joint across the grain']],
]);
