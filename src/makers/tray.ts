/**
 * Tray: four sides dovetailed at the corners, a bottom in grooves, partitions if wanted. The outside fills the space.
 *
 *     ┌─┬────────────┬─┐
 *     │ │     │      │ │   side: tails      end: pins; its groove lies under a tail
 *     │ ├─────┴──────┤ │
 *     └─┴────────────┴─┘   bottom, a little up from the lower edges
 */
import type { Json } from '../model/finding.ts';
import { isSoftwood, isWood } from '../wood/woods.ts';
import { type Namer, namer, patchesOf, staved } from './kit/draft.ts';
import { bounds } from './kit/bounds.ts';
import type { Filled, Maker, Opening, Settings, Trouble } from './kit/maker.ts';
import { type Values, readSettings } from './kit/settings.ts';
import { roomBeside } from './frame-panel/settings.ts';
import { examples } from './tray/examples.ts';

const settings = {
  name: { kind: 'id', words: 'name, with which all its parts begin', initial: 'tray' },
  wood: { kind: 'wood', words: 'wood of the sides', initial: 'ash' },
  thick: { kind: 'length', words: 'thickness of the sides', initial: { mm: '12 mm', in: '1/2 in' }, least: 9, most: 30 },
  bottom_wood: { kind: 'wood', words: 'wood or sheet of the bottom', initial: 'plywood' },
  bottom_thick: { kind: 'length', words: 'thickness of the bottom', initial: { mm: '6 mm', in: '1/4 in' }, least: 3, most: 15 },
  up: { kind: 'length', words: 'how far the bottom lies above the lower edges', initial: { mm: '8 mm', in: '5/16 in' }, least: 4 },
  partitions: { kind: 'count', words: 'number of partitions', initial: '0', least: 0, most: 20 },
  partition_thick: { kind: 'length', words: 'thickness of partitions', initial: { mm: '8 mm', in: '5/16 in' }, least: 4, most: 30 },
  widest: { kind: 'length', words: 'widest board that is glued up', initial: { mm: '120 mm', in: '5 in' }, least: 40 },
} as const satisfies Settings;
type TraySettings = Values<typeof settings>;

/** Least clear room between partitions, and above the bottom, mm. */
const ROOM = 20;

function check(space: Opening, s: TraySettings): Trouble[] {
  const { add, all, most, least } = bounds(space.units, settings);
  most('thick', 'the sides would fill the space', Math.min(space.width, space.depth) / 5, s.thick.mm);
  most('bottom_thick', 'the grooves would weaken the sides', s.thick.mm, s.bottom_thick.mm);
  least('up', 'a tail must cover the groove', s.thick.mm / (isSoftwood(s.wood) ? 6 : 8) + 3, s.up.mm);
  most('up', 'the bottom would stand above the sides', space.height - s.bottom_thick.mm - ROOM, s.up.mm);
  if (isWood(s.bottom_wood)) {
    const need = 3 + 2 * roomBeside(space.depth - 2 * s.thick.mm);
    least('thick', 'a bottom of solid wood needs a groove deep enough to move in', 2 * need, s.thick.mm);
  }
  const clear = space.width - 2 * s.thick.mm;
  const fits = Math.max(0, Math.floor((clear - ROOM) / (ROOM + s.partition_thick.mm)));
  if (s.partitions > fits)
    add({
      setting: 'partitions',
      cannot: `between them {mm:${ROOM}} must stay clear`,
      limit: fits,
      asked: s.partitions,
      nearest: String(fits),
    });
  return all();
}

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const troubles = check(space, read.values);
  if (troubles.length) return { ok: false, troubles };
  const n = namer(read.values.name, space);
  return {
    ok: true,
    patches: patchesOf({
      groups: { [read.values.name]: { ...n.home } },
      parts: parts(space, read.values, n),
      joints: joints(read.values, n),
    }),
  };
}
function parts(space: Opening, s: TraySettings, n: Namer): Record<string, Json> {
  const S = space.path;
  const board = { in: s.name, wood: s.wood, bottom: `${S}.bottom`, top: `${S}.top` };
  const inner = { front: `${n.path('end', 'front')}.back`, back: `${n.path('end', 'back')}.front` };
  const [left, right] = [`${n.path('side', 'left')}.right`, `${n.path('side', 'right')}.left`];
  const clear = `(${right} - ${left} - ${s.partitions}*(${s.partition_thick.text})) / ${s.partitions + 1}`;
  return {
    [n.id('side')]: {
      ...board,
      grain: 'y',
      copies: [{ mirror: 'x', at: `${S}.midwidth`, names: ['left', 'right'] }],
      left: `${S}.left`,
      width: s.thick.text,
      front: `${S}.front`,
      back: `${S}.back`,
      marks: { inner: 'right' },
    },
    [n.id('end')]: {
      ...board,
      grain: 'x',
      copies: [{ mirror: 'y', at: `${S}.middepth`, names: ['front', 'back'] }],
      left: `${S}.left`,
      right: `${S}.right`,
      front: `${S}.front`,
      depth: s.thick.text,
      marks: { inner: 'back' },
    },
    [n.id('bottom')]: {
      in: s.name,
      wood: s.bottom_wood,
      grain: 'x',
      left,
      right,
      ...inner,
      bottom: `${S}.bottom + (${s.up.text})`,
      height: s.bottom_thick.text,
      ...(isWood(s.bottom_wood) ? staved(s.widest.text, 'depth') : {}),
    },
    ...(s.partitions === 0
      ? {}
      : {
          [n.id('partition')]: {
            in: s.name,
            wood: s.wood,
            grain: 'y',
            at: [`${left} + ${clear}`, '0', '0'],
            copies: [{ row: 'x', count: s.partitions, step: `${clear} + (${s.partition_thick.text})` }],
            left: '0',
            width: s.partition_thick.text,
            ...inner,
            bottom: `${n.path('bottom')}.top`,
            top: `${S}.top - (${s.thick.text}) / 2`,
          },
        }),
  };
}
function joints(s: TraySettings, n: Namer): Record<string, Json> {
  const solid = isWood(s.bottom_wood);
  const set = {
    tongue: s.bottom_thick.text,
    ...(solid ? { depth: `(${s.thick.text}) / 2` } : { depth: `(${s.thick.text}) / 3`, spare: '0.5 mm' }),
  };
  const into = (part: string, copies: readonly string[]): Json => copies.map((c) => ({ enter: n.path('bottom'), into: n.path(part, c) }));
  return {
    [n.id('corners')]: {
      as: 'dovetail@1',
      places: [{ tails: n.path('side', '*'), pins: n.path('end', '*') }],
      set: { tail_over: `${n.path('bottom')}.midheight`, over_size: s.bottom_thick.text },
    },
    // The bottom fills the corners of the grooves; those of the sides end there, so that they do not show in the tails.
    [n.id('side_grooves')]: {
      as: 'groove_tongue@1',
      places: into('side', ['left', 'right']),
      set: { ...set, corners: 'all', stopped: 'both' },
    },
    [n.id('end_grooves')]: { as: 'groove_tongue@1', places: into('end', ['front', 'back']), set },
    ...(s.partitions === 0
      ? {}
      : {
          [n.id('housings')]: {
            as: 'housing@1',
            places: ['front', 'back'].map((c) => ({ enter: n.path('partition', '*'), into: n.path('end', c) })),
            // The housing comes out at no edge: the partition stands on the bottom and ends below the rim.
            set: { hold: 'dry' },
          },
        }),
  };
}
export const maker: Maker = {
  id: 'tray',
  title: 'Tray',
  words: 'Four sides dovetailed at the corners, a bottom in grooves, and partitions that lift out.',
  settings,
  fill,
  examples,
};
