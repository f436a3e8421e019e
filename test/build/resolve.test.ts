/** Sizes and places against tables worked out by hand. */
import { expect, test } from 'vitest';
import { outPoint } from '../../src/geom/frame.ts';
import { resolve } from '../../src/build/resolve.ts';
import { boxesOf, builtOf, documentOf, fixtureText, jsonDocument, sizes, troubles } from '../support/piece.ts';

const IN = 25.4;
const board = (more: object): object => ({
  wood: 'ash',
  grain: 'x',
  left: '0',
  width: '100',
  front: '0',
  depth: '50',
  bottom: '0',
  height: '20',
  ...more,
});

test('hearth stool: leaning legs, rungs between them (by trigonometry)', () => {
  const doc = documentOf(fixtureText('hearth-stool'));
  const of = boxesOf(doc);
  // Leg stock below the seat: 12.5 in / cos 15° between the two level cuts, and 1.5 in · tan 15° to the long points.
  const stock = (12.5 * IN) / Math.cos(Math.PI / 12) + 1.5 * IN * Math.tan(Math.PI / 12);
  for (const n of ['1', '2', '3']) {
    expect(sizes(of(`leg:${n}`))[2]).toBeCloseTo(stock, 6);
    expect(sizes(of(`leg:${n}`))[2]).toBeCloseTo(338.909052, 5);
    expect(
      of(`leg:${n}`)
        .trims.map((t) => t.face)
        .sort(),
    ).toEqual(['bottom', 'top']);
  }
  // Axis from seat top to floor 14 in / cos 15° = 14.49387 in; its foot 14 · tan 15° = 3.75129 in further out.
  const leg = of('leg:1');
  const foot = outPoint(leg.frame, [0, 0, -(14 * IN) / Math.cos(Math.PI / 12)]);
  expect(foot[2]).toBeCloseTo(0, 9);
  expect(foot[1] - 4 * IN).toBeCloseTo(3.75129 * IN, 3);
  // Rung: legs' axes at 4.75 in height lie on a circle of 101.6 + 234.95 · tan 15°; neighbours at 120° are √3 radii apart.
  const run = (101.6 + 234.95 * Math.tan(Math.PI / 12)) * Math.sqrt(3);
  expect(run).toBeCloseTo(285.017037, 5);
  expect(sizes(of('rung:3'))[0]).toBeCloseTo(run - 1.5 * IN, 6);
  expect(sizes(of('rung:1'))[0]).toBeCloseTo(246.917037, 5);
  // Each rung's line joins the axes of two legs: rung 3 runs from leg 3 to leg 1.
  const r3 = of('rung:3');
  const ends = [r3.box.min[0] - 0.75 * IN, r3.box.max[0] + 0.75 * IN].map((x) => outPoint(r3.frame, [x, 0, 0]));
  for (const [i, n] of (['3', '1'] as const).entries()) {
    const f = of(`leg:${n}`).frame;
    const end = ends[i] ?? [0, 0, 0];
    const along = (end[2] - f.o[2]) / f.z[2];
    const onAxis = outPoint(f, [0, 0, along]);
    expect(Math.hypot(onAxis[0] - end[0], onAxis[1] - end[1])).toBeLessThan(1e-9);
  }
});

test('window table as drawn', () => {
  const of = boxesOf(documentOf(fixtureText('window-table')));
  for (const leg of ['left:front', 'left:rear', 'right:front', 'right:rear'])
    expect(sizes(of(`leg:${leg}`)).map((n) => +n.toFixed(9))).toEqual([45, 45, 713]);
  for (const e of ['front', 'rear']) expect(sizes(of(`long_apron:${e}`)).map((n) => +n.toFixed(9))).toEqual([1030, 20, 90]);
  for (const e of ['left', 'right']) expect(sizes(of(`short_apron:${e}`)).map((n) => +n.toFixed(9))).toEqual([20, 430, 90]);
  expect(sizes(of('top')).map((n) => +n.toFixed(9))).toEqual([1200, 600, 22]);
});

test('window table as built: only the measured leg and the apron that reads it differ', () => {
  const { drawn, built } = builtOf(documentOf(fixtureText('window-table')));
  const changed = [...drawn.parts.keys()].filter(
    (p) => JSON.stringify(drawn.parts.get(p)?.resolved.box) !== JSON.stringify(built.parts.get(p)?.resolved.box),
  );
  expect(changed.sort()).toEqual(['leg:right:rear', 'long_apron:rear']);
  const size = (path: string): number => sizes(built.parts.get(path)?.resolved as never)[0] ?? 0;
  expect(size('leg:right:rear')).toBeCloseTo(44.2, 9);
  expect(size('long_apron:rear')).toBeCloseTo(1030.8, 9);
  // The datum face of the leg stays where it was.
  expect(built.parts.get('leg:right:rear')?.resolved.box.min).toEqual(drawn.parts.get('leg:right:rear')?.resolved.box.min);
});

test('a size given by two faces and then measured is a difference, not a moved neighbour', () => {
  const doc = jsonDocument({
    dryfit: 1,
    title: 'Rail',
    units: 'mm',
    parts: {
      post: {
        wood: 'ash',
        grain: 'z',
        copies: [{ mirror: 'x', at: '200', names: ['left', 'right'] }],
        left: '0',
        width: '40',
        front: '0',
        depth: '40',
        bottom: '0',
        height: '300',
      },
      rail: {
        wood: 'ash',
        grain: 'x',
        left: 'post:left.right',
        right: 'post:right.left',
        middepth: 'post:left.middepth',
        depth: '20',
        top: '280',
        height: '60',
      },
    },
    bench: { measured: [{ of: 'rail.width', is: '319', with: 'rule' }] },
  });
  const { drawn, built } = builtOf(doc);
  expect(sizes(drawn.parts.get('rail')?.resolved as never)[0]).toBeCloseTo(320, 9);
  expect(built.parts.get('rail')?.resolved.misfits).toEqual([{ size: 'width', by: -1, stays: 'left' }]);
  expect(built.parts.get('post:right')?.resolved.box).toEqual(drawn.parts.get('post:right')?.resolved.box);
});

test('a circle of three readings is named as its chain', () => {
  const lines = troubles({
    dryfit: 1,
    title: 'Round',
    units: 'mm',
    parts: { a: board({ left: 'c.right' }), b: board({ left: 'a.right' }), c: board({ left: 'b.right' }) },
  });
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/circle/);
  for (const part of ['a.', 'b.', 'c.']) expect(lines[0]).toContain(part);
});

test('readings turn with quarter turns and mirrors', () => {
  const doc = jsonDocument({
    dryfit: 1,
    title: 'Turned',
    units: 'mm',
    parts: {
      base: board({}),
      // Turned a quarter about z: its own width lies along the world's depth.
      turned: board({ at: ['300', '0', '0'], turn: [['z', '90 deg']], left: '0', width: 'base.depth' }),
      image: board({ copies: [{ mirror: 'x', at: '-50', names: ['here', 'there'] }], left: 'base.right', width: '30' }),
    },
  });
  const of = boxesOf(doc);
  // In the turned part's frame, what the world calls width (100) is depth.
  expect(sizes(of('turned'))[0]).toBeCloseTo(100, 9);
  const here = of('image:here');
  const there = of('image:there');
  expect(here.box.min[0]).toBeCloseTo(100, 9);
  // The image reads base.right in its own, mirrored frame: that is base's left face, 0, seen from the mirror at -50.
  expect(there.box.min[0]).toBeCloseTo(-100, 9);
});

test('a compass reading of a leaning part is refused with the cure', () => {
  const lines = troubles({
    dryfit: 1,
    title: 'Lean',
    units: 'mm',
    parts: { prop: board({ turn: [['y', '20 deg']] }), rest: board({ left: 'prop.right' }) },
  });
  expect(lines.join(' ')).toMatch(/leans/);
  expect(lines.join(' ')).toMatch(/meets/);
});

test('xon reads a leaning face at one spot', () => {
  const doc = jsonDocument({
    dryfit: 1,
    title: 'Spot',
    units: 'mm',
    parts: {
      prop: board({ grain: 'z', height: '400', turn: [['y', '10 deg']], marks: { inner: 'right' } }),
      shelf: board({ left: 'xon(prop.inner, 0, 200)' }),
    },
  });
  // Right face at own x = 100: world x = 100 cos a + z' sin a at world z = 200 = -100 sin a + z' cos a.
  const a = Math.PI / 18;
  const z = (200 + 100 * Math.sin(a)) / Math.cos(a);
  expect(boxesOf(doc)('shelf').box.min[0]).toBeCloseTo(100 * Math.cos(a) + z * Math.sin(a), 9);
});

test('three thousand parts that read each other in one chain are solved, without a deep stack', () => {
  const parts: Record<string, object> = { p0: board({}) };
  for (let i = 1; i < 3000; i++) parts[`p${i}`] = board({ left: `p${i - 1}.right`, width: '10' });
  const r = resolve(jsonDocument({ dryfit: 1, title: 'Chain', units: 'mm', parts }));
  expect(r.problems).toEqual([]);
  expect(r.boxes.get('p2999')?.box.min[0]).toBe(30080);
});

test('sizes of nothing and names that do not exist are told with the thing and the cure', () => {
  const base = { dryfit: 1, title: 'Bad', units: 'mm' };
  expect(troubles({ ...base, parts: { a: board({ width: '0' }) } }).join()).toMatch(/width of "a" comes to 0/);
  expect(troubles({ ...base, sizes: { long: '10' }, parts: { a: board({ width: 'lng' }) } }).join()).toMatch(/Did you mean "long"/);
  expect(troubles({ ...base, parts: { a: board({ width: '200 m' }) } }).join()).toMatch(/at most 100 m/);
  expect(troubles({ ...base, parts: { a: board({ right: '5' }) } }).join()).toMatch(/exactly two of left, right, width, midwidth/);
  expect(troubles({ ...base, parts: { a: board({ widht: '5' }) } }).join()).toMatch(/Did you mean "width"/);
});
