import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Frame, HOME, compose, mirrored, turned } from '../../src/geom/frame.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { MeshView, PartView } from '../../src/piece/view.ts';
import { edgesOf } from '../../web/viewer/edges.ts';
import { pickPart } from '../../web/viewer/pick.ts';
import { insideSection, sectionOf } from '../../web/viewer/section.ts';
import { law } from '../support/law.ts';

/** A box from the origin, twelve triangles, corners not shared. */
function boxMesh(w: number, d: number, h: number): MeshView {
  const at = (i: number): Vec3 => [i & 1 ? w : 0, i & 2 ? d : 0, i & 4 ? h : 0];
  const quads: [number, number, number, number][] = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const corners = quads.flatMap(([a, b, c, e]) => [a, b, c, a, c, e]);
  const positions = new Float32Array(corners.flatMap(at));
  return {
    key: 'box',
    positions,
    normals: new Float32Array(positions.length),
    indices: Uint32Array.from(corners.keys()),
    triangleFace: new Uint16Array(12),
    faces: ['stock'],
    edges: new Float32Array(),
    volume: w * d * h,
    area: 0,
    centre: [0, 0, 0],
  };
}
const part = (path: string, w: number, d: number, h: number, frame: Frame): PartView => ({
  path, letter: 'A', label: path, wood: 'ash', kind: 'wood', group: null, key: 'box', frame, stock: { min: [0, 0, 0], max: [w, d, h] }, grain: 'x', finished: { length: w, width: d, thickness: h }, pieces: [],
}); // prettier-ignore

test('a box has twelve creases, and the diagonals of its faces are none', () => {
  const e = edgesOf(boxMesh(300, 40, 20));
  expect(e.count).toBe(12);
  expect([...e.crease].every((c) => c === 1)).toBe(true);
});

const size = fc.double({ min: 10, max: 500, noNaN: true });
const frames = fc.constantFrom(HOME, compose(mirrored('x', 30), turned('z', Math.PI / 2)), compose(turned('y', 0.4), mirrored('y', 0)));
law(
  'a level cut through a box is closed, and its middle lies inside it',
  fc.tuple(size, size, size, fc.double({ min: 0.1, max: 0.9, noNaN: true })),
  ([w, d, h, share]) => {
    const flat = sectionOf(boxMesh(w, d, h), HOME, { normal: [0, 0, 1], at: share * h });
    const lines = Array.from({ length: flat.length / 6 }, (_, i): [number, number, number, number] => [
      flat[i * 6] ?? 0,
      flat[i * 6 + 1] ?? 0,
      flat[i * 6 + 3] ?? 0,
      flat[i * 6 + 4] ?? 0,
    ]);
    const around = lines.reduce((sum, [x0, y0, x1, y1]) => sum + Math.hypot(x1 - x0, y1 - y0), 0);
    expect(around).toBeCloseTo(2 * (Math.fround(w) + Math.fround(d)), 1);
    expect(insideSection(lines, w / 2, d / 2)).toBe(true);
    expect(insideSection(lines, w * 1.01 + 1, d / 2)).toBe(false);
  },
);

law(
  'a ray to the middle of a part finds it, from anywhere, mirrored or leaning',
  fc.tuple(size, size, size, frames, fc.double({ min: 0, max: 6, noNaN: true }), fc.double({ min: -1.4, max: 1.4, noNaN: true })),
  ([w, d, h, frame, round, up]) => {
    const mid = [0, 1, 2].map(
      (i) => frame.o[i as 0 | 1 | 2] + (frame.x[i as 0 | 1 | 2] * w + frame.y[i as 0 | 1 | 2] * d + frame.z[i as 0 | 1 | 2] * h) / 2,
    ) as unknown as Vec3;
    const from: Vec3 = [
      mid[0] + 3000 * Math.cos(round) * Math.cos(up),
      mid[1] + 3000 * Math.sin(round) * Math.cos(up),
      mid[2] + 3000 * Math.sin(up),
    ];
    const along = mid.map((m, i) => (m - (from[i] ?? 0)) / 3000) as unknown as Vec3;
    const thing = { part: part('leg', w, d, h, frame), mesh: boxMesh(w, d, h), frame };
    expect(pickPart({ from, along }, [thing], null)).toBe('leg');
    expect(pickPart({ from, along: along.map((n) => -n) as unknown as Vec3 }, [thing], null)).toBe(null);
  },
);
test('of two parts in a row the nearer is picked, unless the cut takes it away', () => {
  const near = { part: part('near', 10, 10, 10, HOME), mesh: boxMesh(10, 10, 10), frame: HOME };
  const frame: Frame = { ...HOME, o: [0, 50, 0] };
  const far = { part: part('far', 10, 10, 10, frame), mesh: boxMesh(10, 10, 10), frame };
  const ray = { from: [5, -100, 5], along: [0, 1, 0] } as const;
  expect(pickPart(ray, [far, near], null)).toBe('near');
  expect(pickPart(ray, [far, near], { normal: [0, -1, 0], at: -30 })).toBe('far');
});
