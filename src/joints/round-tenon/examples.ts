import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const board = { wood: 'ash', grain: 'x', left: '0', width: '200', front: '0', depth: '200', bottom: '400', height: '40' };
const leg = {
  wood: 'ash',
  grain: 'z',
  midwidth: 'board.midwidth',
  width: '40',
  middepth: 'board.middepth',
  depth: '40',
  bottom: '0',
  top: 'board.bottom',
};
const piece = (title: string, set: Record<string, string>, parts: Record<string, Json> = { board, leg }) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { stub: { as: 'round_tenon@1', places: [{ enter: 'leg', into: 'board' }], set } },
});
const round = (d: number, l: number): number => ((Math.PI * d * d) / 4) * l;

export const examples: readonly Example[] = [
  {
    name: 'blind',
    words: 'A square leg with a round tenon 24 mm thick, 25 mm into a board.',
    document: piece('Leg in a board', { diameter: '24', length: '25', spare: '2' }),
    removed: { board: round(24, 27) },
    added: { leg: round(24, 25) },
    planar: false,
  },
  {
    name: 'through and wedged',
    words: 'The tenon comes through and is spread by a wedge across the board’s grain.',
    document: piece('Wedged leg', { diameter: '24', through: 'yes', wedge: 'across', wedge_thick: '4', kerf: '1' }),
    // Kerf: two thirds of 40 long, 1 wide at the root and 4 at the end, across the round. A band w wide over the middle of a round
    // of radius r holds 2rw - w³/12r; with w from 1 to 4 that is on average 60 - 0.148 = 59.852, times 26.667 = 1 596.1.
    removed: { board: round(24, 40) },
    added: { leg: round(24, 40) - 1596.1 },
    planar: false,
  },
  {
    name: 'leaning 15 degrees',
    words: 'A leg that leans out under a seat: the shoulder takes the slant, the end is trimmed flush with the seat.',
    document: piece(
      'Leaning leg',
      { diameter: '24', through: 'yes' },
      {
        board,
        leg: {
          wood: 'ash',
          grain: 'z',
          at: ['100', '100', '400'],
          turn: [['x', '15 deg']],
          midwidth: '0',
          width: '40',
          middepth: '0',
          depth: '40',
          top: { meets: 'board.bottom' },
          bottom: '-300',
        },
      },
    ),
    // Along the axis the board is 40 / cos 15° = 41.411 thick, the same on average over the round.
    removed: { board: round(24, 41.411) },
    added: { leg: round(24, 41.411) },
    planar: false,
  },
  {
    name: 'rung in a turned leg',
    words: 'A turned rung enters a round leg: its shoulder cannot close, so it is set back until nothing bites.',
    document: piece(
      'Rung',
      { diameter: '12', length: '20', spare: '2' },
      {
        board: {
          wood: 'ash',
          grain: 'z',
          midwidth: '0',
          width: '40',
          middepth: '0',
          depth: '40',
          bottom: '0',
          height: '400',
          shape: [{ as: 'turned@1' }],
        },
        leg: {
          wood: 'ash',
          grain: 'x',
          left: '20',
          width: '200',
          middepth: '0',
          depth: '20',
          midheight: '200',
          height: '20',
          shape: [{ as: 'turned@1' }],
        },
      },
    ),
    // The leg's surface is a cylinder of radius 20, flat against the rung's end only along one line: nothing stands past x = 20, so no setback.
    // Hole from the surface to x = -2: the round less the sliver beyond the surface: integral of 20 - sqrt(400 - y²) over the hole's
    // circle = (A / (2·20))·mean y², mean y² = r²/4 = 9: 113.1 x 9 / 40 = 25.5.
    removed: { board: round(12, 22) - 25.5 },
    added: { leg: round(12, 20) },
    planar: false,
  },
];
