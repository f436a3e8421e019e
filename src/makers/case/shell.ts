import type { Json } from '../../model/finding.ts';
import { type Draft, type Namer, staved } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { CaseSettings } from './settings.ts';

/** Sides, top and bottom, and their corners. */
export function shell(space: Opening, s: CaseSettings, n: Namer): Draft {
  const S = space.path;
  const housed = s.corners === 'housing';
  const board = { ...n.home, wood: s.wood, front: `${S}.front` };
  const deep = housed && s.back !== 'none' ? `${n.path('back')}.front` : `${S}.back`;
  const level = {
    ...board,
    grain: 'x',
    left: housed ? `${n.path('side', 'left')}.right` : `${S}.left`,
    right: housed ? `${n.path('side', 'right')}.left` : `${S}.right`,
    back: housed && s.back === 'boards' ? `${n.path('back', '1')}.front` : deep,
    ...staved(s.widest.text, 'depth'),
  };
  const past = housed ? s.past.text : '0';
  const parts: Record<string, Json> = {
    [n.id('side')]: {
      ...board,
      grain: 'z',
      copies: [{ mirror: 'x', at: `${S}.midwidth`, names: ['left', 'right'] }],
      left: `${S}.left`,
      width: s.thick.text,
      back: `${S}.back`,
      bottom: `${S}.bottom`,
      top: `${S}.top`,
      marks: { inner: 'right' },
      ...staved(s.widest.text, 'depth'),
    },
    [n.id('top')]: { ...level, top: `${S}.top - (${past})`, height: s.thick.text, marks: { inner: 'bottom' } },
    [n.id('bottom')]: { ...level, bottom: `${S}.bottom + (${past})`, height: s.thick.text, marks: { inner: 'top' } },
  };
  return { parts, joints: { [n.id('corners')]: housed ? housings(s, n) : dovetails(s, n) } };
}
/** A tail lies over the groove of the back, which would else show at the corner. */
const dovetails = (s: CaseSettings, n: Namer): Json => ({
  as: 'dovetail@1',
  places: ['top', 'bottom'].map((b) => ({ tails: n.path('side', '*'), pins: n.path(b) })),
  ...(s.back === 'none' || s.back_in === 'rabbet'
    ? {}
    : { set: { tail_over: `${s.back === 'boards' ? n.path('back', '1') : n.path('back')}.middepth`, over_size: s.back_thick.text } }),
});
const housings = (s: CaseSettings, n: Namer): Json => ({
  as: 'housing@1',
  places: ['top', 'bottom'].flatMap((b) => ['left', 'right'].map((side) => ({ enter: n.path(b), into: n.path('side', side) }))),
  set: { stopped: 'front', stop: s.stop.text },
});
