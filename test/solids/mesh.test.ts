import { beforeAll, expect, test } from 'vitest';
import { type Frame, HOME } from '../../src/geom/frame.ts';
import { circle, polygon, rectangle, slot } from '../../src/geom/loop.ts';
import { type Vec3, cross, dot, length, sub } from '../../src/geom/vec3.ts';
import type { PartRecord } from '../../src/model/record.ts';
import type { MeshView } from '../../src/piece/view.ts';
import { facetsOf, placedFacets } from '../../src/solids/facets.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { type PartMesh, meshOf } from '../../src/solids/mesh.ts';
import { sectionOf } from '../../src/solids/section.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { polygonArea } from '../../src/geom/loop.ts';
import { block, board, bore, cutOf, feature, prism } from '../support/records.ts';

beforeAll(() => loadKernel());

const meshed = (rec: PartRecord): PartMesh => withSolids(() => meshOf(cutOf(rec)));
const at3 = (a: ArrayLike<number>, i: number): Vec3 => [a[3 * i] ?? Number.NaN, a[3 * i + 1] ?? Number.NaN, a[3 * i + 2] ?? Number.NaN];
/** For each triangle: its face's name, its corners and its corners' normals. */
function triangles(m: PartMesh): { face: string; p: [Vec3, Vec3, Vec3]; n: [Vec3, Vec3, Vec3] }[] {
  return Array.from(m.triangleFace, (f, t) => {
    const [a, b, c] = [0, 1, 2].map((k) => m.indices[3 * t + k] ?? 0) as [number, number, number];
    return {
      face: m.faces[f] ?? '?',
      p: [at3(m.positions, a), at3(m.positions, b), at3(m.positions, c)],
      n: [at3(m.normals, a), at3(m.normals, b), at3(m.normals, c)],
    };
  });
}
function areas(m: PartMesh): Record<string, number> {
  const out: Record<string, number> = {};
  for (const { face, p } of triangles(m)) out[face] = (out[face] ?? 0) + length(cross(sub(p[1], p[0]), sub(p[2], p[0]))) / 2;
  return out;
}

test('a mesh is a mesh of the views', () => {
  const view: MeshView = meshed(board(100, 40, 20));
  expect(view.key).toBe('test');
  expect([view.volume, view.area]).toEqual([80_000, 2 * (4000 + 2000 + 800)]);
  [50, 20, 10].forEach((c, i) => expect(view.centre[i]).toBeCloseTo(c, 9));
});

test('bare stock: six faces by their compass names, each of its own area, normals straight out, twelve lines', () => {
  const m = meshed(board(100, 40, 20));
  const byFace = areas(m);
  expect(byFace).toEqual({
    'stock.left': 800,
    'stock.right': 800,
    'stock.front': 2000,
    'stock.back': 2000,
    'stock.bottom': 4000,
    'stock.top': 4000,
  });
  const out: Record<string, Vec3> = {
    'stock.left': [-1, 0, 0],
    'stock.right': [1, 0, 0],
    'stock.front': [0, -1, 0],
    'stock.back': [0, 1, 0],
    'stock.bottom': [0, 0, -1],
    'stock.top': [0, 0, 1],
  };
  for (const { face, n } of triangles(m)) for (const one of n) expect(one).toEqual(out[face]);
  expect(m.positions.length / 3).toBe(24);
  expect(m.edges.length / 6).toBe(12);
});

test('faces of a feature bear the names it gives them, others their place, each with the area it has', () => {
  const mortise = feature(
    'mortise',
    'remove',
    prism(rectangle(0, 0, 60, 8), 0, 25),
    { o: [20, 16, 20], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] },
    { 'cheek front': { of: 'side', corner: 0 }, 'cheek back': { of: 'side', corner: 2 }, bottom: { of: 'to' } },
  );
  const byFace = areas(meshed(board(100, 40, 30, [{ ...mortise, at: { ...mortise.at, o: [20, 16, 30] } }])));
  expect(byFace['mortise.cheek front']).toBeCloseTo(60 * 25, 6);
  expect(byFace['mortise.cheek back']).toBeCloseTo(60 * 25, 6);
  expect(byFace['mortise.bottom']).toBeCloseTo(480, 6);
  expect(byFace['mortise.side1']).toBeCloseTo(200, 6);
  expect(byFace['mortise.side3']).toBeCloseTo(200, 6);
  expect(byFace['stock.top']).toBeCloseTo(4000 - 480, 6);
  expect(Object.keys(byFace).some((n) => n === 'mortise.from')).toBe(false);
});

test('the walls of a hole in a mirrored frame face into the hole', () => {
  const left: Frame = { o: [50, 20, 0], x: [-1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  const m = meshed(board(100, 40, 20, [feature('key', 'remove', prism(polygon([0, 0], [20, 0], [5, 10]), -1, 21), left)]));
  let seen = 0;
  for (const { face, p, n } of triangles(m)) {
    const flat = cross(sub(p[1], p[0]), sub(p[2], p[0]));
    for (const one of n) expect(dot(one, flat)).toBeGreaterThan(0.999 * length(flat));
    if (face.startsWith('key.')) seen++;
  }
  expect(seen).toBe(6);
});

test('round walls are smooth: each corner has the normal of the true round, and none of the chords is a line', () => {
  const m = meshed(board(100, 40, 20, [bore('peg hole', 'remove', 6, 0, 20, { ...HOME, o: [50, 20, 0] })]));
  let seen = 0;
  for (const { face, p, n } of triangles(m)) {
    if (!face.startsWith('peg hole.')) continue;
    p.forEach((c, k) => {
      seen++;
      expect(n[k]?.[0]).toBeCloseTo((50 - c[0]) / 6, 5);
      expect(n[k]?.[1]).toBeCloseTo((20 - c[1]) / 6, 5);
    });
  }
  expect(seen).toBe(64 * 2 * 3);
  // Twelve of the board, and two rims of 64 chords.
  expect(m.edges.length / 6).toBe(12 + 128);
});

test('a turned knob is smooth, its flat end flat', () => {
  const knob = feature(
    'knob',
    'add',
    { kind: 'turned', profile: [{ at: [0, -2] }, { at: [10, -2], via: [13, 1.5] }, { at: [10, 5] }, { at: [0, 5] }] },
    { ...HOME, o: [50, 20, 20] },
    {
      round: { of: 'side', corner: 1 },
      crown: { of: 'side', corner: 2 },
    },
  );
  const m = meshed(board(100, 40, 20, [knob]));
  for (const { face, p, n } of triangles(m)) {
    if (face === 'knob.crown') for (const one of n) expect(one).toEqual([0, 0, 1]);
    if (face !== 'knob.round') continue;
    p.forEach((c, k) => {
      const one = n[k] as Vec3;
      expect(length(one)).toBeCloseTo(1, 5);
      // Away from the axis, along the radius.
      const r = Math.hypot(c[0] - 50, c[1] - 20);
      expect((one[0] * (c[0] - 50) + one[1] * (c[1] - 20)) / r).toBeCloseTo(Math.hypot(one[0], one[1]), 4);
    });
  }
  expect(m.faces).toContain('knob.round');
  expect(m.faces).toContain('knob.crown');
});

test('a mortise with round ends has smooth joins: lines only round its mouth and its bottom', () => {
  const m = meshed(board(100, 40, 20, [feature('mortise', 'remove', prism(slot([30, 20], [60, 20], 4), 8, 20))]));
  // Per rim two straight lines and two half circles of 32 chords.
  expect(m.edges.length / 6).toBe(12 + 2 * (2 + 64));
});

test('the plane of a half-space, and two features of one name', () => {
  const m = meshed(
    board(100, 40, 20, [
      feature('taper', 'shape', { kind: 'half', normal: [1, 0, 1], off: 110 }, HOME, { slope: { of: 'plane' } }),
      block('hole', 'remove', [10, 10, 10], [20, 20, 20]),
      block('hole', 'remove', [40, 10, 10], [50, 20, 20]),
    ]),
  );
  expect(m.faces).toContain('taper.slope');
  expect(m.faces).toContain('hole.from');
  expect(m.faces).toContain('hole#2.from');
});

test('a lofted socket: flat slanting sides with names and true normals', () => {
  const m = meshed(
    board(100, 40, 20, [
      feature(
        'socket',
        'remove',
        { kind: 'prism', profile: [rectangle(10, 10, 30, 30)], profileTo: [rectangle(15, 15, 25, 25)], from: 0, to: 20 },
        HOME,
        {
          front: { of: 'side', corner: 0 },
        },
      ),
    ]),
  );
  const byFace = areas(m);
  expect(byFace['socket.front']).toBeCloseTo(((20 + 10) / 2) * Math.hypot(20, 5), 5);
  for (const { face, n } of triangles(m))
    if (face === 'socket.front') for (const one of n) expect(one[1]).toBeCloseTo(20 / Math.hypot(20, 5), 5);
});

test('facets enclose the volume, turned over in a mirrored frame so that they still face out', () => {
  const volume = (f: ArrayLike<number>): number => {
    let v = 0;
    for (let t = 0; t < f.length / 3; t += 3) v += dot(at3(f, t), cross(at3(f, t + 1), at3(f, t + 2))) / 6;
    return v;
  };
  withSolids(() => {
    const facets = facetsOf(cutOf(board(100, 40, 20, [block('m', 'remove', [10, 10, 5], [40, 30, 20])])));
    expect(volume(facets)).toBeCloseTo(80_000 - 9000, 6);
    for (const frame of [HOME, { ...HOME, o: [5, 6, 7] as Vec3 }, { ...HOME, x: [-1, 0, 0] as Vec3 }])
      expect(volume(placedFacets(facets, frame))).toBeCloseTo(71_000, 5);
  });
});

test('a section shows outline and holes in the plane’s own millimetres', () => {
  withSolids(() => {
    const solid = cutOf(
      board(100, 40, 20, [bore('hole', 'remove', 6, 0, 20, { ...HOME, o: [50, 20, 0] }), block('m', 'remove', [10, 10, 5], [40, 30, 20])]),
    );
    const level = sectionOf(solid, { ...HOME, o: [0, 0, 10] });
    expect(level.map((p) => Math.round(polygonArea(p))).toSorted((a, b) => a - b)).toEqual([-600, -113, 4000]);
    const across = sectionOf(solid, { o: [25, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] });
    expect(across).toHaveLength(1);
    expect(across[0]).toHaveLength(8);
    expect(polygonArea(across[0] ?? [])).toBeCloseTo(40 * 20 - 20 * 15, 6);
    expect(sectionOf(solid, { ...HOME, o: [0, 0, 50] })).toEqual([]);
  });
});

test('a ring of wood: the hole of an added profile is named and faces inward', () => {
  const m = meshed(board(100, 40, 20, [feature('collar', 'add', prism([rectangle(20, 5, 60, 35), circle(40, 20, 8)], 18, 30))]));
  const bore = triangles(m).filter((t) => t.face.startsWith('collar.hole1 side'));
  expect(bore.length).toBeGreaterThan(0);
  for (const { p, n } of bore)
    p.forEach((c, k) => expect((n[k]?.[0] ?? 0) * (c[0] - 40) + (n[k]?.[1] ?? 0) * (c[1] - 20)).toBeLessThan(-7.9));
});

test('two sides of one feature in one plane keep their own names', () => {
  const bridle = polygon([0, 0], [30, 0], [30, 20], [20, 20], [20, 5], [10, 5], [10, 20], [0, 20]);
  const fork = feature(
    'fork',
    'add',
    prism(bridle, 0, 8),
    { ...HOME, o: [10, 35, 6] },
    { 'tip right': { of: 'side', corner: 2 }, 'tip left': { of: 'side', corner: 6 } },
  );
  const m = meshed(board(100, 40, 20, [fork]));
  const byFace = areas(m);
  expect(byFace['fork.tip right']).toBeCloseTo(80, 6);
  expect(byFace['fork.tip left']).toBeCloseTo(80, 6);
  for (const { face, p } of triangles(m)) if (face === 'fork.tip left') for (const c of p) expect(c[0]).toBeLessThan(21);
});
