/** Left and right made alike, and parts that fit the wrong way round: documents that have the fault, and such as just have not. */
import { readdirSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board, findingsOf, joint, piece, tryRule } from '../support/checks.ts';
import { fixtureText } from '../support/piece.ts';

beforeAll(() => loadKernel());

/** Two legs with a rail between them, tapered on one face each. */
const taper = (face: string): object => ({ shape: [{ as: 'taper@1', faces: [face], start: '300', foot: '25' }] });
const legs = (left: object, right: object, more: object = {}): object =>
  piece(
    {
      left_leg: board('z', [0, 40], [0, 40], [0, 400], left),
      right_leg: board('z', [440, 480], [0, 40], [0, 400], right),
      rail: board('x', [40, 440], [10, 30], [320, 380], { marks: { face: 'front', upper: 'top' } }),
    },
    {
      ends: joint(
        'mortise_tenon',
        [
          { enter: 'rail', into: 'left_leg' },
          { enter: 'rail', into: 'right_leg' },
        ],
        { length: '20' },
      ),
    },
    more,
  );
const inner = (face: string): object => ({ marks: { inner: face }, ...taper('inner') });
tryRule('mirrored-pair', {
  quiet: {
    'each tapered towards the other': legs(taper('right'), taper('left')),
    'tapered alike in front, which is the same for left and right': legs(taper('front'), taper('front')),
    'not shaped at all': legs({}, {}),
    'marked inside': legs(inner('right'), inner('left')),
    'one tapered and the other not: no pair': legs(taper('right'), {}),
    'mirror copies of one leg': piece(
      {
        leg: board('z', [0, 40], [0, 40], [0, 400], { ...taper('right'), copies: [{ mirror: 'x', at: '240', names: ['left', 'right'] }] }),
        rail: board('x', [40, 440], [10, 30], [320, 380], { marks: { face: 'front', upper: 'top' } }),
      },
      { ends: joint('mortise_tenon', [{ enter: 'rail', into: 'leg:*' }], { length: '20' }) },
    ),
  },
  speaks: {
    'two lefts, by their shape': { in: legs(taper('right'), taper('right')), parts: ['left_leg', 'right_leg'], measured: 1 },
    'two rights, in a row of copies': {
      in: piece(
        {
          leg: board('z', [0, 40], [0, 40], [0, 400], {
            ...taper('left'),
            copies: [{ row: 'x', count: 2, step: '440', names: ['left', 'right'] }],
          }),
          rail: board('x', [40, 440], [10, 30], [320, 380], { marks: { face: 'front', upper: 'top' } }),
        },
        { ends: joint('mortise_tenon', [{ enter: 'rail', into: 'leg:*' }], { length: '20' }) },
      ),
      parts: ['leg:left', 'leg:right'],
    },
    'inner marked outside on one, and the taper with it': {
      in: legs(inner('right'), inner('right')),
      parts: ['left_leg', 'right_leg'],
      measured: 2,
      cure: 'Put its mark on the opposite face',
    },
    'a face side that looks out on one and in on the other': {
      in: legs({ marks: { face: 'left' } }, { marks: { face: 'left' } }),
      parts: ['left_leg', 'right_leg'],
      measured: 1,
      cure: 'Put its mark on the opposite face',
    },
  },
});
test('the leg whose inner mark looks away from the other is named', () => {
  const why = (left: string, right: string) =>
    findingsOf(legs({ marks: { inner: left } }, { marks: { inner: right } }), 1).find((f) => f.rule === 'mirrored-pair')?.why ?? '';
  expect(why('right', 'right')).toContain('on the right leg it looks the wrong way');
  expect(why('left', 'left')).toContain('on the left leg it looks the wrong way');
  expect(why('right', 'left')).toBe('');
});

/** A rail whose tenons lie in its middle, tapered from one end on one edge or the other. */
const railed = (rail: object, set: object = {}): object =>
  piece(
    {
      left_leg: board('z', [0, 40], [0, 40], [0, 400]),
      right_leg: board('z', [440, 480], [0, 40], [0, 400]),
      rail: board('x', [40, 440], [10, 30], [300, 380], rail),
    },
    {
      ends: joint(
        'mortise_tenon',
        [
          { enter: 'rail', into: 'left_leg' },
          { enter: 'rail', into: 'right_leg' },
        ],
        {
          length: '20',
          width: '30',
          ...set,
        },
      ),
    },
  );
const arched = { shape: [{ as: 'taper@1', faces: ['bottom'], start: '200', foot: '60' }] };
tryRule('wrong-way', {
  quiet: {
    'nothing shaped: whichever way, it is the same': railed({}, { drop: '0' }),
    'its tenons lie off the middle both ways': railed(arched, { drop: '8', offset: '2' }),
    'marked on its face and its upper edge': railed({ ...arched, marks: { face: 'front', upper: 'top' } }, { drop: '0' }),
  },
  speaks: {
    'its tenons lie in its middle': {
      in: railed(arched, { drop: '0' }),
      parts: ['rail'],
      measured: 3,
      cure: 'Mark which way it goes',
    },
    // Turned over about its length, and end for end about its height, the mark has gone to the back; end for end about its thickness it has not.
    'marked on its face only, it still turns end for end': {
      in: railed({ ...arched, marks: { face: 'front' } }, { drop: '0' }),
      parts: ['rail'],
      measured: 1,
      cure: 'Mark which way it goes',
    },
  },
});
test('a groove that is not in the middle makes a rail fit the wrong way too', () => {
  const doc = piece(
    {
      left: board('z', [0, 40], [0, 20], [0, 400]),
      right: board('z', [440, 480], [0, 20], [0, 400]),
      rail: board('x', [40, 440], [0, 20], [300, 360]),
      panel: board('x', [40, 440], [4, 10], [100, 300], { loose: true }),
    },
    {
      ends: joint(
        'mortise_tenon',
        [
          { enter: 'rail', into: 'left' },
          { enter: 'rail', into: 'right' },
        ],
        { length: '20', width: '30', drop: '0' },
      ),
      groove: joint('groove_tongue', [{ enter: 'panel', into: 'rail' }], { depth: '8' }),
    },
  );
  expect(
    findingsOf(doc, 1)
      .filter((f) => f.rule === 'wrong-way')
      .map((f) => f.parts),
  ).toEqual([['rail']]);
});
test('its copies share one note', () => {
  const side = (x: readonly [number, number]) => board('z', x, [0, 120], [0, 400]);
  const doc = piece(
    {
      left: side([0, 40]),
      right: side([440, 480]),
      rail: board('x', [40, 440], [10, 30], [300, 380], { ...arched, copies: [{ row: 'y', count: 3, step: '35' }] }),
    },
    {
      ends: joint(
        'mortise_tenon',
        [
          { enter: 'rail:*', into: 'left' },
          { enter: 'rail:*', into: 'right' },
        ],
        { length: '20', width: '30', drop: '0' },
      ),
    },
  );
  expect(findingsOf(doc, 1).flatMap((f) => (f.rule === 'wrong-way' ? [f.parts] : []))).toEqual([['rail:1', 'rail:2', 'rail:3']]);
});
test('none of the pieces kept for tests is told of but for what is so', () => {
  const folder = new URL('../fixtures/', import.meta.url);
  const said = readdirSync(folder)
    .filter((f) => f.endsWith('.json') && !/boards|circle|hostile|order/.test(f))
    .flatMap((f) => {
      const doc: unknown = JSON.parse(fixtureText(f.replace('.json', '')));
      return findingsOf(doc, 1)
        .filter((x) => x.rule === 'wrong-way' || x.rule === 'mirrored-pair')
        .map((x) => `${f} ${x.key}`);
    });
  expect(said).toEqual([]);
});
