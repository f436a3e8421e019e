import type { Json } from '../../model/finding.ts';
import { type Draft, type Namer, staved } from '../kit/draft.ts';
import type { Opening } from '../kit/maker.ts';
import type { CaseSettings } from './settings.ts';

/** Widest board of a boarded back, mm: common practice, so that each gap stays small. */
const WIDEST = 150;

/** The back in its grooves, loose: one panel or sheet, or tongued boards whose grain runs from side to side. */
export function panel(space: Opening, s: CaseSettings, n: Namer): Draft {
  if (s.back === 'none') return {};
  if (s.back_in === 'rabbet') return inRabbets(space, s, n);
  return s.back === 'boards' ? boards(space, s, n) : onePanel(space, s, n);
}
const inGroove = (s: CaseSettings): Record<string, string> => ({
  tongue: s.back_thick.text,
  // Sheets do not grow: a little play is enough. What solid wood needs follows from its width.
  ...(s.solid ? {} : { depth: `(${s.thick.text}) / 3`, spare: '0.5 mm' }),
});
/** Between the sides and, where these are dovetailed to top and bottom, between those too; in a housed case from end to end of the sides. */
function place(space: Opening, s: CaseSettings, n: Namer): Record<string, string> {
  const S = space.path;
  return {
    wood: s.back_wood,
    grain: 'x',
    left: `${n.path('side', 'left')}.right`,
    right: `${n.path('side', 'right')}.left`,
    back: `${S}.back - (${s.back_set.text})`,
    depth: s.back_thick.text,
  };
}
const ends = (space: Opening, s: CaseSettings, n: Namer): readonly [low: string, high: string] =>
  s.corners === 'housing' ? [`${space.path}.bottom`, `${space.path}.top`] : [`${n.path('bottom')}.top`, `${n.path('top')}.bottom`];

function onePanel(space: Opening, s: CaseSettings, n: Namer): Draft {
  const [low, high] = ends(space, s, n);
  const housed = s.corners === 'housing';
  const back = n.path('back');
  return {
    parts: {
      [n.id('back')]: { ...n.home, ...place(space, s, n), bottom: low, top: high, ...(s.solid ? staved(s.widest.text, 'height') : {}) },
    },
    joints: {
      [n.id('back_sides')]: sides(s, n, [back], 'all'),
      ...(housed
        ? {}
        : {
            [n.id('back_ends')]: {
              as: 'groove_tongue@1',
              places: ['bottom', 'top'].map((b) => ({ enter: back, into: n.path(b) })),
              set: inGroove(s),
            },
          }),
    },
  };
}
/** Laid in from behind, flush with the rear edges; the rabbets end where it ends, so that none shows at a corner. */
function inRabbets(space: Opening, s: CaseSettings, n: Namer): Draft {
  const S = space.path;
  const housed = s.corners === 'housing';
  const lip = `(${s.thick.text}) / 2`;
  const back = n.path('back');
  const into = [n.path('side', 'left'), n.path('side', 'right'), ...(housed ? [] : [n.path('bottom'), n.path('top')])];
  return {
    parts: {
      [n.id('back')]: {
        ...n.home,
        ...place(space, s, n),
        left: `${S}.left + ${lip}`,
        right: `${S}.right - ${lip}`,
        back: `${S}.back`,
        bottom: housed ? `${S}.bottom` : `${S}.bottom + ${lip}`,
        top: housed ? `${S}.top` : `${S}.top - ${lip}`,
      },
    },
    joints: {
      [n.id('back_rabbets')]: { as: 'rabbet@1', places: into.map((i) => ({ enter: back, into: i })), set: { ends: 'fits', hold: 'dry' } },
    },
  };
}
/** Into the sides; between top and bottom the panel fills the corners and the groove ends there, so that it does not show in the tails. */
const sides = (s: CaseSettings, n: Namer, enter: readonly string[], corners: 'all' | 'bottom' | 'top' | 'none'): Json => ({
  as: 'groove_tongue@1',
  places: enter.flatMap((e) => ['left', 'right'].map((side) => ({ enter: e, into: n.path('side', side) }))),
  set: { ...inGroove(s), ...(s.corners === 'housing' ? {} : { stopped: 'both', corners }) },
});

/** A row's copies each read the other parts from where they stand, so the row starts at a frame of its own. */
const stacked = (from: string, each: string, count: number): Record<string, Json> => ({
  at: ['0', '0', from],
  bottom: '0',
  height: each,
  copies: [{ row: 'z', count, step: each }],
});

function boards(space: Opening, s: CaseSettings, n: Namer): Draft {
  const [low, high] = ends(space, s, n);
  const past = s.corners === 'housing' ? 0 : 2 * s.thick.mm;
  const count = Math.max(2, Math.ceil((space.height - past) / WIDEST));
  const each = `((${high}) - (${low})) / ${count}`;
  const board = (k: number): string => n.path('back', String(k));
  const housed = s.corners === 'housing';
  const middle = Array.from({ length: count - 2 }, (_, i) => board(i + 2));
  const outer: readonly (readonly [string, string])[] = [
    [board(1), n.path('bottom')],
    [board(count), n.path('top')],
  ];
  return {
    parts: {
      [n.id('back')]: { ...n.home, ...place(space, s, n), ...stacked(low, each, count) },
    },
    joints: {
      ...(housed
        ? { [n.id('back_sides')]: sides(s, n, [n.path('back', '*')], 'none') }
        : {
            [n.id('back_low')]: sides(s, n, [board(1)], 'bottom'),
            [n.id('back_high')]: sides(s, n, [board(count)], 'top'),
            ...(middle.length ? { [n.id('back_sides')]: sides(s, n, middle, 'none') } : {}),
          }),
      [n.id('back_tongues')]: {
        as: 'groove_tongue@1',
        places: Array.from({ length: count - 1 }, (_, i) => ({ enter: board(i + 1), into: board(i + 2) })),
      },
      ...(housed
        ? {}
        : { [n.id('back_ends')]: { as: 'groove_tongue@1', places: outer.map(([enter, into]) => ({ enter, into })), set: inGroove(s) } }),
    },
  };
}
