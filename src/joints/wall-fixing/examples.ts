import type { Example } from '../family.ts';

/** Stone stands for any wall that is no wood: it has no grain, is not cut from boards, and stays where it is. */
const wall = { wood: 'stone', left: '-200', width: '1200', front: '300', depth: '100', bottom: '0', height: '2000', loose: true };
const rail = { wood: 'pine', grain: 'x', left: '0', width: '764', back: 'wall.front', depth: '18', bottom: '1700', height: '70' };
const CLEARANCE = Math.PI * 2.7 ** 2;
export const examples: readonly Example[] = [
  {
    name: 'rail under the top shelf',
    words: 'The rail at the back of a bookcase held to a wall by three screws with washers.',
    document: {
      dryfit: 1,
      title: 'Fixed to the wall',
      units: 'mm',
      parts: { rail, wall },
      joints: {
        fixed: {
          as: 'wall_fixing@1',
          places: [{ rail: 'rail', wall: 'wall' }],
          set: {
            count: '3',
            inset: '60',
            diameter: '5',
            clearance: '5.4',
            pilot: '3.5',
            length: '60',
            pilot_depth: '47',
            sink: '0',
            head: 'round',
          },
        },
      },
    },
    // Three holes through 18 of rail; 60 less 18 is 42 in the wall, the holes there 5 deeper.
    removed: { rail: 3 * 18 * CLEARANCE, wall: 3 * 47 * Math.PI * 1.75 ** 2 },
    planar: false,
  },
];
