import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cornersOf } from '../../src/geom/box.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { TURNS, axesOf, between, fitTo, onSheet, seenAt } from '../../web/viewer/camera.ts';
import { law } from '../support/law.ts';

const mm = fc.double({ min: 5, max: 3000, noNaN: true });
const angle = fc.record({ round: fc.double({ min: -4, max: 4, noNaN: true }), up: fc.double({ min: 0.1, max: 1.5, noNaN: true }) });

law(
  'a fitted view shows the whole piece inside the room, and touches it in one direction',
  fc.tuple(mm, mm, mm, angle, fc.boolean()),
  ([w, d, h, turn, flat]) => {
    const axes = axesOf(turn);
    const corners = cornersOf({ min: [-w / 2, -d / 2, -h / 2], max: [w / 2, d / 2, h / 2] }).map((c) => seenAt(c, [0, 0, 0], axes));
    const size = { width: 1000, height: 500 };
    const room = { x: 40, y: 60, width: 600, height: 330 };
    const fit = fitTo(corners, room, size, flat);
    const px = corners.map((c) => {
      const [x, y] = onSheet(c, fit.reach, 2, flat);
      return [((x + fit.shift[0] + 1) / 2) * size.width, ((1 - y - fit.shift[1]) / 2) * size.height] as const;
    });
    const [x0, x1] = [Math.min(...px.map((p) => p[0])), Math.max(...px.map((p) => p[0]))];
    const [y0, y1] = [Math.min(...px.map((p) => p[1])), Math.max(...px.map((p) => p[1]))];
    expect(x0).toBeGreaterThanOrEqual(room.x - 0.01);
    expect(x1).toBeLessThanOrEqual(room.x + room.width + 0.01);
    expect(y0).toBeGreaterThanOrEqual(room.y - 0.01);
    expect(y1).toBeLessThanOrEqual(room.y + room.height + 0.01);
    expect(Math.max((x1 - x0) / room.width, (y1 - y0) / room.height)).toBeGreaterThan(0.98);
  },
);

test('front, side and above look along the axes that their names say', () => {
  const eye = (name: keyof typeof TURNS): Vec3 => axesOf(TURNS[name]).toEye.map((n) => Math.round(n * 1e9) / 1e9 + 0) as unknown as Vec3;
  expect(eye('front')).toEqual([0, -1, 0]);
  expect(eye('side')).toEqual([1, 0, 0]);
  expect(eye('above')).toEqual([0, 0, 1]);
});

law('a move from one turn to another ends where it was sent and takes the shorter way', fc.tuple(angle, angle), ([a, b]) => {
  const end = axesOf(between(a, b, 1)).toEye;
  axesOf(b).toEye.forEach((n, i) => expect(end[i]).toBeCloseTo(n, 6));
  expect(Math.abs(between(a, b, 1).round - a.round)).toBeLessThanOrEqual(Math.PI + 1e-9);
});
