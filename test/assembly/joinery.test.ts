import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Bits, bitsOf, countOf, has, itemsOf, keyOf, minus } from '../../src/assembly/bits.ts';
import { type Graph, makeGraph, pushedAlong } from '../../src/assembly/graph.ts';
import { planOrder } from '../../src/assembly/order.ts';
import { makeScene } from '../../src/assembly/scene.ts';
import { pieces } from './pieces.ts';
import { expectClear } from './replay.ts';
import { type Block, type Piece, link, wood } from './wood.ts';

type Case = { oneAtATime: boolean; possible: boolean; first: string[] | null; before: [string, string][]; apart: Record<string, number> };
const { joinery } = JSON.parse(readFileSync(new URL('../fixtures/assembly-order.json', import.meta.url), 'utf8')) as {
  joinery: Record<string, Case>;
};
const AXIS = ['x', '-x', 'y', '-y', 'z', '-z'];

const graphOf = (p: Piece): Graph => {
  const s = makeScene(p.parts, p.links);
  return makeGraph(
    s,
    s.parts.map((_, i) => [i]),
  );
};
/** All sets that some part pushes along out of the whole, along the axes. */
function firstSets(g: Graph): string[] {
  const name = (b: Bits): string =>
    itemsOf(b)
      .map((i) => g.scene.parts[i]!.path)
      .join('+');
  const out = new Set<string>();
  for (const i of itemsOf(g.all))
    for (let d = 0; d < 6; d++) {
      const set = pushedAlong(g, i, d, g.all);
      if (set) out.add(`${name(set)} @${AXIS[d]}`);
    }
  return [...out].sort();
}
/** Can the parts be taken off one by one along the axes? Counted out, without the planner. */
function oneByOne(g: Graph, within: Bits, seen = new Set<string>()): boolean {
  if (countOf(within) < 2) return true;
  if (seen.has(keyOf(within))) return false;
  seen.add(keyOf(within));
  return itemsOf(within).some((i) =>
    [0, 1, 2, 3, 4, 5].some((d) => {
      const set = pushedAlong(g, i, d, within);
      return set !== null && countOf(set) === 1 && oneByOne(g, minus(within, set), seen);
    }),
  );
}

test('the table and the pieces are the same list', () => expect(Object.keys(joinery).sort()).toEqual(Object.keys(pieces).sort()));

describe.each(Object.entries(joinery))('%s', (name, known) => {
  const piece = pieces[name as keyof typeof pieces]();
  const order = planOrder(piece.parts, piece.links, { gap: 30 })!;

  test('what can leave first', () => {
    if (known.first) expect(firstSets(graphOf(piece))).toEqual([...known.first].sort());
    else expect(firstSets(graphOf(piece)).length).toBeGreaterThan(0);
  });
  test('one part at a time', () => {
    const g = graphOf(piece);
    expect(oneByOne(g, g.all)).toBe(known.oneAtATime);
  });
  test('can be put together, or not', () => expect(order.possible).toBe(known.possible));
  test('what must come before what', () => {
    const last = (path: string): number => order.steps.findLastIndex((s) => s.move.includes(path));
    for (const [early, late] of known.before) expect(last(early), `${early} before ${late}`).toBeLessThan(last(late));
  });
  test('how far apart it is drawn', () => {
    for (const [path, far] of Object.entries(known.apart)) {
      const step = order.steps.find((s) => s.move.includes(path));
      expect(step?.distance, path).toBeCloseTo(far, 6);
    }
  });
});

test('a pinwheel comes together from two halves of two', () => {
  const p = pieces.pinwheel();
  const order = planOrder(p.parts, p.links)!;
  expect(order.steps.map((s) => s.move.length)).toEqual([1, 1, 2]);
});
test('a panel in a one-piece frame: both are named, and each stops the other', () => {
  const p = pieces.panelInOneFrame();
  const order = planOrder(p.parts, p.links)!;
  expect(order.stuck).toEqual(['frame', 'panel']);
  expect(order.why).toMatch(/the frame cannot go to the right: the panel stops it; the panel cannot go to the right: the frame stops it/);
  expect(order.steps).toEqual([]);
});
test('the stuck pair is named alone when more stands round it, and the rest still has its steps', () => {
  const p = pieces.panelInOneFrame();
  const t = pieces.table();
  const order = planOrder([...p.parts, ...t.parts.map((q) => ({ ...q }))], [...p.links, ...t.links])!;
  expect(order.possible).toBe(false);
  expect(order.stuck).toEqual(['frame', 'panel']);
  expect(order.steps.some((s) => s.move.includes('top'))).toBe(true);
});
test('a stopped drawer of parts is built up for itself, then goes in as one', () => {
  const box = pieces.dovetailedBox();
  const parts = [...box.parts.map((q) => ({ ...q, group: 'drawer' })), ...pieces.table().parts.filter((q) => q.path === 'top')];
  const order = planOrder(parts, [
    ...box.links,
    { joint: 'runs', parts: ['left', 'top'], frees: [{ moves: ['left'], along: [0, -1, 0] }], loose: true },
  ])!;
  expect(order.stages.map((s) => s.name)).toContain('drawer');
  const last = order.steps.at(-1)!;
  expect(last.move.length === 5 || last.move[0] === 'top').toBe(true);
});
test('has() and bitsOf() agree beyond one word', () => {
  const b = bitsOf(70, [0, 31, 32, 69]);
  expect(itemsOf(b)).toEqual([0, 31, 32, 69]);
  expect([has(b, 31), has(b, 33)]).toEqual([true, false]);
});

/** A frame of two rails between two sides, a top, and a button under it: tongue in the far rail's slot, the near rail in its way. */
function buttoned(): Piece {
  const slot: Block = [90, 110, 280, 290, 60, 68];
  const parts = [
    wood('rail:front', [[0, 200, 0, 20, 0, 80]]),
    wood('rail:back', [[0, 200, 280, 300, 0, 80]], [slot]),
    wood('top', [[-20, 220, -20, 320, 80, 100]]),
    wood('fix/1/button', [slot, [90, 110, 250, 280, 60, 80]], [], { kind: 'extra', label: 'button' }),
  ];
  const links: Piece['links'] = [
    { joint: 'fix', parts: ['top', 'rail:back', 'fix/1/button'], frees: [{ moves: ['fix/1/button'], along: [0, -1, 0] }], loose: true },
    link('rail:front', 'top', [0, 0, -1]),
  ];
  return { parts, links };
}
test('a button slides out of its slot though the other rail stands ahead, and goes in after the top', () => {
  // It slides along the top by its own 30 mm, then the gap.
  const p = buttoned();
  const order = planOrder(p.parts, p.links, { gap: 30 })!;
  expect(order.possible).toBe(true);
  expect(order.steps.at(-1)).toMatchObject({ move: ['fix/1/button'], along: [0, 1, 0], distance: 60 });
  expectClear(p.parts, order);
});
test('a part that slides towards another is drawn no further than that lets it', () => {
  const p = buttoned();
  const order = planOrder(p.parts, p.links, { gap: 300 })!;
  const far = order.steps.find((s) => s.move.includes('fix/1/button'))!.distance;
  expect(far).toBeGreaterThan(10);
  expect(far).toBeLessThan(230);
  expectClear(p.parts, order);
});
test('a drawer goes in last of all, whatever else could leave first', () => {
  const parts = [
    wood('case:left', [[0, 20, 0, 300, 0, 100]]),
    wood('case:right', [[220, 240, 0, 300, 0, 100]]),
    wood('case:top', [[0, 240, 0, 300, 100, 120]]),
    wood('case:bottom', [[0, 240, 0, 300, -20, 0]]),
    wood('case:back', [[0, 240, 300, 310, -20, 120]]),
    wood('drawer:front', [[20, 220, 0, 20, 0, 100]], [], { group: 'drawer' }),
    wood('drawer:body', [[20, 220, 20, 290, 0, 60]], [], { group: 'drawer' }),
  ];
  const links = [
    ...['left', 'right'].flatMap((s) => [link('case:top', `case:${s}`, [0, 0, 1]), link('case:bottom', `case:${s}`, [0, 0, -1])]),
    link('case:back', 'case:top', [0, 1, 0]),
    link('drawer:front', 'drawer:body', [0, -1, 0]),
    { joint: 'runs', parts: ['drawer:body', 'case:bottom'], frees: [{ moves: ['drawer:body'], along: [0, -1, 0] as const }], loose: true },
  ];
  const order = planOrder(parts, links)!;
  expect(order.possible).toBe(true);
  expect(order.steps.at(-1)).toMatchObject({ move: ['drawer:body', 'drawer:front'], along: [0, 1, 0] });
  expectClear(parts, order);
});
