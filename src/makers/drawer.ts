/**
 * Drawer, as the trade builds it, in an opening that it fills.
 *
 *     ┌───────────────┐  back: lower than the sides, above the bottom
 *     │               │  side: tails at both ends
 *     │    bottom     │  grain from side to side; slides in under the back, glued at the front alone
 *     └───────────────┘  front: pins; the tails lapped, so that they do not show
 *
 * The gap above follows the height of the opening: the front grows across its grain from the day's moisture content to the wettest
 * season's. Behind, the case itself grows shorter towards the driest. It runs on a shelf, or on *runners* behind a rail: with *kickers*
 * above, *guides* where the case sides stand off, and *stops* behind the front.
 */
import { drawerBox } from './drawer/box.ts';
import { examples } from './drawer/examples.ts';
import { LEAST_SIDE, type Round, guides, kickers, runners, stopDepth, stopWidth, stops } from './drawer/runners.ts';
import { type BoxSettings, type DrawerMakerSettings, FREE_ABOVE, checkBox, rise, settings, shrink } from './drawer/settings.ts';
import { type Draft, joined, namer, patchesOf } from './kit/draft.ts';
import type { Filled, Maker, Opening, Trouble } from './kit/maker.ts';
import { type Neighbour, isTrouble, neighbourAt } from './kit/neighbours.ts';
import { readSettings } from './kit/settings.ts';
import { shareText } from './kit/text.ts';

/** The box of a drawer that fills the space. */
export function boxFor(space: Pick<Opening, 'path' | 'group' | 'stars'>, id: string, s: BoxSettings): Draft {
  const S = space.path;
  return drawerBox({
    id,
    space: S,
    front: { wood: s.front_wood, thick: s.front_thick.text },
    sides: { wood: s.side_wood, thick: s.side_thick.text },
    bottom: { wood: s.bottom_wood, thick: s.bottom_thick.text, widest: s.widest.text },
    gaps: {
      side: `(${s.side_gap.text})`,
      top: `(${S}.height * ${shareText(rise(s))} + ${FREE_ABOVE} mm)`,
      behind: `(${S}.depth * ${shareText(shrink(s))} + 3 mm)`,
    },
    up: `(${s.up.text})`,
    lower: `(${s.lower.text})`,
    slack: '0.5 mm',
    frontGroove: `min((${s.front_thick.text}), (${s.side_thick.text})) / 2`,
    // A quarter to a third of the front; common practice.
    ...(s.front_corner === 'lapped' ? { lap: `(${s.front_thick.text}) * 3/10` } : {}),
    ...(space.group === null ? {} : { home: { in: space.group } }),
    stars: space.stars,
  });
}

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const s = read.values;
  const round = roundIt(space, s);
  const troubles = [...checkBox(space, s), ...round.troubles];
  if (troubles.length) return { ok: false, troubles };
  const n = namer(s.name, space);
  const box = boxFor(space, s.name, s);
  const drafts = [box];
  const { left, right, below, above } = round;
  if (s.runs_on === 'runners' && left && right && below) {
    const r: Round = { left, right, below, above };
    drafts.push(runners(space, s, n, r), guides(space, s, n, r), ...(s.kickers === 'yes' ? [kickers(space, s, n, r)] : []));
  }
  if (s.stops === 'yes' && below) drafts.push(stops(space, s, n, below));
  return { ok: true, patches: patchesOf(joined(...drafts)) };
}
type Found = { readonly [K in 'left' | 'right' | 'below' | 'above']: Neighbour | null } & { readonly troubles: readonly Trouble[] };
/** The parts round the opening that are needed: named, or found. */
function roundIt(space: Opening, s: DrawerMakerSettings): Found {
  const troubles: Trouble[] = [];
  const find = (
    needed: boolean,
    setting: 'side_left' | 'side_right' | 'rail_below' | 'rail_above',
    face: 'left' | 'right' | 'bottom' | 'top',
    what: string,
  ): Neighbour | null => {
    const n = needed ? neighbourAt(space, setting, s[setting], face, what) : null;
    if (n && isTrouble(n)) troubles.push(n);
    return n && !isTrouble(n) ? n : null;
  };
  const run = s.runs_on === 'runners';
  const left = find(run, 'side_left', 'left', 'case side');
  const right = find(run, 'side_right', 'right', 'case side');
  const below = find(run || s.stops === 'yes', 'rail_below', 'bottom', 'rail');
  const above = find(run && s.kickers === 'yes', 'rail_above', 'top', 'rail');
  for (const side of [left, right]) if (side) troubles.push(...thinSide(side));
  if (run)
    for (const [setting, rail] of [
      ['rail_below', below],
      ['rail_above', above],
    ] as const)
      troubles.push(...thinRail(setting, rail, space, s));
  if (s.stops === 'yes' && below && below.box.max[1] < stopDepth(s))
    troubles.push({
      setting: 'stops',
      cannot: 'the rail below is not deep enough for stops behind the front',
      limit: stopDepth(s),
      asked: below.box.max[1],
      nearest: 'no',
    });
  if (s.stops === 'yes' && space.width < stopWidth(s))
    troubles.push({
      setting: 'stops',
      cannot: 'the drawer is too narrow for two stops',
      limit: stopWidth(s),
      asked: space.width,
      nearest: 'no',
    });
  return { left, right, below, above, troubles };
}
/** The tongues of runners need wood in the case sides. */
export function thinSide(side: Neighbour): Trouble[] {
  const thick = side.box.max[0] - side.box.min[0];
  return thick < LEAST_SIDE
    ? [
        {
          setting: 'runs_on',
          cannot: 'the case sides are too thin for the tongues of runners',
          limit: LEAST_SIDE,
          asked: thick,
          nearest: 'shelf',
        },
      ]
    : [];
}
/** Runners stand behind a rail and need depth to run over, and the rail wood for their tenons. */
function thinRail(setting: string, rail: Neighbour | null, space: Opening, s: DrawerMakerSettings): Trouble[] {
  if (!rail) return [];
  const left = space.depth - rail.box.max[1];
  const high = rail.box.max[2] - rail.box.min[2];
  if (left < 60)
    return [
      {
        setting: 'runs_on',
        cannot: 'behind the rail there is no depth for runners; a whole shelf carries the drawer',
        limit: 60,
        asked: left,
        nearest: 'shelf',
      },
    ];
  if (Math.abs(rail.off) > 0.05) return [{ setting, cannot: 'the rail does not touch the space', limit: 0, asked: rail.off }];
  return high < s.runner_thick.mm - 1e-6
    ? [
        {
          setting: 'runner_thick',
          cannot: 'runners and kickers are no thicker than the rail that holds them',
          limit: high,
          asked: s.runner_thick.mm,
          nearest: `${high} mm`,
        },
      ]
    : [];
}
export const maker: Maker = {
  id: 'drawer',
  title: 'Drawer',
  words: 'A dovetailed drawer that follows its opening and the seasons, with what it runs on.',
  settings,
  fill,
  examples,
};
