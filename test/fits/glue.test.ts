/** Glue where wood must be free to move. */
import { beforeAll } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board, joint, piece, tryRule } from '../support/checks.ts';

beforeAll(() => loadKernel());

/** A frame of two stiles and two rails round a panel 200 wide and 300 high. `hold` is said of the grooves at the stiles and at the rails. */
const door = (stiles: string, rails: string, panel: object = {}): object =>
  piece(
    {
      left_stile: board('z', [0, 50], [0, 20], [0, 400]),
      right_stile: board('z', [250, 300], [0, 20], [0, 400]),
      low_rail: board('x', [50, 250], [0, 20], [0, 50]),
      high_rail: board('x', [50, 250], [0, 20], [350, 400]),
      panel: board('z', [50, 250], [6, 14], [50, 350], panel),
    },
    {
      corners: joint(
        'mortise_tenon',
        [
          { enter: 'low_rail', into: 'left_stile' },
          { enter: 'low_rail', into: 'right_stile' },
          { enter: 'high_rail', into: 'left_stile' },
          { enter: 'high_rail', into: 'right_stile' },
        ],
        {
          length: '30',
          thickness: '6',
          haunch: 'square',
        },
      ),
      beside: joint(
        'groove_tongue',
        [
          { enter: 'panel', into: 'left_stile' },
          { enter: 'panel', into: 'right_stile' },
        ],
        { hold: stiles },
      ),
      ends: joint('groove_tongue', [{ enter: 'panel', into: 'low_rail' }], { hold: rails }),
      top: joint('groove_tongue', [{ enter: 'panel', into: 'high_rail' }], { hold: 'loose' }),
    },
  );
tryRule('must-not-glue', {
  quiet: { 'a loose panel': door('loose', 'loose'), 'plywood may be glued all round': door('glued', 'glued', { wood: 'plywood' }) },
  speaks: {
    'glued in at the rail, across its grain': {
      in: door('loose', 'glued'),
      parts: ['panel', 'low_rail'],
      measured: 200,
      cure: 'Leave it without glue',
    },
  },
});
tryRule('panel-held', {
  quiet: {
    'a loose panel': door('loose', 'loose'),
    plywood: door('glued', 'loose', { wood: 'plywood' }),
    'boards glued edge to edge, nothing across them': piece(
      {
        a: board('x', [0, 600], [0, 90], [0, 20]),
        b: board('x', [0, 600], [90, 180], [0, 20]),
        c: board('x', [0, 600], [180, 270], [0, 20]),
      },
      {
        seams: joint(
          'groove_tongue',
          [
            { enter: 'b', into: 'a' },
            { enter: 'b', into: 'c' },
          ],
          { hold: 'glued' },
        ),
      },
    ),
  },
  speaks: {
    'glued to both stiles': {
      in: door('glued', 'loose'),
      parts: ['panel', 'left_stile', 'right_stile'],
      measured: 200,
      cure: 'Leave it without glue',
    },
  },
});

/** A rail `high` high between two posts, its tenon as wide as it is. */
const apron = (high: number, set: object = {}): object =>
  piece(
    { post: board('z', [0, 60], [0, 60], [0, 700]), rail: board('x', [60, 500], [15, 45], [300, 300 + high]) },
    {
      end: joint('mortise_tenon', [{ enter: 'rail', into: 'post' }], {
        shoulders: 'broad',
        thickness: '15',
        width: String(high),
        tenons: '1',
        drop: '0',
        ...set,
      }),
    },
  );
tryRule('cross-grain', {
  quiet: {
    'a 100 mm apron': apron(100),
    'a wide one without glue': apron(140, { glue: 'no' }),
    'a shelf 300 deep housed in a side whose width runs the same way': piece(
      { side: board('z', [0, 20], [0, 300], [0, 700]), shelf: board('x', [20, 400], [0, 300], [300, 318]) },
      { h: joint('housing', [{ enter: 'shelf', into: 'side' }]) },
    ),
  },
  speaks: {
    'a 140 mm apron': { in: apron(140), parts: ['post', 'rail'], measured: 140, alone: false },
    'a partition housed across the grain of a bottom': {
      in: piece(
        { bottom: board('x', [0, 500], [0, 300], [0, 18]), wall: board('y', [200, 212], [20, 280], [18, 90]) },
        { h: joint('housing', [{ enter: 'wall', into: 'bottom' }], { depth: '5' }) },
      ),
      parts: ['bottom', 'wall'],
      measured: 260,
      cure: 'Leave it without glue',
    },
    'two tenons on one wide rail count as one': {
      in: twin(),
      parts: ['post', 'rail'],
      measured: 150,
      alone: false,
    },
  },
});
function twin(): object {
  return piece(
    { post: board('z', [0, 60], [0, 60], [0, 700]), rail: board('x', [60, 500], [15, 45], [300, 480]) },
    {
      end: joint('mortise_tenon', [{ enter: 'rail', into: 'post' }], {
        thickness: '15',
        tenons: '2',
        width: '50',
        between: '50',
        drop: '0',
      }),
    },
  );
}

/** A top on a rail, held by wooden buttons. */
const buttoned = (grain: string): object =>
  piece(
    { rail: board('x', [0, 600], [0, 20], [600, 680]), top: board('x', [-50, 650], [-200, 200], [680, 700]) },
    { fix: joint('button', [{ under: 'top', rail: 'rail' }], { grain }) },
  );
tryRule('grain-of-a-button', {
  quiet: { 'from the screw to the tongue': buttoned('along') },
  speaks: {
    'across its tongue': {
      in: buttoned('across'),
      parts: ['rail', 'top'],
      measured: 90,
      cure: 'Let the grain run from the screw to the tongue',
    },
  },
});
