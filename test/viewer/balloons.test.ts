import fc from 'fast-check';
import { expect } from 'vitest';
import { type Anchor, crossing, placeBalloons } from '../../web/viewer/balloons.ts';
import { law } from '../support/law.ts';

const room = { left: 150, right: 850, top: 70, bottom: 420 };
const anchors = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 160, max: 840 }), fc.integer({ min: 80, max: 410 })), {
    minLength: 0,
    maxLength: 40,
    selector: ([x, y]) => `${x} ${y}`,
  })
  .map((list) => list.map(([x, y], i): Anchor => ({ letter: `L${i}`, words: 'part', path: `part:${i}`, x, y })));

law('no two leaders of a column cross, no two balloons lie on each other, none leaves the room', anchors, (list) => {
  const out = placeBalloons(list, room);
  for (const [i, a] of out.entries())
    for (const b of out.slice(i + 1)) {
      if (a.side !== b.side) continue;
      expect(crossing(a, b)).toBe(false);
      expect(Math.abs(a.by - b.by)).toBeGreaterThanOrEqual(28);
    }
  for (const b of out) {
    expect(b.by).toBeGreaterThanOrEqual(room.top - 1e-9);
    expect(b.by).toBeLessThanOrEqual(room.bottom + 1e-9);
  }
});
law('every part has its balloon while there is room', anchors, (list) => {
  const out = placeBalloons(list, room);
  expect(out.length).toBe(Math.min(list.length, 20));
  expect(new Set(out.map((b) => b.letter)).size).toBe(out.length);
});
