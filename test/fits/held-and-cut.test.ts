/** Parts that nothing holds, tenons that meet, parts that cannot be cut, and parts that are cut already. */
import { beforeAll, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { families } from '../../src/joints/families.ts';
import type { Json } from '../../src/model/finding.ts';
import type { PartRecord } from '../../src/model/record.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board, findingsOf, joint, piece, tryRule } from '../support/checks.ts';
import { jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());

const frame = (more: Record<string, object> = {}): object =>
  piece(
    { post: board('z', [0, 40], [0, 40], [0, 500]), rail: board('x', [40, 440], [10, 30], [400, 460]), ...more },
    { end: joint('mortise_tenon', [{ enter: 'rail', into: 'post' }]) },
  );
tryRule('held-by-nothing', {
  quiet: {
    'all joined': frame(),
    'one said to lie loose': frame({ tray: board('x', [100, 300], [200, 300], [0, 20], { loose: true }) }),
    'one part alone': piece({ board: board('x', [0, 300], [0, 100], [0, 20]) }),
  },
  speaks: {
    'a tray': { in: frame({ tray: board('x', [100, 300], [200, 300], [0, 20]) }), parts: ['tray'], cure: 'Say that it lies loose' },
  },
});

/** Two rails into one leg 40 square from two sides; tenons 10 thick in the middle clear each other up to 15 long. */
const corner = (length: string, set: object = {}, second: object | null = null): object =>
  piece(
    {
      leg: board('z', [0, 40], [0, 40], [0, 500]),
      a: board('x', [40, 400], [10, 30], [400, 460]),
      b: board('y', [10, 30], [40, 400], [400, 460]),
    },
    second
      ? {
          one: joint('mortise_tenon', [{ enter: 'a', into: 'leg' }], { thickness: '10', length, ...set }),
          two: joint('mortise_tenon', [{ enter: 'b', into: 'leg' }], { thickness: '10', length, ...second }),
        }
      : {
          both: joint(
            'mortise_tenon',
            [
              { enter: 'a', into: 'leg' },
              { enter: 'b', into: 'leg' },
            ],
            { thickness: '10', length, ...set },
          ),
        },
  );
tryRule('tenons-meet', {
  quiet: {
    '15 long, square': corner('15'),
    '24 long, mitred': corner('24', { end: 'mitred' }),
    'of two joints: the solids tell': corner('18', {}, {}),
  },
  speaks: { '18 long, square': { in: corner('18'), parts: ['a', 'b', 'leg'], measured: 18, cure: 'Mitre the ends of both' } },
});
tryRule('joints-collide', {
  quiet: { 'told by the joint itself': corner('18'), 'of two joints, short enough': corner('15', {}, {}) },
  speaks: { 'of two joints': { in: corner('18', {}, {}), parts: ['a', 'b', 'leg'] } },
});
test('tenons that meet are told in the first wave already, once a leg, under the same key', () => {
  const [first, second] = [findingsOf(corner('18'), 1), findingsOf(corner('18'), 2)];
  expect(first.filter((f) => f.grade === 'stops').map((f) => f.key)).toEqual(['tenons-meet a b leg both/1']);
  expect(second.map((f) => f.key)).toEqual(first.map((f) => f.key));
});

tryRule('joint-refused', {
  quiet: { 'it can be cut': frame() },
  speaks: {
    'a tenon thicker than its rail': { in: corner('15', { thickness: '26' }, {}), parts: ['a', 'leg'], measured: 26, alone: false },
  },
});
tryRule('in-pieces', {
  quiet: { whole: frame() },
  speaks: {
    'a housing right through a board': {
      in: piece(
        { rail: board('x', [0, 400], [0, 20], [0, 30]), pin: board('z', [150, 180], [0, 20], [30, 200]) },
        {
          through: joint('mortise_tenon', [{ enter: 'pin', into: 'rail' }], {
            shoulders: 'broad',
            thickness: '20',
            width: '30',
            through: 'yes',
          }),
        },
      ),
      parts: ['rail'],
      measured: 2,
      alone: false,
    },
  },
});

/** The record that the build itself makes of one part of a document, as it would be kept when the part is cut. */
const kept = (json: object, path: string): PartRecord => {
  const record = buildPiece(jsonDocument(json), families).built.parts.get(path)?.record;
  if (!record) throw new Error(`no ${path}`);
  return record;
};
const cut = (json: object, record: PartRecord, path: string): object => ({
  ...json,
  bench: { cut: { [path]: { on: '2025-05-02', record: JSON.parse(JSON.stringify(record)) as Json } } },
});
const loose = (length: string): object =>
  piece({ shelf: board('x', [0, 0], [0, 200], [0, 18], { left: '0', right: 'long', loose: true }) }, {}, { sizes: { long: length } });
tryRule('cut-already', {
  quiet: {
    'cut as it would still be made': cut(loose('600'), kept(loose('600'), 'shelf'), 'shelf'),
    'cut as a part with joints': cut(frame(), kept(frame(), 'rail'), 'rail'),
  },
  speaks: {
    'the document has grown by 12': {
      in: cut(loose('612'), kept(loose('600'), 'shelf'), 'shelf'),
      parts: ['shelf'],
      measured: 12,
      cure: 'Make long {mm:600}',
    },
  },
});
test('a frozen record that cannot be read is a problem with its place, and the piece is not judged', () => {
  const bad = jsonDocument({ ...loose('600'), bench: { cut: { shelf: { on: 'today', record: { stock: 'a box' } } } } });
  const b = buildPiece(bad, families);
  expect(b.problems.map((p) => p.where).join()).toContain('bench/cut/shelf/record');
});
