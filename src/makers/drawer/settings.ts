import { isSoftwood } from '../../wood/woods.ts';
import { seasonShare } from '../../wood/season.ts';
import { bounds } from '../kit/bounds.ts';
import type { Opening, Settings, Trouble } from '../kit/maker.ts';
import type { Values } from '../kit/settings.ts';

/** The day's moisture content and those of the wettest and the driest season: makers that leave gaps have them. */
export const seasonSettings = {
  now: { kind: 'percent', words: 'moisture content of the wood on the day', initial: '8', least: 4, most: 20 },
  wettest: { kind: 'percent', words: 'moisture content in the wettest season', initial: '12', least: 4, most: 20 },
  driest: { kind: 'percent', words: 'moisture content in the driest season', initial: '6', least: 4, most: 20 },
} as const satisfies Settings;

/** Settings of a drawer whatever it runs on: graduated drawers share them. */
export const boxSettings = {
  front_wood: { kind: 'wood', words: 'wood of the front', initial: 'oak' },
  front_thick: { kind: 'length', words: 'thickness of the front', initial: { mm: '20 mm', in: '3/4 in' }, least: 9, most: 40 },
  side_wood: { kind: 'wood', words: 'wood of sides and back', initial: 'oak' },
  side_thick: { kind: 'length', words: 'thickness of sides and back', initial: { mm: '12 mm', in: '1/2 in' }, least: 6, most: 25 },
  bottom_wood: { kind: 'wood', words: 'wood or sheet of the bottom', initial: 'oak' },
  bottom_thick: { kind: 'length', words: 'thickness of the bottom', initial: { mm: '6 mm', in: '1/4 in' }, least: 3, most: 15 },
  widest: { kind: 'length', words: 'widest board that is glued up', initial: { mm: '120 mm', in: '5 in' }, least: 40 },
  front_corner: {
    kind: 'choice',
    words: 'corners at the front',
    initial: 'lapped',
    options: { lapped: 'lapped (half-blind) dovetails', through: 'dovetails that come through' },
  },
  up: {
    kind: 'length',
    words: 'how far the bottom lies above the lower edges',
    initial: { mm: '10 mm', in: '3/8 in' },
    least: 5,
    most: 30,
  },
  lower: {
    kind: 'length',
    words: 'how much lower than the sides the back stands',
    initial: { mm: '3 mm', in: '1/8 in' },
    least: 0.5,
    most: 20,
  },
  side_gap: { kind: 'length', words: 'air at each side', initial: { mm: '0.5 mm', in: '1/64 in' }, least: 0.1, most: 5 },
  case_wood: { kind: 'wood', words: 'wood of the case round it', initial: 'oak' },
  ...seasonSettings,
} as const satisfies Settings;
/** Settings of what it runs on, where that is no whole shelf. */
export const runnerSettings = {
  runner_wood: { kind: 'wood', words: 'wood of runners, kickers, guides and stops', initial: 'oak' },
  runner_wide: {
    kind: 'length',
    words: 'width of runners and kickers inside the space',
    initial: { mm: '40 mm', in: '1-1/2 in' },
    least: 25,
    most: 100,
  },
  runner_thick: { kind: 'length', words: 'thickness of runners and kickers', initial: { mm: '18 mm', in: '3/4 in' }, least: 12, most: 40 },
} as const satisfies Settings;
export const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'drawer' },
  ...boxSettings,
  runs_on: {
    kind: 'choice',
    words: 'what it runs on',
    initial: 'shelf',
    options: { shelf: 'a shelf or divider over the whole depth', runners: 'runners behind a front rail' },
  },
  rail_below: { kind: 'part', words: 'rail or shelf under its front', initial: '' },
  rail_above: { kind: 'part', words: 'rail or top over its front', initial: '' },
  side_left: { kind: 'part', words: 'case side at its left', initial: '' },
  side_right: { kind: 'part', words: 'case side at its right', initial: '' },
  ...runnerSettings,
  kickers: {
    kind: 'choice',
    words: 'kickers over the sides',
    initial: 'no',
    options: { no: 'none', yes: 'two, so that it does not tip when drawn out' },
  },
  stops: { kind: 'choice', words: 'stops', initial: 'no', options: { no: 'none', yes: 'two, behind the lower edge of the front' } },
} as const satisfies Settings;
export type BoxSettings = Values<typeof boxSettings>;
export type RunnerSettings = BoxSettings & Values<typeof runnerSettings>;
export type DrawerMakerSettings = Values<typeof settings>;

/** Air above even in the wettest season, and behind in the driest, mm; common practice. */
export const FREE_ABOVE = 0.5;
/** Least opening, and least room above the bottom, mm. */
const LEAST_HIGH = 40;
const ABOVE = 20;

/** Growth of a front's height from the day to the wettest season, as a share of it. */
export const rise = (s: BoxSettings): number => Math.max(0, seasonShare(s.front_wood, s.now, s.wettest));
/** How much the case loses of its depth from the day to the driest season, as a share of it. */
export const shrink = (s: BoxSettings): number => Math.max(0, seasonShare(s.case_wood, s.driest, s.now));

/** What the opening does not allow; also tried on each opening of a graduated set. */
export function checkBox(space: Pick<Opening, 'width' | 'depth' | 'height' | 'units'>, s: BoxSettings): Trouble[] {
  const { add, all, most, least } = bounds(space.units, boxSettings);
  least('wettest', 'the wettest season is not drier than the day', s.now, s.wettest, String(Math.ceil(s.now * 10) / 10));
  most('driest', 'the driest season is not wetter than the day', s.now, s.driest, String(Math.floor(s.now * 10) / 10));
  // Sides grow in thickness where the opening does not: radial or tangential, by how the boards were sawn; the greater counts.
  const swell = s.side_thick.mm * Math.max(0, seasonShare(s.side_wood, s.now, s.wettest));
  least('side_gap', 'the sides thicken in the wettest season and would bind', swell + 0.1, s.side_gap.mm);
  most('side_thick', 'the sides would fill the opening', (space.width - 60) / 4, s.side_thick.mm);
  most('front_thick', 'the drawer would be all front', space.depth / 5, s.front_thick.mm);
  most('bottom_thick', 'the grooves would weaken the sides', s.side_thick.mm, s.bottom_thick.mm);
  const tail = s.front_thick.mm * (s.front_corner === 'lapped' ? 0.7 : 1);
  const half = tail / (isSoftwood(s.side_wood) ? 6 : 8) + 3;
  least('up', 'a tail must cover the groove of the bottom', half, s.up.mm);
  const taken = FREE_ABOVE + s.bottom_thick.mm + s.lower.mm + ABOVE;
  const need = Math.max(LEAST_HIGH, (half + taken) / (1 - rise(s)));
  if (space.height >= need) most('up', 'nothing is left above the bottom', space.height * (1 - rise(s)) - taken, s.up.mm);
  if (space.height < need)
    add({ setting: '', cannot: `an opening this low holds no such drawer: {mm:${need}} at least`, limit: need, asked: space.height });
  return all();
}
