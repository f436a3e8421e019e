/** The heights of rooms one under the other, as numbers and as expressions, and the spaces that they become. */
import type { Json } from '../../model/finding.ts';
import type { Draft, Namer } from '../kit/draft.ts';
import type { Opening, Trouble } from '../kit/maker.ts';
import { textAtMost } from '../kit/text.ts';
import { writeLength } from '../../units/write.ts';
import type { GraduatedSettings } from './settings.ts';

/** Least clear height, mm. */
const LEAST = 30;
export type Room = { readonly mm: number; /** null: it takes the rest. */ readonly text: string | null };
export type Heights = { readonly ok: true; readonly rooms: readonly Room[]; readonly rest: number };
type Refused = { readonly ok: false; readonly troubles: readonly Trouble[] };

export function heightsOf(space: Opening, s: GraduatedSettings): Heights | Refused {
  const dividers = (s.count - 1) * s.divider_thick.mm;
  const all = space.height - dividers;
  if (all < s.count * LEAST) {
    const fits = Math.floor((space.height + s.divider_thick.mm) / (LEAST + s.divider_thick.mm));
    return refused({
      setting: 'count',
      cannot: `so many rooms leave less than {mm:${LEAST}} for each`,
      limit: LEAST,
      asked: all / s.count,
      ...(fits >= 2 ? { nearest: String(fits) } : {}),
    });
  }
  const clear = `(${space.path}.height - ${s.count - 1}*(${s.divider_thick.text}))`;
  if (s.rule === 'chosen') return chosen(space, s, all);
  const shares = s.rule === 'ratio' ? s.ratio : 1;
  const sum = Array.from({ length: s.count }, (_, k) => shares ** k).reduce((a, b) => a + b, 0);
  const steps = s.rule === 'step' ? s.step.mm : 0;
  const first = (all - (steps * s.count * (s.count - 1)) / 2) / sum;
  if (first < LEAST) return refused(tooSteep(space, s, all));
  const rooms = Array.from({ length: s.count }, (_, k): Room => {
    const mm = first * shares ** k + steps * k;
    return { mm, text: k === s.count - 1 ? null : roomText(s, clear, k, sum) };
  });
  return { ok: true, rooms, rest: s.count - 1 };
}
const refused = (t: Trouble): Refused => ({ ok: false, troubles: [t] });
function roomText(s: GraduatedSettings, clear: string, k: number, sum: number): string {
  if (s.rule === 'equal') return `${clear} / ${s.count}`;
  if (s.rule === 'ratio') return `${clear} * ${(s.ratio ** k / sum).toFixed(6)}`;
  const step = `(${s.step.text})`;
  return `(${clear} - ${(s.count * (s.count - 1)) / 2}*${step}) / ${s.count} + ${k}*${step}`;
}
function tooSteep(space: Opening, s: GraduatedSettings, all: number): Trouble {
  const cannot = `the first room would be lower than {mm:${LEAST}}`;
  if (s.rule === 'step') {
    const limit = ((all / s.count - LEAST) * 2) / (s.count - 1);
    return { setting: 'step', cannot, limit, asked: s.step.mm, nearest: textAtMost(limit, space.units) };
  }
  const fits = (r: number): boolean => all / Array.from({ length: s.count }, (_, k) => r ** k).reduce((a, b) => a + b, 0) >= LEAST;
  let limit = 1;
  while (fits(limit + 0.01)) limit += 0.01;
  return { setting: 'ratio', cannot, limit, asked: s.ratio, nearest: limit.toFixed(2) };
}
function chosen(space: Opening, s: GraduatedSettings, all: number): Heights | Refused {
  const given = s.heights;
  const even = writeLength(Math.floor((all / s.count) * 10) / 10, space.units);
  const plain = [...Array.from({ length: s.count - 1 }, () => even), '*'].join(', ');
  if (given.length !== s.count)
    return refused({ setting: 'heights', cannot: `${s.count} heights are wanted`, limit: s.count, asked: given.length, nearest: plain });
  const star = given.indexOf(null);
  const written = given.reduce((a, h) => a + (h?.mm ?? 0), 0);
  const low = given.find((h) => h !== null && h.mm < LEAST);
  if (low)
    return refused({ setting: 'heights', cannot: `a room is at least {mm:${LEAST}} high`, limit: LEAST, asked: low.mm, nearest: plain });
  const left = all - written;
  if (star < 0 && Math.abs(left) > 1e-3) {
    const last = (given.at(-1)?.mm ?? 0) + left;
    const nearest = last >= LEAST ? [...given.slice(0, -1).map((h) => h?.text ?? ''), '*'].join(', ') : plain;
    return refused({ setting: 'heights', cannot: 'heights and dividers must add up to the opening', limit: all, asked: written, nearest });
  }
  if (star >= 0 && left < LEAST)
    return refused({
      setting: 'heights',
      cannot: `less than {mm:${LEAST}} is left for "*"`,
      limit: all - LEAST,
      asked: written,
      nearest: plain,
    });
  const rest = star < 0 ? s.count - 1 : star;
  return {
    ok: true,
    rest,
    rooms: given.map((h, k): Room => (h === null ? { mm: left, text: null } : { mm: h.mm, text: k === rest ? null : h.text })),
  };
}

/** Rooms above the one that takes the rest hang from the top, those below it stand on the bottom. */
export function roomSpaces(space: Opening, s: GraduatedSettings, n: Namer, h: Heights): Draft {
  const S = space.path;
  const above = (k: number): string => (k === 0 ? `${S}.top` : `${n.path(`divider_${k}`)}.bottom`);
  const below = (k: number): string => (k === s.count - 1 ? `${S}.bottom` : `${n.path(`divider_${k + 1}`)}.top`);
  const place = (k: number): Record<string, string> => {
    const text = h.rooms[k]?.text ?? null;
    if (text === null) return { top: above(k), bottom: below(k) };
    return k < h.rest ? { top: above(k), height: text } : { bottom: below(k), height: text };
  };
  const spaces = h.rooms.map((_, k): [string, Json] => [
    n.id(`room_${k + 1}`),
    { ...n.home, left: `${S}.left`, right: `${S}.right`, front: `${S}.front`, back: `${S}.back`, ...place(k) },
  ]);
  return { spaces: Object.fromEntries(spaces) };
}
