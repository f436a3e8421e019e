/** Wood left beside the cuts: between two joints of one part, beside a taper, at the bottom of a blind cut. */
import { beforeAll } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board, joint, piece, tryRule } from '../support/checks.ts';

beforeAll(() => loadKernel());

/** A post 45 square with two rails one above the other; tenons 10 thick and 40 wide; `apart` is the wood between the rails. */
const ladder = (apart: number): object =>
  piece(
    {
      post: board('z', [0, 45], [0, 45], [0, 600]),
      lower: board('x', [45, 400], [10, 35], [200, 260]),
      upper: board('x', [45, 400], [10, 35], [260 + apart, 320 + apart]),
    },
    {
      low: joint('mortise_tenon', [{ enter: 'lower', into: 'post' }], {
        thickness: '8',
        width: '56',
        drop: '0',
        length: '20',
        haunch: 'none',
      }),
      high: joint('mortise_tenon', [{ enter: 'upper', into: 'post' }], {
        thickness: '8',
        width: '56',
        drop: '0',
        length: '20',
        haunch: 'none',
      }),
    },
  );
/** A divider `thick` thick with a shelf housed 7 deep in either face, at the same height. */
const divider = (thick: number): object =>
  piece(
    {
      side: board('z', [0, thick], [0, 250], [0, 700]),
      left_shelf: board('x', [-300, 0], [0, 250], [300, 318]),
      right_shelf: board('x', [thick, 300], [0, 250], [300, 318]),
    },
    {
      one: joint('housing', [{ enter: 'left_shelf', into: 'side' }], { depth: '7' }),
      two: joint('housing', [{ enter: 'right_shelf', into: 'side' }], { depth: '7' }),
    },
  );
/** Two rails that enter a leg from two sides at one height. */
const corner = piece(
  {
    leg: board('z', [0, 45], [0, 45], [0, 600]),
    a: board('x', [45, 400], [10, 35], [500, 600]),
    b: board('y', [10, 35], [45, 400], [500, 600]),
  },
  {
    corners: joint('mortise_tenon', [
      { enter: 'a', into: 'leg' },
      { enter: 'b', into: 'leg' },
    ]),
  },
);
// Mortises 56 high in rails 60 high, so 2 + 2 more than what lies between the rails.
tryRule('wall-between', {
  quiet: {
    '4 left': ladder(0),
    '9 left': ladder(5),
    'housings back to back, 4 left': divider(18),
    'mortises that come near at a corner': corner,
  },
  speaks: {
    '3 left': {
      in: piece(
        {
          post: board('z', [0, 45], [0, 45], [0, 600]),
          lower: board('x', [45, 400], [10, 35], [200, 260]),
          upper: board('x', [45, 400], [10, 35], [260, 320]),
        },
        {
          low: joint('mortise_tenon', [{ enter: 'lower', into: 'post' }], { thickness: '8', width: '56', drop: '0', length: '20' }),
          high: joint('mortise_tenon', [{ enter: 'upper', into: 'post' }], { thickness: '8', width: '56', drop: '1', length: '20' }),
        },
      ),
      parts: ['post', 'lower', 'upper'],
      measured: 3,
      cure: 'Set the end of the upper {mm:1} higher',
      alone: false,
    },
    'housings back to back, 2 left': { in: divider(16), parts: ['side', 'left_shelf', 'right_shelf'], measured: 2, alone: false },
  },
});

/** A leg 45 square, 600 long, tapered on its right face from `start` to a foot of 25; a rail enters from behind, its tenon 8 thick in the middle. */
const tapered = (start: number, foot = '25'): object =>
  piece(
    {
      leg: board('z', [0, 45], [0, 45], [0, 600], { shape: [{ as: 'taper@1', faces: ['right'], start: String(start), foot }] }),
      rail: board('y', [10, 35], [45, 400], [300, 340]),
    },
    {
      end: joint('mortise_tenon', [{ enter: 'rail', into: 'leg' }], { thickness: '8', width: '30', drop: '0', length: '25', offset: '5' }),
    },
  );
// The cheek lies at x = 22.5 + 5 + 4 = 31.5 and the mortise's lower end at z = 305.
const wallAt = (start: number, foot: number): number => {
  const slope = (45 - foot) / start;
  return (45 - slope * (start - 305) - 31.5) * Math.cos(Math.atan(slope));
};
tryRule('wall-at-shape', {
  quiet: {
    'the taper starts below': tapered(290),
    'the taper leaves 9.9 beside it': tapered(400),
    'a straight leg': piece(
      { leg: board('z', [0, 45], [0, 45], [0, 600]), rail: board('y', [10, 35], [45, 400], [300, 340]) },
      { end: joint('mortise_tenon', [{ enter: 'rail', into: 'leg' }]) },
    ),
  },
  speaks: {
    'a strong taper leaves 3.4': { in: tapered(600, '25'), parts: ['leg', 'rail'], measured: wallAt(600, 25) },
    'a stronger one comes through': { in: tapered(600, '10'), parts: ['leg', 'rail'], measured: 0, alone: false },
  },
});

/** A rail into a post 40 deep, with the tenon's length given. */
const deep = (length: string, set: object = {}): object =>
  piece(
    { post: board('z', [0, 40], [0, 40], [0, 500]), rail: board('x', [40, 400], [10, 30], [200, 260]) },
    { end: joint('mortise_tenon', [{ enter: 'rail', into: 'post' }], { length, spare: '3', ...set }) },
  );
tryRule('mortise-too-deep', {
  quiet: { '6 left under the mortise': deep('31'), 'through on purpose': deep('40', { through: 'yes' }) },
  speaks: {
    '1 left': { in: deep('36'), parts: ['post', 'rail'], measured: 39 },
    'out at the back': { in: deep('39'), parts: ['post', 'rail'], measured: 42, alone: false },
  },
});
const housed = (depth: string): object =>
  piece(
    { side: board('z', [0, 20], [0, 250], [0, 700]), shelf: board('x', [20, 300], [0, 250], [300, 318]) },
    { h: joint('housing', [{ enter: 'shelf', into: 'side' }], { depth }) },
  );
tryRule('housing-too-deep', {
  quiet: { 'a third': housed('20/3') },
  speaks: { half: { in: housed('10'), parts: ['side', 'shelf'], measured: 10 } },
});
