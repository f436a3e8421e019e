/** Families together in whole pieces: a dovetailed drawer with its bottom in grooves, and a bookcase with shelves in housings. */
import { beforeAll, expect, test } from 'vitest';
import { blankBox } from '../../src/build/blank.ts';
import type { Build } from '../../src/build/part.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { cutPart } from '../../src/solids/cut.ts';
import { overlap } from '../../src/solids/pair.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { builtOf, jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());
const mirrored = (at: string) => [{ mirror: 'x', at, names: ['left', 'right'] }];
const drawer = (set: Record<string, string>) => ({
  dryfit: 1,
  title: 'Drawer with a groove under a tail',
  units: 'mm',
  sizes: { wide: '300', deep: '350', high: '90' },
  parts: {
    side: {
      wood: 'oak',
      grain: 'y',
      copies: mirrored('wide/2'),
      left: '0',
      width: '12',
      front: '0',
      depth: 'deep',
      bottom: '0',
      height: 'high',
    },
    front: { wood: 'oak', grain: 'x', left: '0', width: 'wide', front: '0', depth: '18', bottom: '0', height: 'high' },
    back: { wood: 'oak', grain: 'x', left: '0', width: 'wide', back: 'deep', depth: '12', bottom: 'bottom.top', top: 'side:left.top' },
    bottom: {
      wood: 'oak',
      grain: 'x',
      left: 'side:left.right',
      right: 'side:right.left',
      front: 'front.back',
      back: 'deep',
      bottom: '9',
      height: '6',
    },
  },
  joints: {
    front_corners: { as: 'dovetail@1', places: [{ tails: 'side:*', pins: 'front' }], set },
    back_corners: { as: 'dovetail@1', places: [{ tails: 'side:*', pins: 'back' }] },
    held: {
      as: 'groove_tongue@1',
      places: [
        { enter: 'bottom', into: 'side:*' },
        { enter: 'bottom', into: 'front' },
      ],
      set: { depth: '6', spare: '1.5', corners: 'front' },
    },
  },
});
const bookcase = {
  dryfit: 1,
  title: 'Bookcase, 1800 high, 800 wide outside, shelves let 6 into sides of 18',
  units: 'mm',
  parts: {
    side: {
      wood: 'pine',
      grain: 'z',
      copies: mirrored('400'),
      left: '0',
      width: '18',
      front: '0',
      depth: '280',
      bottom: '0',
      height: '1800',
    },
    shelf: {
      wood: 'pine',
      grain: 'x',
      copies: [{ row: 'z', count: 5, step: '400' }],
      left: 'side:left.right',
      right: 'side:right.left',
      front: '0',
      depth: '280',
      bottom: '60',
      height: '18',
    },
  },
  joints: {
    housings: { as: 'housing@1', places: [{ enter: 'shelf:*', into: 'side:*' }], set: { depth: '6', stopped: 'front', stop: '10' } },
  },
};
/** Names of the pairs whose solids share more than touching gives. */
function overlaps(b: Build): string[] {
  return withSolids(() => {
    const all = [...b.parts.values(), ...b.extras.values()].map((p) => {
      const cut = cutPart(p.record, { who: p.path });
      if (!cut.ok) throw new Error(cut.problem);
      return { path: p.path, solid: cut.solid, frame: p.frame };
    });
    return all.flatMap((a, i) =>
      all.slice(i + 1).flatMap((c) => ((overlap(a.solid, a.frame, c.solid, c.frame)?.volume ?? 0) > 1e-3 ? [`${a.path} / ${c.path}`] : [])),
    );
  });
}

test.each([
  ['laid out evenly', {}],
  ['a tail over the groove', { tail_over: 'bottom.midheight', over_size: '6' }],
  ['a tail over a groove placed by number', { tail_over: '24' }],
])('a dovetailed drawer goes together: %s', (_name, set) => {
  const { drawn } = builtOf(jsonDocument(drawer(set)));
  expect(drawn.places.map((p) => p.refused)).toEqual(drawn.places.map(() => null));
  expect(overlaps(drawn)).toEqual([]);
});
test('the spot that a tail must cover is read on the side’s own axes: 12 up a side of 90 is 33 below its middle', () => {
  const { drawn } = builtOf(jsonDocument(drawer({ tail_over: 'bottom.midheight' })));
  const corners = drawn.places.filter((p) => p.joint === 'front_corners');
  expect(corners.map((p) => p.sizes?.['tail_over'])).toEqual([-33, -33]);
});
test('both sides of the drawer are equal records, one the mirror image of the other', () => {
  const { drawn } = builtOf(jsonDocument(drawer({ tail_over: '24' })));
  expect(drawn.parts.get('side:left')?.record.key).toBe(drawn.parts.get('side:right')?.record.key);
});
test('the bottom grows by its tongues: 4.5 at both sides and at the front, not at the back', () => {
  const { drawn } = builtOf(jsonDocument(drawer({})));
  const part = drawn.parts.get('bottom');
  const blank = part && blankBox(part.record);
  expect(blank && [blank.max[0] - blank.min[0], blank.max[1] - blank.min[1]]).toEqual([276 + 9, 332 + 4.5]);
});
test('shelves of a bookcase 800 wide in 18 mm sides, let in 6: 776 long (published: woodworking article, metric pine bookcase)', () => {
  const { drawn } = builtOf(jsonDocument(bookcase));
  const part = drawn.parts.get('shelf:1');
  const blank = part && blankBox(part.record);
  expect(blank && blank.max[0] - blank.min[0]).toBeCloseTo(776, 9);
  expect(drawn.places).toHaveLength(10);
  expect(overlaps(drawn)).toEqual([]);
});
