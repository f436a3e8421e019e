/**
 * The box of a drawer in a named space: its group, parts and joints, with expressions on the faces of the space, so that it follows the
 * opening.
 *
 * Dovetailed at its four corners, tails on the sides, through at the back and at the front through or lapped. The bottom's grain runs
 * from side to side; it lies in grooves in sides and front and slides in under the back. The groove in the front is hidden under a tail.
 */
import type { Json } from '../../model/finding.ts';
import type { Draft } from '../kit/draft.ts';

/** Lengths as a maker types them, in the document's units or with a unit of their own. */
export type DrawerBox = {
  /** Begins the ids of all that is written: 'drawer' gives drawer_front, drawer_side … */
  readonly id: string;
  /** The space that it fills; it opens to the front. */
  readonly space: string;
  readonly front: { readonly wood: string; readonly thick: string };
  readonly sides: { readonly wood: string; readonly thick: string };
  /** `widest`: glued up from staves no wider than this. */
  readonly bottom: { readonly wood: string; readonly thick: string; readonly widest?: string };
  /** Air at each side, above and behind; common practice: 0.5 to 1 mm in all at the sides, above by the season. */
  readonly gaps: { readonly side: string; readonly top: string; readonly behind: string };
  /** How far the bottom lies above the lower edge of the sides. */
  readonly up: string;
  /** How much lower than the sides the back stands. */
  readonly lower: string;
  /** Depth of the groove in the front; none: half of the sides, as in these. */
  readonly frontGroove?: string;
  /** Room beside the bottom in the grooves of the sides, towards which its grain runs; none: as the joint proposes. */
  readonly slack?: string;
  /** Wood of the front before the tails; none: they come through. */
  readonly lap?: string;
  /** The group that the space lives in, and over how many names that group is copied. */
  readonly home?: { readonly in?: string };
  readonly stars?: number;
};

/** The drawer's own entries. */
export function drawerBox(s: DrawerBox): Draft {
  const id = (name: string): string => `${s.id}_${name}`;
  const p = (name: string, ...copies: readonly string[]): string =>
    [id(name), ...Array.from({ length: s.stars ?? 0 }, () => '*'), ...copies].join(':');
  const group = s.id;
  const parts: Record<string, Json> = {
    [id('front')]: {
      in: group,
      wood: s.front.wood,
      grain: 'x',
      left: `${s.space}.left + ${s.gaps.side}`,
      right: `${s.space}.right - ${s.gaps.side}`,
      front: `${s.space}.front`,
      depth: s.front.thick,
      bottom: `${s.space}.bottom`,
      top: `${s.space}.top - ${s.gaps.top}`,
      marks: { face: 'front' },
    },
    [id('side')]: {
      in: group,
      wood: s.sides.wood,
      grain: 'y',
      copies: [{ mirror: 'x', at: `${s.space}.midwidth`, names: ['left', 'right'] }],
      left: `${p('front')}.left`,
      width: s.sides.thick,
      front: s.lap === undefined ? `${p('front')}.front` : `${p('front')}.front + (${s.lap})`,
      back: `${s.space}.back - ${s.gaps.behind}`,
      bottom: `${p('front')}.bottom`,
      top: `${p('front')}.top`,
      marks: { inner: 'right' },
    },
    [id('back')]: {
      in: group,
      wood: s.sides.wood,
      grain: 'x',
      left: `${p('front')}.left`,
      right: `${p('front')}.right`,
      back: `${p('side', 'left')}.back`,
      depth: s.sides.thick,
      bottom: `${p('bottom')}.top`,
      top: `${p('side', 'left')}.top - ${s.lower}`,
    },
    [id('bottom')]: {
      in: group,
      wood: s.bottom.wood,
      grain: 'x',
      left: `${p('side', 'left')}.right`,
      right: `${p('side', 'right')}.left`,
      front: `${p('front')}.back`,
      back: `${p('back')}.back`,
      bottom: `${p('side', 'left')}.bottom + ${s.up}`,
      height: s.bottom.thick,
      ...(s.bottom.widest === undefined ? {} : { made: [{ staves: { widest: s.bottom.widest }, along: 'depth' }] }),
    },
  };
  const over = { tail_over: `${p('bottom')}.midheight`, over_size: s.bottom.thick };
  const joints: Record<string, Json> = {
    [id('front_corners')]: { as: 'dovetail@1', places: [{ tails: p('side', '*'), pins: p('front') }], set: over },
    [id('back_corners')]: { as: 'dovetail@1', places: [{ tails: p('side', '*'), pins: p('back') }] },
    [id('bottom_grooves')]: {
      as: 'groove_tongue@1',
      places: [
        { enter: p('bottom'), into: p('side', 'left') },
        { enter: p('bottom'), into: p('side', 'right') },
      ],
      set: {
        tongue: s.bottom.thick,
        corners: 'front',
        depth: `(${s.sides.thick}) / 2`,
        ...(s.slack === undefined ? {} : { spare: s.slack }),
      },
    },
    // Held at the front, so that it moves to the back only, where it is free under the back of the drawer.
    [id('bottom_front')]: {
      as: 'groove_tongue@1',
      places: [{ enter: p('bottom'), into: p('front') }],
      set: { tongue: s.bottom.thick, depth: s.frontGroove ?? `(${s.sides.thick}) / 2`, spare: '0', hold: 'glued' },
    },
  };
  return {
    groups: { [group]: { ...s.home, opens: { slide: 'y', by: `${s.space}.depth * 3/4` } } },
    parts,
    joints,
  };
}
