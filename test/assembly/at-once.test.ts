import { beforeAll, describe, expect, test } from 'vitest';
import { planOrder } from '../../src/assembly/order.ts';
import type { Order, PlanLink, PlanPart } from '../../src/assembly/part.ts';
import { basisAlong } from '../../src/assembly/shadow.ts';
import { type Vec3, scale, sub, unit } from '../../src/geom/vec3.ts';
import { type Body, kernel, loadKernel } from '../../src/solids/kernel.ts';
import { readBody } from '../../src/solids/read.ts';
import { offsetAt } from './replay.ts';
import { partOf } from './wood.ts';

beforeAll(() => loadKernel());
type Made = { parts: PlanPart[]; links: PlanLink[]; bodies: Map<string, Body>; drop: () => void };

/** Bodies as parts; the same wood stays in the kernel, to look for overlap without the planner. */
function made(bodies: Record<string, Body>, links: PlanLink[]): Made {
  const parts = Object.entries(bodies).map(([path, body]) => {
    const { positions, triangles } = readBody(body);
    const t = new Float64Array(3 * triangles.length);
    triangles.forEach((v, k) => t.set(positions.subarray(3 * v, 3 * v + 3), 3 * k));
    return partOf(path, t);
  });
  return { parts, links, bodies: new Map(Object.entries(bodies)), drop: () => Object.values(bodies).forEach((b) => b.delete()) };
}
/** Most wood that two parts share at some place of the slider, mm³. */
function worstOverlap(m: Made, order: Order, samples: number): number {
  let worst = 0;
  for (let n = 0; n <= samples * order.steps.length; n++) {
    const placed = m.parts.map((p) => m.bodies.get(p.path)!.translate(offsetAt(order, p.path, n / samples) as [number, number, number]));
    for (let i = 0; i < placed.length; i++)
      for (let j = 0; j < i; j++) {
        const both = placed[i]!.intersect(placed[j]!);
        worst = Math.max(worst, both.volume());
        both.delete();
      }
    placed.forEach((b) => b.delete());
  }
  return worst;
}
/** A rod of radius r from a to b. */
function rod(a: Vec3, b: Vec3, r: number): Body {
  const { Manifold } = kernel();
  const far = sub(b, a);
  const long = Math.hypot(...far);
  const [x, y, z] = basisAlong(unit(far));
  return Manifold.cylinder(long, r, r, 24).transform([...x, 0, ...y, 0, ...z, 0, ...a, 1] as never);
}
/** A frame of n rails round an n-gon, 60 wide, 20 thick, each tenoned 20 deep along its own length into the side of the next. */
function ring(n: number): Made {
  const { Manifold } = kernel();
  const [r, wide, deep] = [200, 60, 20];
  const turn = 360 / n;
  const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
  // A rail's own frame has its outer edge on y = -r; the next rail's edges are the lines sin·x - cos·y = r and r - wide.
  const atNext = (y: number, inside: number): number => (r - inside + cos * y) / sin;
  const slab = (y0: number, y1: number, ends: (y: number) => readonly [number, number], z0: number, z1: number): Body =>
    Manifold.hull(
      [y0, y1].flatMap((y) =>
        ends(y).flatMap((x): [number, number, number][] => [
          [x, y, z0],
          [x, y, z1],
        ]),
      ),
    );
  const body = slab(-r, -r + wide, (y) => [-atNext(y, 0), atNext(y, wide)], 0, 20);
  const tenon = slab(-r + 20, -r + 40, (y) => [atNext(y, wide) - 5, atNext(y, wide - deep)], 6, 14);
  const rail = body.add(tenon).subtract(tenon.rotate([0, 0, -turn]));
  const bodies = Object.fromEntries(Array.from({ length: n }, (_, k) => [`rail:${k + 1}`, rail.rotate([0, 0, turn * k])]));
  const links = Array.from({ length: n }, (_, k): PlanLink => {
    const a = (turn * k * Math.PI) / 180;
    return {
      joint: `end ${k}`,
      parts: [`rail:${k + 1}`, `rail:${((k + 1) % n) + 1}`],
      frees: [{ moves: [`rail:${k + 1}`], along: [-Math.cos(a), -Math.sin(a), 0] }],
    };
  });
  return made(bodies, links);
}
/** Three legs that lean outwards under a round seat, with a rung between each two: tenons 20 deep in the seat, 12 deep in the legs. */
function stool(): Made {
  const { Manifold } = kernel();
  const top = (k: number): Vec3 => [100 * Math.cos((2 * Math.PI * k) / 3), 100 * Math.sin((2 * Math.PI * k) / 3), 430];
  const foot = (k: number): Vec3 => [180 * Math.cos((2 * Math.PI * k) / 3), 180 * Math.sin((2 * Math.PI * k) / 3), 0];
  const on = (k: number, t: number): Vec3 => [0, 1, 2].map((i) => foot(k)[i]! + t * (top(k)[i]! - foot(k)[i]!)) as unknown as Vec3;
  const bodies: Record<string, Body> = {};
  const links: PlanLink[] = [];
  const seat = Manifold.cylinder(40, 160, 160, 48).translate([0, 0, 410]);
  const legs = [0, 1, 2].map((k) => rod(foot(k), top(k), 16));
  const rungs = [0, 1, 2].map((k) => {
    // At three heights, so that no two meet inside a leg.
    const [a, b] = [on(k, 0.35 + 0.06 * k), on((k + 1) % 3, 0.35 + 0.06 * k)];
    const d = unit(sub(b, a));
    return { body: rod(sub(a, scale(d, -4)), sub(b, scale(d, 4)), 8), d };
  });
  bodies['seat'] = Manifold.difference([seat, ...legs]);
  legs.forEach((leg, k) => {
    bodies[`leg:${k}`] = Manifold.difference([leg, ...rungs.map((r) => r.body)]);
    links.push({ joint: `seat ${k}`, parts: [`leg:${k}`, 'seat'], frees: [{ moves: [`leg:${k}`], along: unit(sub(foot(k), top(k))) }] });
  });
  rungs.forEach((r, k) => {
    bodies[`rung:${k}`] = r.body;
    links.push({ joint: `rung ${k} a`, parts: [`rung:${k}`, `leg:${k}`], frees: [{ moves: [`rung:${k}`], along: r.d }] });
    links.push({
      joint: `rung ${k} b`,
      parts: [`rung:${k}`, `leg:${(k + 1) % 3}`],
      frees: [{ moves: [`rung:${k}`], along: scale(r.d, -1) }],
    });
  });
  return made(bodies, links);
}

describe.each([3, 4, 5, 6])('a ring of %i rails, each tenoned into the next', (n) => {
  // Parity after Wang, Song and Pauly, DESIA, ACM Transactions on Graphics 37(6) 2018, and a prototype: even rings part in halves, odd ones only all at once.
  test(n % 2 === 0 ? 'parts in two halves' : 'closes only all at once', () => {
    const m = ring(n);
    const order = planOrder(m.parts, m.links, { gap: 20 })!;
    expect(order.possible, order.why).toBe(true);
    const atOnce = order.steps.filter((s) => s.words.includes('all at once'));
    expect(atOnce.length).toBe(n % 2);
    if (n % 2 === 0) expect(order.steps.at(-1)!.move.length).toBe(n / 2);
    else expect(order.steps).toHaveLength(1);
    expect(worstOverlap(m, order, 8)).toBeLessThan(1);
    m.drop();
  });
});
test('a stool with leaning legs and rungs between them closes at once, and shares no wood on the way', () => {
  const m = stool();
  const order = planOrder(m.parts, m.links, { gap: 20 })!;
  expect(order.possible, order.why).toBe(true);
  expect(order.steps).toHaveLength(1);
  for (const k of [0, 1, 2])
    expect(Math.hypot(...offsetAt(order, `leg:${k}`, 0)), 'each leg goes as far').toBeCloseTo(
      Math.hypot(...offsetAt(order, 'leg:0', 0)),
      1,
    );
  expect(order.steps[0]!.words).toMatch(/with the seat, all at once/);
  expect(worstOverlap(m, order, 8)).toBeLessThan(1);
  m.drop();
});
