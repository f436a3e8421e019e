import type { Json } from '../../model/finding.ts';
import { isWood } from '../../wood/woods.ts';
import { type Draft, type Namer, staved } from '../kit/draft.ts';
import { type FrameSettings, SHEET_PLAY } from './settings.ts';

/** The frame and its panel, as parts of a group, filling the width and height of a space from its front back. */
export function frame(s: FrameSettings, n: Namer, outside: string, group: string): Draft {
  const member = { in: group, wood: s.wood, front: `${outside}.front`, depth: s.thick.text };
  const stile = (side: string): string => n.path('stile', side);
  const between = { left: `${stile('left')}.right`, right: `${stile('right')}.left` };
  const solid = isWood(s.panel_wood);
  const parts: Record<string, Json> = {
    [n.id('stile')]: {
      ...member,
      grain: 'z',
      copies: [{ mirror: 'x', at: `${outside}.midwidth`, names: ['left', 'right'] }],
      left: `${outside}.left`,
      width: s.stile.text,
      bottom: `${outside}.bottom`,
      top: `${outside}.top`,
      marks: { face: 'front', inner: 'right' },
    },
    [n.id('upper_rail')]: {
      ...member,
      grain: 'x',
      ...between,
      top: `${outside}.top`,
      height: s.rail.text,
      marks: { face: 'front', inner: 'bottom' },
    },
    [n.id('lower_rail')]: {
      ...member,
      grain: 'x',
      ...between,
      bottom: `${outside}.bottom`,
      height: s.low_rail.text,
      marks: { face: 'front', inner: 'top' },
    },
    [n.id('panel')]: {
      in: group,
      wood: s.panel_wood,
      grain: s.panel_grain === 'upright' ? 'z' : 'x',
      ...between,
      middepth: `${n.path('upper_rail')}.middepth`,
      depth: s.panel_thick.text,
      bottom: `${n.path('lower_rail')}.top`,
      top: `${n.path('upper_rail')}.bottom`,
      marks: { face: 'front' },
      ...(solid ? staved(s.widest.text, s.panel_grain === 'upright' ? 'width' : 'height', true) : {}),
    },
  };
  return { parts, joints: { [n.id('corners')]: corners(s, n), [n.id('grooves')]: grooves(s, n, solid) } };
}
const PAIRS = ['upper_rail', 'lower_rail'].flatMap((rail) => ['left', 'right'].map((side) => [rail, side] as const));
/** The haunch fills the groove at the corner; in a stub tenon it is as long as the tenon, which so fills the groove along the whole rail. */
function corners(s: FrameSettings, n: Namer): Json {
  const stub = s.tenons === 'stub';
  return {
    as: 'mortise_tenon@1',
    places: PAIRS.map(([rail, side]) => ({ enter: n.path(rail), into: n.path('stile', side) })),
    set: {
      thickness: s.groove_wide.text,
      haunch: 'square',
      haunch_length: s.groove.text,
      ...(stub ? { length: s.groove.text, spare: '0' } : { length: `(${s.stile.text}) * 3/5` }),
    },
  };
}
/** What a solid panel needs follows from its width, so it is left to the joint; a sheet has a fixed play. */
function grooves(s: FrameSettings, n: Namer, solid: boolean): Json {
  const into = [n.path('stile', 'left'), n.path('stile', 'right'), n.path('lower_rail'), n.path('upper_rail')];
  const play = `${SHEET_PLAY} mm`;
  const shouldered = s.panel_thick.mm > s.groove_wide.mm + 1e-6;
  return {
    as: 'groove_tongue@1',
    places: into.map((i) => ({ enter: n.path('panel'), into: i })),
    set: { tongue: s.groove_wide.text, depth: s.groove.text, ...(solid ? {} : { spare: play, ...(shouldered ? { clear: play } : {}) }) },
  };
}
