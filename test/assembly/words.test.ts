import { expect, test } from 'vitest';
import { planOrder } from '../../src/assembly/order.ts';
import { fromSide, groupWords, listed, partsInWords, sideOf, wayOf } from '../../src/assembly/words.ts';
import { pieces } from './pieces.ts';
import { X, Y, Z, back, link, wood } from './wood.ts';

test('sides as seen by a person in front of the piece', () => {
  expect([X, back(X), Y, back(Y), Z, back(Z)].map(sideOf)).toEqual(['right', 'left', 'back', 'front', 'above', 'below']);
  expect([X, Y, Z, back(Z)].map(fromSide)).toEqual(['from the right', 'from the back', 'from above', 'from below']);
  expect([X, back(X), Y, back(Y), Z, back(Z)].map(wayOf)).toEqual(['to the right', 'to the left', 'backwards', 'forwards', 'up', 'down']);
  expect(sideOf([0.1, 0, -0.99])).toBe('below');
  expect(fromSide([0.6, 0, 0.8])).toBe('from above and the right');
});
test('names for several parts', () => {
  expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
  expect(partsInWords(['left stile'])).toBe('left stile');
  expect(partsInWords(['left stile', 'right stile'])).toBe('left and right stiles');
  expect(partsInWords(['front apron', 'front left leg'])).toBe('front apron and front left leg');
  expect(partsInWords(['peg 1', 'peg 2', 'peg 3'])).toBe('3 pegs');
  expect(partsInWords(['peg in the left leg', 'peg in the right leg'])).toBe('2 pegs');
  expect(partsInWords(['front left leg', 'front right leg', 'back left leg', 'seat'])).toBe('3 legs and seat');
  expect(partsInWords(['leg 1', 'leg 2', 'rung 1', 'rung 2', 'seat'])).toBe('2 legs, 2 rungs and seat');
  expect(partsInWords(['upper shelf', 'lower shelf'])).toBe('upper and lower shelves');
  expect(partsInWords(['a slat', 'b slat', 'c slat', 'd slat', 'e slat'])).toBe('5 slats');
  expect(partsInWords([])).toBe('');
  expect(groupWords('drawer:left')).toBe('left drawer');
  expect(groupWords('top_drawer:2')).toBe('top drawer 2');
});
test('a table reads as a maker would say it', () => {
  const p = pieces.table();
  const order = planOrder(p.parts, p.links)!;
  expect(order.steps.map((s) => s.words)).toEqual([
    'front left leg onto the left apron, from the front',
    'back left leg onto the left apron, from the back',
    'front right leg onto the right apron, from the front',
    'back right leg onto the right apron, from the back',
    'left assembly onto the back and front aprons, from the left',
    'right assembly onto the back and front aprons, from the right',
    'top onto the back, front, left and right aprons, from above',
  ]);
  expect(order.stages.map((s) => s.name)).toEqual(['left assembly', 'right assembly', 'the whole piece']);
});
test('what enters goes into, what receives goes onto, what only touches goes against', () => {
  const words = (a: Parameters<typeof planOrder>[0], ...links: Parameters<typeof planOrder>[1]): string =>
    planOrder(a, links)!.steps[0]!.words;
  const rail = wood('rail', [
    [40, 300, 5, 35, 40, 100],
    [10, 40, 15, 25, 50, 90],
  ]);
  const leg = wood('leg', [[0, 40, 0, 40, 0, 200]], [[10, 40, 15, 25, 50, 90]]);
  expect(words([rail, leg], link('rail', 'leg', X))).toMatch(/^leg onto the rail, from the left|^rail into the leg, from the right/);
  const light = { ...rail, weight: 1 };
  expect(words([light, leg], link('rail', 'leg', X))).toBe('rail into the leg, from the right');
  expect(words([{ ...leg, weight: 1 }, rail], link('rail', 'leg', X))).toBe('leg onto the rail, from the left');
  const [a, b] = [wood('a', [[0, 100, 0, 100, 0, 100]]), wood('b', [[100, 120, 0, 100, 0, 100]])];
  expect(words([a, b], link('b', 'a', X))).toBe('b against the a, from the right');
});
test('nothing, one part, and parts joined to nothing', () => {
  expect(planOrder([], [])).toMatchObject({ possible: true, steps: [], stages: [], apart: {} });
  const one = wood('a', [[0, 10, 0, 10, 0, 10]]);
  expect(planOrder([one], [])).toMatchObject({ possible: true, steps: [], apart: { a: [] } });
  const far = wood('b', [[50, 60, 0, 10, 0, 10]]);
  expect(planOrder([one, far], [])).toMatchObject({ possible: true, steps: [] });
  const on = wood('c', [[0, 10, 0, 10, 10, 20]]);
  expect(planOrder([one, on], [])!.steps.map((s) => s.words)).toEqual(['c onto the a, from above']);
});
test('faults of ours are thrown with what is wrong in them', () => {
  const one = wood('a', [[0, 10, 0, 10, 0, 10]]);
  expect(() => planOrder([one, one], [])).toThrow(/2 parts have only 1 paths/);
  expect(() => planOrder([one], [link('a', 'gone', X)])).toThrow(/'gone'/);
  expect(() => planOrder([{ ...one, weight: NaN }], [])).toThrow(/'a' has a number that is not finite/);
  expect(() => planOrder([{ ...one, triangles: one.triangles.slice(1) }], [])).toThrow(/not nine a triangle/);
});
