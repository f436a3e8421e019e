/**
 * A piece to measure with: open shelving of 60 parts and 110 joints. Four posts; on each of four levels two long and two side rails
 * tenoned into them, and slats housed into the long rails; a loose tray on top. Its sizes, levels and joints can be edited one by one.
 */
import type { Json } from '../../model/finding.ts';

const LEVELS = [1, 2, 3, 4] as const;
const SLATS = 10;

/** Slats on a level: one fewer at the top, where the tray stands. */
const slatsOn = (level: number): number => (level === LEVELS.length ? SLATS - 1 : SLATS);
/** Runs from one to the other along x: `of` it in `count` equal steps. */
const rail = { wood: 'ash', top: '', height: 'rail_h' } as const;

function level(n: number, pegs: boolean): { sizes: Record<string, Json>; parts: Record<string, Json>; joints: Record<string, Json> } {
  const count = slatsOn(n);
  return {
    sizes: { [`level_${n}`]: String(140 + 420 * (n - 1)), [`slat_w_${n}`]: String(58 + 2 * n), [`tenon_${n}`]: String(24 + n) },
    parts: {
      [`long_${n}`]: {
        ...rail,
        grain: 'x',
        copies: [{ mirror: 'y', names: ['front', 'rear'] }],
        top: `level_${n}`,
        left: 'post:left:*.right',
        right: 'post:right:*.left',
        front: 'post:left:*.front + setback',
        depth: 'rail_t',
      },
      [`side_${n}`]: {
        ...rail,
        grain: 'y',
        copies: [{ mirror: 'x', names: ['left', 'right'] }],
        top: `level_${n} + lift`,
        front: 'post:*:front.back',
        back: 'post:*:rear.front',
        left: 'post:*:front.left + setback',
        width: 'rail_t',
      },
      [`slat_${n}`]: {
        wood: 'ash',
        grain: 'y',
        copies: [{ row: 'x', count, step: `(long - 2*post_w - 2*gap - slat_w_${n})/${count - 1}` }],
        left: '-long/2 + post_w + gap',
        width: `slat_w_${n}`,
        front: `long_${n}:front.back`,
        back: `long_${n}:rear.front`,
        top: `level_${n} - 8`,
        height: 'slat_t',
      },
    },
    joints: {
      [`long_${n}_ends`]: {
        as: 'mortise_tenon@1',
        set: { length: `tenon_${n}`, ...(pegs ? { pegs: '1' } : {}) },
        places: [
          { enter: `long_${n}:*`, into: 'post:left:*' },
          { enter: `long_${n}:*`, into: 'post:right:*' },
        ],
      },
      [`side_${n}_ends`]: {
        as: 'mortise_tenon@1',
        set: { length: 'side_tenon' },
        places: [
          { enter: `side_${n}:*`, into: 'post:*:front' },
          { enter: `side_${n}:*`, into: 'post:*:rear' },
        ],
      },
      [`slat_${n}_ends`]: {
        as: 'housing@1',
        set: { depth: 'housed' },
        places: [
          { enter: `slat_${n}:*`, into: `long_${n}:front` },
          { enter: `slat_${n}:*`, into: `long_${n}:rear` },
        ],
      },
    },
  };
}

/** The whole document; with `pegs`, the long rails' tenons are pegged through the posts: 16 pegs, and round holes for them. */
export function shelving({ pegs = false }: { readonly pegs?: boolean } = {}): Json {
  const levels = LEVELS.map((n) => level(n, pegs));
  return {
    dryfit: 1,
    title: 'Open shelving',
    units: 'mm',
    sizes: {
      long: '1100',
      deep: '420',
      high: '1500',
      post_w: '52',
      post_d: '52',
      setback: '6',
      rail_h: '70',
      rail_t: '28',
      lift: '85',
      gap: '18',
      slat_t: '18',
      housed: '7',
      side_tenon: '26',
      ...Object.assign({}, ...levels.map((l) => l.sizes)),
    },
    parts: {
      post: {
        wood: 'ash',
        grain: 'z',
        copies: [
          { mirror: 'x', names: ['left', 'right'] },
          { mirror: 'y', names: ['front', 'rear'] },
        ],
        left: '-long/2',
        width: 'post_w',
        front: '-deep/2',
        depth: 'post_d',
        bottom: '0',
        height: 'high',
      },
      ...Object.assign({}, ...levels.map((l) => l.parts)),
      tray: {
        wood: 'ash',
        grain: 'x',
        loose: true,
        midwidth: '0',
        width: '300',
        middepth: '0',
        depth: '180',
        bottom: 'slat_4:5.top',
        height: '12',
      },
    },
    joints: Object.assign({}, ...levels.map((l) => l.joints)),
  };
}
