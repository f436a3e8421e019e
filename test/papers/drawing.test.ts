/** Drawings of boxes that anyone can draw by hand: which lines are seen, which faces, in what order. */
import { describe, expect, test } from 'vitest';
import { svg } from '../../src/exports/svg.ts';
import { type Frame, HOME, mirrored, moved } from '../../src/geom/frame.ts';
import { type Vec2, type Vec3, add, dot, scale as scaled, sub } from '../../src/geom/vec3.ts';
import { drawing } from '../../src/papers/drawing.ts';
import { eyeFor } from '../../src/papers/eye.ts';
import type { Drawing, DrawnMesh, DrawnPart } from '../../src/papers/record.ts';
import { axesOf } from '../../src/papers/space.ts';
import { straightened } from '../../src/papers/sheet.ts';
import { goldenFault } from '../support/golden.ts';
import { law } from '../support/law.ts';
import fc from 'fast-check';

const EYE = { round: Math.PI / 6, up: Math.PI / 7 };
const STEPS = 200;
const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7];
const SIDES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;
/** Corner i of a box: bit 0 right, bit 1 back, bit 2 top; counter-clockwise from outside. */
const QUADS = [
  [0, 4, 6, 2],
  [1, 3, 7, 5],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 2, 3, 1],
  [4, 5, 7, 6],
] as const;
function box([w, d, h]: Vec3): DrawnMesh {
  const positions = QUADS.flatMap((q) => q.flatMap((i) => [i & 1 ? w : 0, i & 2 ? d : 0, i & 4 ? h : 0]));
  return {
    positions: new Float32Array(positions),
    indices: new Uint32Array(QUADS.flatMap((_, f) => [0, 1, 2, 0, 2, 3].map((i) => 4 * f + i))),
    triangleFace: new Uint16Array(QUADS.flatMap((_, f) => [f, f])),
    faces: SIDES.map((s) => `stock.${s}`),
  };
}
type Board = { readonly size: Vec3; readonly frame?: Frame; readonly letter?: string };
function draw(boards: readonly Board[], apart: ReadonlyMap<string, Vec3> = new Map(), room: Vec2 = [400, 300]): Drawing {
  const parts = boards.map(({ size, frame = HOME, letter = '' }, i): DrawnPart => ({
    path: `p${i}`,
    letter,
    label: `part ${i}`,
    wood: 'oak',
    kind: 'wood',
    key: `k${i}`,
    frame,
    stock: { min: [0, 0, 0], max: size },
    grain: 'x',
  }));
  const meshes = new Map(boards.map((b, i) => [`k${i}`, box(b.size)]));
  return drawing({ parts, meshes, apart }, EYE, room);
}
const at = (x: number, y: number, z: number): Frame => moved(HOME, [x, y, z]);
const inked = (d: Drawing): number =>
  d.lines
    .filter((l) => l.kind !== 'ring')
    .reduce((sum, l) => sum + l.points.slice(1).reduce((n, p, i) => n + Math.hypot(p[0] - l.points[i]![0], p[1] - l.points[i]![1]), 0), 0);

test('of a box three faces and nine edges are seen: six round it, three within', () => {
  const d = draw([{ size: [100, 60, 30] }]);
  expect(d.fills.length).toBe(3);
  // The six edges round it join up into one run that ends where it began; the three within meet in the near corner.
  const outline = d.lines.filter((l) => l.kind === 'outline');
  expect(outline.length).toBe(1);
  expect(outline[0]?.points.length).toBe(7);
  expect(outline[0]?.points[0]).toEqual(outline[0]?.points.at(-1));
  expect(d.lines.filter((l) => l.kind === 'edge').reduce((n, l) => n + l.points.length - 1, 0)).toBe(3);
  expect(Math.max(d.width / 400, d.height / 300)).toBe(1);
});
test('what stands behind is hidden, wholly or in part, and painted first', () => {
  const near: Board = { size: [100, 20, 100] };
  const alone = draw([near]);
  const wholly = draw([near, { size: [20, 10, 20], frame: at(30, 40, 20) }]);
  expect(wholly.lines).toEqual(alone.lines);
  expect(wholly.fills.map((f) => f.part)).toEqual([0, 0, 0]);
  const partly = draw([near, { size: [200, 10, 20], frame: at(-50, 40, 40) }]);
  const parts = partly.fills.map((f) => f.part);
  expect(parts).toContain(1);
  expect(parts.lastIndexOf(0)).toBeGreaterThan(parts.indexOf(1));
});
test('three sticks, each before one and behind the other: one is parted, and every place is painted as it is', () => {
  // Along x, y and z, past one corner of a cube, so that each crosses over the next.
  const sticks = [
    { size: [120, 20, 20] as Vec3, frame: at(-20, -20, 0) },
    { size: [20, 120, 20] as Vec3, frame: at(0, -20, 20) },
    { size: [20, 20, 120] as Vec3, frame: at(20, 0, -20) },
  ];
  const d = draw(sticks);
  expect(misplaced(sticks, d)).toEqual([]);
  expect(d.fills.length).toBeGreaterThan(9);
});
test('a mirrored part is drawn from outside, too', () => {
  const plain = draw([{ size: [100, 60, 30], frame: at(-100, 0, 0) }]);
  const turned = draw([{ size: [100, 60, 30], frame: mirrored('x', 0) }]);
  // The same corners, from whichever of them a face is begun.
  const corners = (d: Drawing): string[] => d.fills.map((f) => f.loops.flat().map(String).sort().join(' ')).sort();
  expect(corners(turned)).toEqual(corners(plain));
  expect(inked(turned)).toBeCloseTo(inked(plain), 6);
});
test('drawn apart nothing hides what it hid together, and letters stand where there is room', () => {
  const boards: Board[] = [
    { size: [100, 100, 20], letter: 'A' },
    { size: [100, 100, 20], frame: at(0, 0, 20), letter: 'B' },
  ];
  const apart = draw(boards, new Map([['p1', [0, 0, 150]]]));
  expect(apart.fills.length).toBe(6);
  expect(apart.discs.map((d) => d.letter)).toEqual(['A', 'B']);
  expect(draw(boards.map((b) => ({ ...b, letter: 'A' }))).discs).toEqual([]);
  for (const {
    at: [x, y],
  } of apart.discs)
    expect(x > 10 && y > 10 && x < apart.width - 10 && y < apart.height - 10).toBe(true);
});
test('a joint that shows only from the left is looked at from the left', () => {
  const parts: DrawnPart[] = [
    {
      path: 'a',
      letter: '',
      label: 'a',
      wood: 'oak',
      kind: 'wood',
      key: 'a',
      frame: HOME,
      stock: { min: [0, 0, 0], max: [50, 50, 50] },
      grain: 'x',
    },
  ];
  const cut = (face: (typeof SIDES)[number]): ReadonlyMap<string, DrawnMesh> =>
    new Map([['a', { ...box([50, 50, 50]), faces: SIDES.map((s) => (s === face ? 'mortise.bottom' : `stock.${s}`)) }]]);
  const from = (face: (typeof SIDES)[number]): number[] =>
    Object.values(eyeFor({ parts, meshes: cut(face), apart: new Map() })).map((n) => Math.round((n * 180) / Math.PI));
  expect(from('right')).toEqual([30, 25]);
  expect(from('left')).toEqual([-30, 25]);
  expect(from('back')).toEqual([150, 25]);
  expect(from('bottom')).toEqual([30, -25]);
});
const size = fc.integer({ min: 20, max: 200 });
const place = fc.integer({ min: -150, max: 150 });
const long = fc.tuple(fc.constantFrom(0, 1, 2), place, place, place);
law(
  'sticks that pass each other anywhere are painted as they lie',
  fc.array(long, { minLength: 2, maxLength: 5 }),
  (all) => {
    const sticks: { size: Vec3; frame: Frame }[] = [];
    for (const [k, x, y, z] of all) {
      const size: Vec3 = [k === 0 ? 300 : 20, k === 1 ? 300 : 20, k === 2 ? 300 : 20];
      const apart = sticks.every(({ size: s, frame: { o } }) =>
        [0, 1, 2].some((i) => {
          const [a, b] = [[x, y, z][i]!, o[i as 0]];
          return a >= b + s[i as 0] || b >= a + size[i as 0];
        }),
      );
      if (apart) sticks.push({ size, frame: at(x, y, z) });
    }
    expect(misplaced(sticks, draw(sticks))).toEqual([]);
  },
  { runs: 60 },
);
law(
  'boxes anywhere: tidy numbers on the paper, the same each time, and as much ink as rays to the eye find open',
  fc.array(fc.tuple(size, size, size, place, place), { minLength: 1, maxLength: 4 }),
  (all) => {
    const boards = all.map(([w, d, h, x, y], i) => ({ size: [w, d, h] as Vec3, frame: at(x, y, 230 * i) }));
    const d = draw(boards);
    for (const [x, y] of [...d.lines.flatMap((l) => l.points), ...d.fills.flatMap((f) => f.loops.flat())]) {
      expect([x, y]).toEqual([Math.round(x * 10) / 10, Math.round(y * 10) / 10]);
      expect(x >= 0 && y >= 0 && x <= d.width && y <= d.height).toBe(true);
    }
    expect(draw(boards)).toEqual(d);
    expect(misplaced(boards, d)).toEqual([]);
    const open = openLength(boards);
    expect(Math.abs(inked(d) / open - 1), `${inked(d)} drawn, ${open} open`).toBeLessThan(0.03);
  },
  { runs: 40 },
);
type Placed = readonly { readonly size: Vec3; readonly frame: Frame }[];
/** Oracles of their own: rays against boxes, nothing of the drawing's way of working. */
function raysAt(boards: Placed) {
  const axes = axesOf(EYE);
  const boxes = boards.map((b) => ({ min: b.frame.o, max: add(b.frame.o, b.size) }));
  const corners = boxes.map((b) =>
    CORNERS.map((i): Vec3 => [i & 1 ? b.max[0] : b.min[0], i & 2 ? b.max[1] : b.min[1], i & 4 ? b.max[2] : b.min[2]]),
  );
  const ends = (v: Vec3): readonly [number, number] => {
    const all = corners.flat().map((c) => dot(c, v));
    return [Math.min(...all), Math.max(...all)];
  };
  const [[left, end], [low, high]] = [ends(axes.right), ends(axes.up)];
  const scale = Math.min(392 / (end - left), 292 / (high - low));
  /** Where a ray from here to the eye is inside a box, as lengths along it; null where it misses. */
  const inside = (p: Vec3, box: number): readonly [number, number] | null => {
    let [from, to] = [-Infinity, Infinity];
    for (const k of [0, 1, 2] as const) {
      const [a, b] = [(boxes[box]!.min[k] - p[k]) / axes.toEye[k], (boxes[box]!.max[k] - p[k]) / axes.toEye[k]];
      from = Math.max(from, Math.min(a, b));
      to = Math.min(to, Math.max(a, b));
    }
    return to - from > 1e-3 ? [from, to] : null;
  };
  /** The place in the world that lies under a place on the paper, level with the eye's own zero. */
  const under = ([x, y]: Vec2): Vec3 => add(scaled(axes.right, left + (x - 4) / scale), scaled(axes.up, high - (y - 4) / scale));
  return { ...axes, corners, scale, inside, under, boxes };
}
/** Every edge in small steps, each asked whether a box lies between it and the eye. Units of the paper. */
function openLength(boards: Placed): number {
  const { right, up, corners, scale, inside, boxes } = raysAt(boards);
  const isHidden = (p: Vec3): boolean => boxes.some((_, i) => (inside(p, i)?.[1] ?? -1) > 1e-3);
  let sum = 0;
  for (const own of corners)
    for (const [i, a] of own.entries())
      for (const b of own.slice(i + 1)) {
        const way = sub(b, a);
        if (way.filter((n) => n !== 0).length !== 1) continue;
        const long = Math.hypot(dot(way, right), dot(way, up)) * scale;
        for (let s = 0; s < STEPS; s++) if (!isHidden(add(a, scaled(way, (s + 0.5) / STEPS)))) sum += long / STEPS;
      }
  return sum;
}
/** Places on the paper, away from all lines, where the paint on top is not of the box that a ray from the eye meets first. */
function misplaced(boards: Placed, d: Drawing): string[] {
  const { inside, under, boxes } = raysAt(boards);
  const out: string[] = [];
  for (let x = 7; x < d.width; x += 17)
    for (let y = 7; y < d.height; y += 17) {
      if (d.lines.some((l) => l.points.slice(1).some((q, i) => offLine(l.points[i]!, q, [x, y]) < 1.5))) continue;
      const first = boxes.map((_, i) => inside(under([x, y]), i)?.[1] ?? -Infinity);
      const met = Math.max(...first) === -Infinity ? null : first.indexOf(Math.max(...first));
      const painted = d.fills.findLast((f) => f.loops.filter((loop) => isIn(loop, [x, y])).length % 2 === 1)?.part ?? null;
      if (met !== painted) out.push(`at ${x}, ${y} box ${painted} is painted and ${met} is there`);
    }
  return out;
}
const isIn = (loop: readonly Vec2[], [x, y]: Vec2): boolean =>
  loop.reduce((odd, [ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length]!;
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd;
  }, false);
function offLine(a: Vec2, b: Vec2, p: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}
describe('runs and texts', () => {
  test('corners that hardly stand off a line go, all others stay', () => {
    expect(
      straightened([
        [0, 0],
        [5, 0.1],
        [10, 0],
      ]),
    ).toEqual([
      [0, 0],
      [10, 0],
    ]);
    expect(
      straightened([
        [0, 0],
        [5, 0.5],
        [10, 0],
      ]),
    ).toEqual([
      [0, 0],
      [5, 0.5],
      [10, 0],
    ]);
    expect(
      straightened([
        [0, 0],
        [10, 0],
        [4, 0],
      ]),
    ).toEqual([
      [0, 0],
      [10, 0],
      [4, 0],
    ]);
  });
  test('a name cannot become markup', () => {
    const d = draw([
      { size: [10, 10, 10], letter: 'A' },
      { size: [10, 10, 10], frame: at(30, 0, 0), letter: '<' },
    ]);
    const text = svg({ ...d, discs: d.discs.map((x) => ({ ...x, label: '</title><script>' })) }, '<b>&"');
    expect(text).toContain('<title>&lt;b&gt;&amp;&quot;</title>');
    expect(text).not.toMatch(/<script|<b>|<\/title><s/);
  });
  test('a golden that is not there, or other than it was, fails and says what to do', () => {
    expect(goldenFault('a.svg', null, '<svg/>')).toMatch(/a\.svg is not there\. .*RENEW=1/);
    expect(goldenFault('a.svg', '<svg> </svg>', '<svg/>')).toMatch(/a\.svg is drawn otherwise now.*RENEW=1/);
    expect(goldenFault('a.svg', '<svg/>', '<svg/>')).toBeNull();
  });
});
