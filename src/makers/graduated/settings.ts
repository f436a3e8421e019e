import { boxSettings, runnerSettings } from '../drawer/settings.ts';
import type { Settings } from '../kit/maker.ts';
import type { Values } from '../kit/settings.ts';

export const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'stack' },
  count: { kind: 'count', words: 'number of rooms one under the other', initial: '4', least: 2, most: 20 },
  rule: {
    kind: 'choice',
    words: 'how the heights go',
    initial: 'step',
    options: {
      equal: 'all equal',
      step: 'each one step higher than the one above',
      ratio: 'each by one ratio higher than the one above',
      chosen: 'as written',
    },
  },
  step: { kind: 'length', words: 'step', initial: { mm: '25 mm', in: '1 in' }, least: 0 },
  ratio: { kind: 'number', words: 'ratio', initial: '1.15', least: 1, most: 3 },
  heights: { kind: 'lengths', words: 'heights from the top, with commas; "*" takes the rest', initial: '' },
  dividers: {
    kind: 'choice',
    words: 'dividers',
    initial: 'shelves',
    options: { shelves: 'whole shelves, housed', rails: 'front rails, tenoned' },
  },
  divider_wood: { kind: 'wood', words: 'wood of the dividers', initial: 'oak' },
  divider_thick: { kind: 'length', words: 'thickness of the dividers', initial: { mm: '20 mm', in: '3/4 in' }, least: 6, most: 60 },
  rail_deep: { kind: 'length', words: 'depth of front rails', initial: { mm: '60 mm', in: '2-1/2 in' }, least: 40, most: 150 },
  stop: { kind: 'length', words: 'how far housings stop short of the front', initial: { mm: '10 mm', in: '3/8 in' }, least: 3, most: 40 },
  side_left: { kind: 'part', words: 'case side at the left', initial: '' },
  side_right: { kind: 'part', words: 'case side at the right', initial: '' },
  rail_below: { kind: 'part', words: 'rail or bottom under the lowest', initial: '' },
  fill: { kind: 'choice', words: 'in each room', initial: 'nothing', options: { nothing: 'nothing, it stays open', drawers: 'a drawer' } },
  ...boxSettings,
  ...runnerSettings,
  stops: { kind: 'choice', words: 'stops for the drawers', initial: 'no', options: { no: 'none', yes: 'two for each' } },
} as const satisfies Settings;
export type GraduatedSettings = Values<typeof settings>;
