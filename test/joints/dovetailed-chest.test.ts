/** A chest of four dovetailed boards with a mitred shoulder over the grooves of its bottom: clean, and as long as worked by hand. */
import { beforeAll, expect, test } from 'vitest';
import { blankBox } from '../../src/build/blank.ts';
import { corner, layoutFor } from '../../src/joints/dovetail/lay.ts';
import type { Dovetail } from '../../src/joints/dovetail/params.ts';
import { orderOf } from '../../src/piece/order.ts';
import { judge } from '../../src/piece/judge.ts';
import { verdictOf } from '../../src/piece/judging.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf, withStore } from '../support/checks.ts';
import { boxesOf, builtOf, documentOf, fixtureText, sizes } from '../support/piece.ts';

beforeAll(() => loadKernel());
const doc = documentOf(fixtureText('dovetailed-chest'));
const changed = (change: (set: Record<string, string>) => void): unknown => {
  const json = JSON.parse(fixtureText('dovetailed-chest')) as { joints: Record<string, { set: Record<string, string> }> };
  change(json.joints['corners']!.set);
  return json;
};

test('it is clean and goes together', () => {
  withStore((store) => {
    const j = judge(doc, store, 2);
    expect(j.findings.map((f) => f.key)).toEqual([]);
    expect(verdictOf(j)).toBe('together');
    expect(orderOf(j.built, store).possible).toBe(true);
  });
});
test('sizes worked by hand', () => {
  const at = boxesOf(doc);
  expect(sizes(at('wall:front'))).toEqual([900, 20, 400]);
  expect(sizes(at('end:right'))).toEqual([20, 450, 400]);
  expect(sizes(at('bottom'))).toEqual([900 - 40, 450 - 40, 12]);
  // The lid stands over by 15 all round: 930 long less two ends of 70.
  expect(sizes(at('lid'))).toEqual([930 - 140, 480, 22]);
  expect(at('lid').box.min.map((n) => n + 0)).toEqual([55, -15, 400]);
  const b = builtOf(doc).built;
  const blank = (path: string): number[] => {
    const box = blankBox(b.parts.get(path)!.record);
    return box.max.map((m, i) => m - box.min[i]!);
  };
  // No tail or pin lengthens its board; the bottom is longer and wider by its tongues, each shorter than its groove of 8.
  expect(blank('wall:front')).toEqual([900, 20, 400]);
  expect(blank('end:left')).toEqual([20, 450, 400]);
  const [long, wide] = blank('bottom');
  expect(long).toBeGreaterThan(860);
  expect(long).toBeLessThan(860 + 16);
  expect(wide).toBeGreaterThan(410);
  expect(wide).toBeLessThan(410 + 16);
});
test('seven tails above the mitre, all four corners alike', () => {
  const corners = builtOf(doc).built.places.filter((p) => p.joint === 'corners');
  expect(corners).toHaveLength(4);
  for (const p of corners) {
    const s = p.sizes as Dovetail;
    // 400 less the mitre of 30; softwood leans 1 in 6: 20/6 over the thickness. Pins (370/7)/3.5 - 20/6 = 11.77 to 11.8.
    expect([s.slope, s.pin, s.half_pin]).toEqual([1 / 6, 11.8, 11.8]);
    const l = layoutFor(corner(p.input.meeting)!, s, false)!;
    const tail = (370 - 8 * 11.8) / 7;
    expect(l.tails).toHaveLength(7);
    expect(l.tails[0]!.low).toBeCloseTo(30 + 11.8, 9);
    expect(l.tails[0]!.high).toBeCloseTo(30 + 11.8 + tail, 9);
    expect(l.tails[6]!.high).toBeCloseTo(400 - 11.8, 9);
  }
  const records = (id: string, ...names: string[]): Set<string> =>
    new Set(names.map((n) => builtOf(doc).built.parts.get(`${id}:${n}`)!.record.key));
  expect(records('wall', 'front', 'back').size).toBe(1);
  expect(records('end', 'left', 'right').size).toBe(1);
});
test('without the mitre the groove shows, and a tail over it hides it', () => {
  const bare = findingsOf(changed((set) => delete set['mitre']));
  expect(bare.map((f) => f.rule)).toContain('groove-shows');
  const under = findingsOf(
    changed((set) => {
      delete set['mitre'];
      set['tail_over'] = 'bottom.midheight';
      set['over_size'] = 'bottom_t';
      set['half_pin'] = '4';
    }),
  );
  expect(under.map((f) => f.rule)).not.toContain('groove-shows');
});
