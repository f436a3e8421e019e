import type { Json } from '../../model/finding.ts';
import { type Draft, type Namer, staved } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { Heights } from './heights.ts';
import type { GraduatedSettings } from './settings.ts';

/** Between two rooms each: a shelf in stopped housings, or a rail tenoned into the sides. */
export function dividers(space: Opening, s: GraduatedSettings, n: Namer, h: Heights, left: string, right: string): Draft {
  const S = space.path;
  const shelves = s.dividers === 'shelves';
  const name = (k: number): string => `divider_${k}`;
  const all = Array.from({ length: s.count - 1 }, (_, i) => i + 1);
  const parts = all.map((k): [string, Json] => [
    n.id(name(k)),
    {
      ...n.home,
      wood: s.divider_wood,
      grain: 'x',
      left: `${S}.left`,
      right: `${S}.right`,
      front: `${S}.front`,
      ...(shelves ? { back: `${S}.back`, ...staved(s.widest.text, 'depth') } : { depth: s.rail_deep.text }),
      ...(k <= h.rest ? { top: `${n.path(`room_${k}`)}.bottom` } : { bottom: `${n.path(`room_${k + 1}`)}.top` }),
      height: s.divider_thick.text,
    },
  ]);
  const places = all.flatMap((k) => [left, right].map((into) => ({ enter: n.path(name(k)), into })));
  const joint: Json = shelves
    ? { as: 'housing@1', places, set: { stopped: 'front', stop: s.stop.text } }
    : { as: 'mortise_tenon@1', places };
  return { parts: Object.fromEntries(parts), joints: { [n.id('dividers')]: joint } };
}
