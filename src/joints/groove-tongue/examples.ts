import type { Example } from '../family.ts';

/** Frame members 45 wide and 18 thick round an opening of 200 x 300; the panel is dimensioned to touch them. */
const panel = { wood: 'oak', grain: 'z', left: '0', width: '200', middepth: '0', depth: '6', bottom: '0', height: '300' };
const stile = {
  wood: 'oak',
  grain: 'z',
  copies: [{ mirror: 'x', at: '100', names: ['left', 'right'] }],
  right: '0',
  width: '45',
  middepth: '0',
  depth: '18',
  bottom: '-45',
  height: '390',
};
const rail = {
  wood: 'oak',
  grain: 'x',
  copies: [{ mirror: 'z', at: '150', names: ['lower', 'upper'] }],
  left: '0',
  width: '200',
  middepth: '0',
  depth: '18',
  top: '0',
  height: '45',
};
const bottom = { wood: 'pine', grain: 'x', left: 'side.right', width: '300', front: '12', depth: '288', bottom: '10', height: '6' };
const side = { wood: 'oak', grain: 'y', left: '0', width: '12', front: '0', depth: '300', bottom: '0', height: '90' };

const first = { wood: 'oak', grain: 'z', left: '0', width: '100', front: '0', depth: '12', bottom: '0', height: '600' };
const second = { wood: 'oak', grain: 'z', left: 'first.right', width: '92', front: '0', depth: '12', bottom: '0', height: '600' };

export const examples: readonly Example[] = [
  {
    name: 'floating panel',
    words: 'A thin solid panel held all round in the grooves of a frame, free to move.',
    document: {
      dryfit: 1,
      title: 'Panel in a frame',
      units: 'mm',
      parts: { panel, stile, rail },
      joints: {
        held: {
          as: 'groove_tongue@1',
          places: [
            { enter: 'panel', into: 'stile:*' },
            { enter: 'panel', into: 'rail:*' },
          ],
          set: { depth: '9', spare: '2', corners: 'all' },
        },
      },
    },
    // Tongues 9 - 2 = 7 all round: (214 x 314 - 200 x 300) x 6 = 43 176. Grooves 6 x 9: 390 long in a stile, 200 in a rail.
    removed: { 'stile:left': 21060, 'stile:right': 21060, 'rail:lower': 10800, 'rail:upper': 10800 },
    added: { panel: 43176 },
    planar: true,
  },
  {
    name: 'drawer bottom',
    words: 'A thin bottom in the groove of a drawer side, stopped so that it does not show at the front.',
    document: {
      dryfit: 1,
      title: 'Bottom in a drawer side',
      units: 'mm',
      parts: { bottom, side },
      joints: {
        held: {
          as: 'groove_tongue@1',
          places: [{ enter: 'bottom', into: 'side' }],
          set: { depth: '6', spare: '1', stopped: 'front', stop: '8', corners: 'front' },
        },
      },
    },
    // Groove from 8 behind the front: 292 x 6 x 6 = 10 512. The tongue, 5 long, would begin at 12 - 5 = 7; the stop and 1 of play leave it from 9: 291 x 6 x 5.
    removed: { side: 10512 },
    added: { bottom: 8730 },
    planar: true,
  },
  {
    name: 'back boards',
    words: 'Two boards of the back of a case, tongued and grooved, dry, with a gap in which they move.',
    document: {
      dryfit: 1,
      title: 'Boards of a back',
      units: 'mm',
      parts: { first, second },
      joints: {
        seam: {
          as: 'groove_tongue@1',
          places: [{ enter: 'second', into: 'first' }],
          set: { tongue: '4', depth: '7', spare: '2', clear: '2' },
        },
      },
    },
    // Groove 4 x 7 x 600 = 16 800. Tongue 7 - 2 = 5 long: 4 x 5 x 600 = 12 000; shoulders planed back 2 beside it: 8 x 2 x 600 = 9 600.
    removed: { first: 16800, second: 9600 },
    added: { second: 12000 },
    planar: true,
  },
];
