import type { Json } from '../../model/finding.ts';
import { frame } from '../frame-panel/frame.ts';
import { type Draft, type Namer, joined, staved } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { Neighbour } from '../kit/neighbours.ts';
import { writeLength } from '../../units/write.ts';
import { freeAt, growthText, upright } from './gaps.ts';
import type { DoorSettings } from './settings.ts';

const OPPOSITE = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const;
type Edge = keyof typeof OPPOSITE;
const EDGES = Object.keys(OPPOSITE) as Edge[];
/** Which way is inward from an edge, as the sign of an expression. */
const inward = (e: Edge): '+' | '-' => (e === 'left' || e === 'bottom' ? '+' : '-');
const outward = (e: Edge): '+' | '-' => (inward(e) === '+' ? '-' : '+');

/** The outside of the door as a space of its own, from the opening; an overlaid one reaches to the far face of what it hangs on. */
function outside(space: Opening, s: DoorSettings, post: Neighbour, home: Namer['home']): Json {
  const S = space.path;
  const hung = s.hung as Edge;
  const [size, mm] = upright(s) ? [`${S}.width`, space.width] : [`${S}.height`, space.height];
  const closing = `(${growthText(s, size)} + ${writeLength(Math.ceil(freeAt(s, mm) * 100) / 100, 'mm')})`;
  const inset = (e: Edge): string => `${S}.${e} ${inward(e)} ${e === OPPOSITE[hung] ? closing : `(${s.gap.text})`}`;
  const over = (e: Edge): string => (e === hung ? `${post.path}.${e}` : `${S}.${e} ${outward(e)} (${s.over.text})`);
  const edge = Object.fromEntries(EDGES.map((e) => [e, s.lies === 'inset' ? inset(e) : over(e)])) as Record<Edge, string>;
  return {
    ...home,
    ...edge,
    depth: s.thick.text,
    front: s.lies === 'inset' ? `${S}.front` : `${S}.front - (${s.gap.text}) - (${s.thick.text})`,
  };
}
export function door(space: Opening, s: DoorSettings, n: Namer, post: Neighbour): Draft {
  const swing = upright(s) ? 'z' : 'x';
  const group: Draft = {
    groups: { [s.name]: { ...n.home, opens: { swing, by: '90 deg' } } },
    spaces: { [n.id('outside')]: outside(space, s, post, n.home) },
  };
  return joined(group, s.build === 'framed' ? frame(s, n, n.path('outside'), s.name) : slab(s, n));
}
/** Boards glued up, their grain along the hinges, so that the screws hold in side grain. */
function slab(s: DoorSettings, n: Namer): Draft {
  const O = n.path('outside');
  const leaf: Json = {
    in: s.name,
    wood: s.wood,
    grain: upright(s) ? 'z' : 'x',
    left: `${O}.left`,
    right: `${O}.right`,
    bottom: `${O}.bottom`,
    top: `${O}.top`,
    front: `${O}.front`,
    back: `${O}.back`,
    marks: { face: 'front' },
    ...staved(s.widest.text, upright(s) ? 'width' : 'height', true),
  };
  return { parts: { [n.id('leaf')]: leaf } };
}
/** Hinges between the door's edge and what it hangs on, knuckles in front, or at the outer edge of an overlaid door. */
export function hangs(s: DoorSettings, n: Namer, post: Neighbour): Draft {
  const member = {
    left: n.path('stile', 'left'),
    right: n.path('stile', 'right'),
    bottom: n.path('lower_rail'),
    top: n.path('upper_rail'),
  };
  const enter = s.build === 'solid' ? n.path('leaf') : member[s.hung as Edge];
  return {
    joints: {
      [n.id('hinges')]: {
        as: 'hinge@1',
        places: [{ enter, into: post.path }],
        set: { count: String(s.hinges), side: s.lies === 'inset' ? 'front' : side(s, enter) },
      },
    },
  };
}
/** A drawn face name of the hung edge; the right stile is the mirror image of the left, which is its own left. */
const side = (s: DoorSettings, enter: string): string => (s.hung === 'right' && enter.endsWith(':right') ? 'left' : s.hung);
