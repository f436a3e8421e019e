/** Pegs of two rails that meet in one leg: that cross each other, that cut the other tenon, and how they are set apart. */
import { beforeAll, expect, test } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { blockSpan, rodInBlock, rodSpan, rodsBite } from '../../src/fits/rods.ts';
import { board, findingsOf, joint, piece, tryRule } from '../support/checks.ts';

beforeAll(() => loadKernel());

/** A leg 60 square with rails 24 thick, 4 in from its outer faces, on its right and its back: tenons 8 thick from 12 to 20. */
const corner = (joints: Record<string, object>): object =>
  piece(
    {
      leg: board('z', [0, 60], [0, 60], [0, 500]),
      long: board('x', [60, 400], [4, 28], [300, 390]),
      short: board('y', [4, 28], [60, 400], [300, 390]),
    },
    joints,
  );
const tenon = { thickness: '8', width: '48', drop: '0', length: '30', spare: '3' };
const places = [
  { enter: 'long', into: 'leg' },
  { enter: 'short', into: 'leg' },
];
/** One peg of 6 in each tenon, 12 behind the face: its middle 48 from the outer faces, and so long. */
const pegged = (set: object): object =>
  corner({ corners: joint('mortise_tenon', places, { ...tenon, pegs: '1', peg_diameter: '6', peg_back: '12', ...set }) });

tryRule('pegs-cross', {
  quiet: {
    // They end 32 in; the other stands from 45 on.
    'short pegs pass': pegged({}),
    'through pegs, 7 apart in height': pegged({ peg_length: '60', peg_stagger: '7' }),
    'one peg that is meant to hold both': corner({
      corners: joint('mortise_tenon', places, { ...tenon, length: '40', end: 'mitred' }),
      pin: joint('peg', [{ through: ['leg', 'long', 'short'] }], { diameter: '6', back: '20' }),
    }),
  },
  speaks: {
    // Both middles at 345 up: they stand in each other by the whole diameter.
    'through pegs at one height': {
      in: pegged({ peg_length: '60' }),
      parts: ['leg', 'corners/1/peg1', 'corners/2/peg1'],
      measured: 6,
      cure: 'Set the peg in the long {mm:8} higher',
    },
    '4 apart in height': {
      in: pegged({ peg_length: '60', peg_stagger: '4' }),
      parts: ['leg', 'corners/1/peg1', 'corners/2/peg1'],
      measured: 2,
    },
    'pegs that are joints of their own': {
      in: corner({
        long_end: joint('mortise_tenon', [places[0] ?? {}], tenon),
        short_end: joint('mortise_tenon', [places[1] ?? {}], tenon),
        a: joint('peg', [{ through: ['leg', 'long'] }], { diameter: '6', back: '12' }),
        b: joint('peg', [{ through: ['leg', 'short'] }], { diameter: '6', back: '12' }),
      }),
      parts: ['leg', 'a/1/peg1', 'b/1/peg1'],
      measured: 6,
      cure: 'Set the peg in the leg {mm:8} higher',
    },
  },
});
tryRule('peg-cuts-tenon', {
  quiet: {
    'the tenon ends before it': pegged({ peg_length: '60', peg_stagger: '7' }),
    'a through tenon beside it': corner({
      long_end: joint('mortise_tenon', [places[0] ?? {}], { ...tenon, pegs: '1', peg_diameter: '6', peg_back: '12', peg_length: '30' }),
      short_end: joint('mortise_tenon', [places[1] ?? {}], { ...tenon, length: '30' }),
    }),
  },
  speaks: {
    // The long rail's peg, set 38 behind the face, stands from 19 to 25; the short rail's tenon from 18 to 26 swallows its 6.
    'set far back it strikes the other tenon': {
      in: corner({
        long_end: joint('mortise_tenon', [places[0] ?? {}], {
          ...tenon,
          length: '44',
          offset: '-6',
          pegs: '1',
          peg_diameter: '6',
          peg_back: '38',
          peg_length: '57',
        }),
        short_end: joint('mortise_tenon', [places[1] ?? {}], { ...tenon, offset: '6', length: '38' }),
      }),
      parts: ['leg', 'long_end/1/peg1', 'short'],
      measured: 6,
      cure: 'Let the length and the place of the pegs follow the tenon',
      alone: false,
    },
  },
});
test('what the pegs’ check tells the solids do not tell again', () => {
  const rules = findingsOf(pegged({ peg_length: '60' })).map((f) => f.rule);
  expect(rules).toContain('pegs-cross');
  expect(rules).not.toContain('overlap');
});
test('rods: crossing, passing, one above the other, and in a block; worked by hand', () => {
  const a = { at: [0, 0, 0], along: [1, 0, 0], long: 40, r: 3 } as const;
  const across = (z: number, y = -20) => ({ at: [20, y, z], along: [0, 1, 0], long: 40, r: 3 }) as const;
  expect(rodsBite(a, across(0))).toBeCloseTo(6, 9);
  expect(rodsBite(a, across(4))).toBeCloseTo(2, 9);
  expect(rodsBite(a, across(6))).toBeCloseTo(0, 9);
  // Its end stops 2 short of the other's side.
  expect(rodsBite(a, across(0, 5))).toBeCloseTo(-2, 9);
  expect(rodsBite(a, { ...a, at: [0, 5, 0] })).toBeCloseTo(1, 9);
  expect(rodSpan(a, [0, 0, 1])).toEqual([-3, 3]);
  const box = {
    points: [10, 20].flatMap((x) => [1, 9].flatMap((y) => [-5, 5].map((z) => [x, y, z] as const))),
    normals: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
  } as const;
  expect(blockSpan(box, [0, 1, 0])).toEqual([1, 9]);
  expect(rodInBlock(a, box)).toBeCloseTo(2, 9);
  expect(rodInBlock({ ...a, at: [0, -2.5, 0] }, box)).toBeCloseTo(-0.5, 9);
});
