/**
 * What a drawer runs on and between where there is no whole shelf: runners, kickers, guides and stops.
 *
 *      case side │ ├─ tongue, dry, in a groove across the side's grain
 *                │ ├──────────────────────────┐
 *     rail ══════╡ │ runner          grain →  │   room behind
 *        tenon, glued ┘                            ┊
 *
 * Each is tenoned and glued into the rail at the front alone and tongued dry into the side, so that the side may shrink and swell past
 * it: glued all along it would split the side.
 */
import type { Json } from '../../model/finding.ts';
import type { Draft, Namer } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { Neighbour } from '../kit/neighbours.ts';
import { shareText } from '../kit/text.ts';
import { type RunnerSettings, shrink } from './settings.ts';

/** The tongue takes a third of the side and still stands 3 mm in it when it has shrunk: sides thinner than this have no wood for it, mm. */
export const LEAST_SIDE = 15;
export type Round = { readonly left: Neighbour; readonly right: Neighbour; readonly below: Neighbour; readonly above: Neighbour | null };
/** Sides farther from the space than this need a guide beside the drawer, mm. */
const GUIDED = 0.5;
const GUIDE_HIGH = 15;

/** A pair of strips, one at each side, tenoned into `rail` and tongued into the case sides. */
function pair(space: Opening, s: RunnerSettings, n: Namer, name: string, rail: string, z: Record<string, string>, r: Round): Draft {
  const S = space.path;
  const strip = (side: 'left' | 'right'): Json => ({
    ...n.home,
    wood: s.runner_wood,
    grain: 'y',
    ...(side === 'left'
      ? { left: `${r.left.path}.right`, right: `${S}.left + (${s.runner_wide.text})` }
      : { left: `${S}.right - (${s.runner_wide.text})`, right: `${r.right.path}.left` }),
    front: `${rail}.back`,
    back: `${S}.back - (${S}.depth * ${shareText(shrink(s))} + 2 mm)`,
    ...z,
  });
  const path = (side: string): string => n.path(`${name}_${side}`);
  return {
    parts: { [n.id(`${name}_left`)]: strip('left'), [n.id(`${name}_right`)]: strip('right') },
    joints: {
      [n.id(`${name}_tenons`)]: { as: 'mortise_tenon@1', places: ['left', 'right'].map((side) => ({ enter: path(side), into: rail })) },
      [n.id(`${name}_tongues`)]: {
        as: 'groove_tongue@1',
        places: [
          { enter: path('left'), into: r.left.path },
          { enter: path('right'), into: r.right.path },
        ],
        set: { stopped: 'front', depth: `${r.left.path}.width / 3`, spare: '1 mm' },
      },
    },
  };
}
export const runners = (space: Opening, s: RunnerSettings, n: Namer, r: Round): Draft =>
  pair(space, s, n, 'runner', r.below.path, { top: `${space.path}.bottom`, height: s.runner_thick.text }, r);
export const kickers = (space: Opening, s: RunnerSettings, n: Namer, r: Round): Draft =>
  r.above ? pair(space, s, n, 'kicker', r.above.path, { bottom: `${space.path}.top`, height: s.runner_thick.text }, r) : {};

/** Strips on the runners beside the drawer where the case sides stand off: the grain runs as the runner's, so they may be glued down. */
export function guides(space: Opening, s: RunnerSettings, n: Namer, r: Round): Draft {
  const S = space.path;
  const sides = (['left', 'right'] as const).filter((side) => r[side].off > GUIDED);
  const strip = (side: 'left' | 'right'): Json => ({
    ...n.home,
    wood: s.runner_wood,
    grain: 'y',
    ...(side === 'left' ? { left: `${r.left.path}.right`, right: `${S}.left` } : { left: `${S}.right`, right: `${r.right.path}.left` }),
    front: `${n.path(`runner_${side}`)}.front`,
    back: `${n.path(`runner_${side}`)}.back`,
    bottom: `${S}.bottom`,
    height: `${GUIDE_HIGH} mm`,
  });
  if (sides.length === 0) return {};
  return {
    parts: Object.fromEntries(sides.map((side) => [n.id(`guide_${side}`), strip(side)])),
    joints: {
      [n.id('guides')]: {
        as: 'lamination@1',
        places: sides.map((side) => ({ enter: n.path(`guide_${side}`), into: n.path(`runner_${side}`) })),
      },
    },
  };
}
/** Size of a stop along and across, mm, and how far from the drawer's sides. */
const STOP = { wide: 40, deep: 20, off: 20 } as const;
/** Two blocks glued to the rail behind the front, lower than the bottom. */
export function stops(space: Opening, s: RunnerSettings, n: Namer, below: Neighbour): Draft {
  const S = space.path;
  const inside = `${S}.left + (${s.side_gap.text}) + (${s.side_thick.text}) + ${STOP.off} mm`;
  return {
    parts: {
      [n.id('stop')]: {
        ...n.home,
        wood: s.runner_wood,
        grain: 'x',
        copies: [{ mirror: 'x', at: `${S}.midwidth`, names: ['left', 'right'] }],
        left: inside,
        width: `${STOP.wide} mm`,
        front: `${S}.front + (${s.front_thick.text})`,
        depth: `${STOP.deep} mm`,
        bottom: `${S}.bottom`,
        height: `(${s.up.text}) - 2 mm`,
      },
    },
    joints: { [n.id('stops')]: { as: 'lamination@1', places: [{ enter: n.path('stop', '*'), into: below.path }] } },
  };
}
/** Depth of rail that a front and a stop take, and width of a drawer with two stops, mm. */
export const stopDepth = (s: RunnerSettings): number => s.front_thick.mm + STOP.deep;
export const stopWidth = (s: RunnerSettings): number => 2 * (s.side_gap.mm + s.side_thick.mm + STOP.off + STOP.wide);
