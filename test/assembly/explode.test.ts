import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gapFor } from '../../src/assembly/explode.ts';
import { planOrder } from '../../src/assembly/order.ts';
import type { Order, PlanPart } from '../../src/assembly/part.ts';
import type { OrderView } from '../../src/piece/view.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { law } from '../support/law.ts';
import { slatted, tower } from './large.ts';
import { pieces } from './pieces.ts';
import { expectClear, offsetAt } from './replay.ts';
import { type Block, type Piece, X, link, wood } from './wood.ts';

const all: Record<string, () => Piece> = { ...pieces, slatted: () => slatted(8), tower: () => tower(2) };
const plan = (p: Piece, gap?: number): Order => planOrder(p.parts, p.links, gap === undefined ? {} : { gap })!;

describe.each(Object.entries(all))('%s', (_, make) => {
  const piece = make();
  const order = plan(piece, 30);
  test('nothing shares wood at full spread, on the way, or at home', () => expectClear(piece.parts, order));
  test('every part but what stays still has a way home, and each step moves somebody', () => {
    if (!order.possible) return expect(order.steps).toEqual([]);
    const moved = new Set(order.steps.flatMap((s) => s.move));
    expect(moved.size).toBeGreaterThan(0);
    order.steps.forEach((s, k) => {
      expect(Math.hypot(...s.along)).toBeCloseTo(1, 5);
      expect(s.distance).toBeGreaterThan(0);
      for (const path of s.move) {
        const own = order.apart[path]!.find((a) => a.step === k)!;
        expect([0, 1, 2].map((i) => own.offset[i]! + s.along[i]! * s.distance).every((v) => Math.abs(v) < 1e-3)).toBe(true);
      }
    });
  });
  test('the stages hold every step once', () =>
    expect(order.stages.flatMap((s) => s.steps).sort((a, b) => a - b)).toEqual(order.steps.map((_, k) => k)));
  law(
    'the order in which parts and joints come changes nothing',
    fc.integer(),
    (n) => {
      const turned = <T>(list: readonly T[]): T[] =>
        list
          .map((v, i) => [v, Math.sin(n * (i + 1))] as const)
          .toSorted((a, b) => a[1] - b[1])
          .map(([v]) => v);
      expect(planOrder(turned(piece.parts), turned(piece.links), { gap: 30 })).toEqual(order);
    },
    { runs: 3 },
  );
});

test('the answer is what the screen takes', () => {
  const view: OrderView = plan(pieces.table());
  expect(view.steps.length).toBeGreaterThan(0);
});
test('a tenon is drawn out by its length and the gap', () => {
  for (const long of [12, 25, 48]) {
    const tenon: Block = [60 - long, 60, 12, 20, 30, 70];
    const parts = [wood('leg', [[0, 60, 0, 32, 0, 300]], [tenon]), wood('rail', [[60, 260, 4, 28, 20, 80], tenon])];
    const order = planOrder(parts, [link('rail', 'leg', X)], { gap: 20 })!;
    expect(order.steps).toHaveLength(1);
    expect(order.steps[0]).toMatchObject({
      move: ['rail'],
      along: [-1, 0, 0],
      distance: long + 20,
      words: 'rail into the leg, from the right',
    });
  }
});

const mirror = (path: string, from: string, to: string): string =>
  path
    .split(':')
    .map((w) => (w === from ? to : w === to ? from : w))
    .join(':');
test.each([
  ['table', 'left', 'right', 0],
  ['table', 'front', 'back', 1],
  ['frameAndPanel', 'left', 'right', 0],
  ['frameAndPanel', 'bottom', 'top', 1],
  ['dovetailedBox', 'left', 'right', 0],
  ['dovetailedBox', 'front', 'back', 1],
  ['slatted', 'front', 'back', 1],
] as const)('%s: %s and %s are drawn apart alike', (name, a, b, axis) => {
  const piece = all[name]!();
  const order = plan(piece, 30);
  let pairs = 0;
  for (const p of piece.parts) {
    const other = mirror(p.path, a, b);
    if (other === p.path || !(other in order.apart)) continue;
    pairs++;
    const here = offsetAt(order, p.path, 0);
    const there = [...offsetAt(order, other, 0)];
    there[axis] = -there[axis]!;
    for (const i of [0, 1, 2]) expect(there[i]!, `${p.path} ${i}`).toBeCloseTo(here[i]!, 6);
  }
  expect(pairs).toBeGreaterThan(0);
});
test('the gap suits the size of the piece: 6 % of its diagonal, from 20 to 80 mm', () => {
  const of = (x: number): PlanPart => wood('a', [[0, x, 0, x, 0, x]]);
  expect([gapFor([of(10)]), gapFor([of(500)]), gapFor([of(2000)]), gapFor([])]).toEqual([
    20,
    expect.closeTo(0.06 * 500 * Math.sqrt(3), 9),
    80,
    20,
  ]);
});

/** Lumps of cells, taken in two again and again: each cut runs along a plane, with some cells of one side reaching one deep into the other. */
type Cut = { readonly axis: 0 | 1 | 2; readonly at: number; readonly tongues: number };
function lumps(cuts: readonly Cut[]): Piece {
  const size = [5, 4, 4] as const;
  const cells: Vec3[] = [];
  for (let x = 0; x < size[0]; x++) for (let y = 0; y < size[1]; y++) for (let z = 0; z < size[2]; z++) cells.push([x, y, z]);
  let sets: Vec3[][] = [cells];
  const links: Piece['links'][number][] = [];
  for (const c of cuts) {
    const biggest = sets.reduce((a, b) => (b.length > a.length ? b : a));
    const low = Math.min(...biggest.map((v) => v[c.axis]));
    const high = Math.max(...biggest.map((v) => v[c.axis]));
    const at = low + 1 + (c.at % Math.max(1, high - low));
    const over = (v: Vec3): boolean =>
      v[c.axis] >= at || (v[c.axis] === at - 1 && ((c.tongues >> ((v[0] + 2 * v[1] + 3 * v[2]) % 12)) & 1) === 1);
    const [far, near] = [biggest.filter(over), biggest.filter((v) => !over(v))];
    if (far.length > 0 && near.length > 0) sets = [...sets.filter((s) => s !== biggest), near, far];
  }
  const name = (n: number): string => `lump ${n}`;
  const parts = sets.map((s, n) =>
    wood(
      name(n),
      s.map(([x, y, z]): Block => [20 * x, 20 * x + 20, 20 * y, 20 * y + 20, 20 * z, 20 * z + 20]),
    ),
  );
  sets.forEach((a, n) =>
    sets.slice(0, n).forEach((b, m) => {
      if (a.some((p) => b.some((q) => Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) + Math.abs(p[2] - q[2]) === 1)))
        links.push({ joint: `${n}-${m}`, parts: [name(n), name(m)], frees: [] });
    }),
  );
  return { parts, links };
}
const cut: fc.Arbitrary<Cut> = fc.record({ axis: fc.constantFrom(0, 1, 2), at: fc.nat(4), tongues: fc.nat(4095) });
law(
  'what was cut apart step by step goes together again, clear all the way',
  fc.array(cut, { minLength: 1, maxLength: 7 }),
  (cuts) => {
    const piece = lumps(cuts);
    const order = plan(piece);
    expect(order.possible, order.why).toBe(true);
    expectClear(piece.parts, order, 3);
  },
  { runs: 200, timeout: 180_000 },
);
