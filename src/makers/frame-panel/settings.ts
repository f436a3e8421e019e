import { isWood } from '../../wood/woods.ts';
import { bounds } from '../kit/bounds.ts';
import type { Opening, Settings, Trouble } from '../kit/maker.ts';
import type { Values } from '../kit/settings.ts';

/** Settings of the frame itself: a framed door has them too. */
export const frameSettings = {
  wood: { kind: 'wood', words: 'wood of the frame', initial: 'oak' },
  thick: { kind: 'length', words: 'thickness of the frame', initial: { mm: '20 mm', in: '3/4 in' }, least: 12, most: 60 },
  stile: { kind: 'length', words: 'width of the stiles', initial: { mm: '55 mm', in: '2 in' }, least: 25 },
  rail: { kind: 'length', words: 'width of the upper rail', initial: { mm: '55 mm', in: '2 in' }, least: 25 },
  low_rail: { kind: 'length', words: 'width of the lower rail', initial: { mm: '55 mm', in: '2 in' }, least: 25 },
  tenons: {
    kind: 'choice',
    words: 'tenons',
    initial: 'haunched',
    options: { haunched: 'haunched, two thirds into the stile', stub: 'stub, as deep as the groove' },
  },
  panel_wood: { kind: 'wood', words: 'wood or sheet of the panel', initial: 'oak' },
  panel_thick: { kind: 'length', words: 'thickness of the panel', initial: { mm: '8 mm', in: '5/16 in' }, least: 3, most: 40 },
  panel_grain: { kind: 'choice', words: 'grain of the panel', initial: 'upright', options: { upright: 'upright', level: 'level' } },
  groove: { kind: 'length', words: 'depth of the grooves', initial: { mm: '10 mm', in: '3/8 in' }, least: 6, most: 25 },
  groove_wide: { kind: 'length', words: 'width of the grooves', initial: { mm: '6 mm', in: '1/4 in' }, least: 3, most: 20 },
  widest: { kind: 'length', words: 'widest board that is glued up', initial: { mm: '120 mm', in: '5 in' }, least: 40 },
} as const satisfies Settings;
export const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'panelling' },
  ...frameSettings,
} as const satisfies Settings;
export type FrameSettings = Values<typeof frameSettings>;

/** Least clear panel, mm. */
const CLEAR = 40;
/** The panel still stands this deep in its groove at its driest, and the room on each side: 1/8 in for 12 in of width, half of it each, 1.5 at least (woodworkingtips.com). */
const ENGAGED = 3;
const SHARE = 3.175 / 304.8 / 2;
export const roomBeside = (across: number): number => Math.max(1.5, Math.round(across * SHARE * 10) / 10);
/** Play of a panel that does not grow: half of 1/16 in on each side (woodmagazine.com, frame-and-panel doors). */
export const SHEET_PLAY = 25.4 / 32;

type Frame = Pick<Opening, 'width' | 'height' | 'units'>;
/** Width or height of the panel across its grain, between the frame. */
const acrossPanel = (f: Frame, s: FrameSettings): number =>
  s.panel_grain === 'upright' ? f.width - 2 * s.stile.mm : f.height - s.rail.mm - s.low_rail.mm;

/** What a frame of this size does not allow. */
export function checkFrame(f: Frame, s: FrameSettings): Trouble[] {
  const { all, most, least } = bounds(f.units, frameSettings);
  most('stile', 'the stiles leave no panel between them', (f.width - CLEAR) / 2, s.stile.mm);
  const tall = f.height - CLEAR;
  if (s.rail.mm + s.low_rail.mm > tall) {
    most('rail', 'the rails leave no panel between them', Math.max(tall / 2, tall - s.low_rail.mm), s.rail.mm);
    most('low_rail', 'the rails leave no panel between them', Math.max(tall / 2, tall - s.rail.mm), s.low_rail.mm);
  }
  most('groove_wide', 'grooves take half of the thickness at most', s.thick.mm / 2, s.groove_wide.mm);
  most('panel_thick', 'the panel is no thicker than its frame', s.thick.mm, s.panel_thick.mm);
  most('groove', 'grooves take half of the narrowest member at most', Math.min(s.stile.mm, s.rail.mm, s.low_rail.mm) / 2, s.groove.mm);
  most('groove_wide', 'the groove is no wider than the panel is thick', s.panel_thick.mm, s.groove_wide.mm);
  if (isWood(s.panel_wood))
    least('groove', 'so wide a panel of solid wood shrinks out of the grooves', ENGAGED + 2 * roomBeside(acrossPanel(f, s)), s.groove.mm);
  return all();
}
