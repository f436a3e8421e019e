import { seasonSettings } from '../drawer/settings.ts';
import { frameSettings } from '../frame-panel/settings.ts';
import type { Settings } from '../kit/maker.ts';
import type { Values } from '../kit/settings.ts';

const { driest: _dry, ...season } = seasonSettings;
export const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'door' },
  build: {
    kind: 'choice',
    words: 'how it is built',
    initial: 'framed',
    options: { framed: 'frame and panel', solid: 'boards glued up, the grain along its hinges' },
  },
  lies: {
    kind: 'choice',
    words: 'where it lies',
    initial: 'inset',
    options: { inset: 'inside the opening, flush', overlaid: 'over the front of the case' },
  },
  hung: {
    kind: 'choice',
    words: 'where it is hung',
    initial: 'left',
    options: {
      left: 'at the left',
      right: 'at the right',
      bottom: 'at the bottom, a flap that falls',
      top: 'at the top, a flap that lifts',
    },
  },
  post: { kind: 'part', words: 'part that it hangs on', initial: '' },
  gap: { kind: 'length', words: 'gap round it on the day', initial: { mm: '1 mm', in: '3/64 in' }, least: 0.3, most: 4 },
  over: {
    kind: 'length',
    words: 'how far an overlaid door covers the case at its other edges',
    initial: { mm: '15 mm', in: '5/8 in' },
    least: 2,
    most: 60,
  },
  hinges: { kind: 'count', words: 'number of hinges', initial: '2', least: 2, most: 6 },
  ...frameSettings,
  ...season,
} as const satisfies Settings;
export type DoorSettings = Values<typeof settings>;
