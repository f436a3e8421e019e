import type { Json } from '../../model/finding.ts';
import { type Draft, type Namer, staved } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { CaseSettings } from './settings.ts';

/** Shelves or dividers that leave equal rooms between them, housed at both ends, their housings stopped before the front. */
export function inside(space: Opening, s: CaseSettings, n: Namer): Draft {
  if (s.inside === 'none') return {};
  const S = space.path;
  const shelves = s.inside === 'shelves';
  const [from, to] = shelves
    ? [`${n.path('bottom')}.top`, `${n.path('top')}.bottom`]
    : [`${n.path('side', 'left')}.right`, `${n.path('side', 'right')}.left`];
  const clear = `(${to} - ${from} - ${s.count}*(${s.inside_thick.text})) / ${s.count + 1}`;
  const name = shelves ? 'shelf' : 'divider';
  const back = s.back === 'none' ? `${S}.back` : `${s.back === 'boards' ? n.path('back', '1') : n.path('back')}.front`;
  const common = {
    ...n.home,
    wood: s.wood,
    copies: [{ row: shelves ? 'z' : 'x', count: s.count, step: `${clear} + (${s.inside_thick.text})` }],
    front: `${S}.front`,
    back,
    ...staved(s.widest.text, 'depth'),
  };
  // The copies of a row read other parts from where each stands: what places the row stands in its frame.
  const part: Json = shelves
    ? {
        ...common,
        grain: 'x',
        left: `${n.path('side', 'left')}.right`,
        right: `${n.path('side', 'right')}.left`,
        at: ['0', '0', `${from} + ${clear}`],
        bottom: '0',
        height: s.inside_thick.text,
      }
    : {
        ...common,
        grain: 'z',
        bottom: `${n.path('bottom')}.top`,
        top: `${n.path('top')}.bottom`,
        at: [`${from} + ${clear}`, '0', '0'],
        left: '0',
        width: s.inside_thick.text,
      };
  const ends = shelves ? ['left', 'right'].map((x) => n.path('side', x)) : ['bottom', 'top'].map((x) => n.path(x));
  return {
    parts: { [n.id(name)]: part },
    joints: {
      [n.id('housings')]: {
        as: 'housing@1',
        places: ends.map((into) => ({ enter: n.path(name, '*'), into })),
        set: { stopped: 'front', stop: s.stop.text },
      },
    },
  };
}
