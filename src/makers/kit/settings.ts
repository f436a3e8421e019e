/** Settings read from the texts of a form: each to its number, or to a trouble with the limit and the nearest text that works. */
import { ID, RESERVED } from '../../model/ids.ts';
import { readLength } from '../../units/parse.ts';
import { nearestOf } from '../../units/words.ts';
import { wetnessIn } from '../../wood/season.ts';
import type { Filled, Opening, Setting, Settings, Trouble } from './maker.ts';
import { textAtLeast, textAtMost } from './text.ts';

/** A length with the text that goes into the document: the name of a size stays that name. */
export type Len = { readonly mm: number; readonly text: string };
type ValueOf<K extends Setting['kind']> = K extends 'length'
  ? Len
  : K extends 'lengths'
    ? readonly (Len | null)[]
    : K extends 'number' | 'percent' | 'count'
      ? number
      : string;
export type Values<S extends Settings> = { readonly [K in keyof S]: ValueOf<S[K]['kind']> };

type Read = { readonly value: unknown } | Omit<Trouble, 'setting'>;

/** Reads all settings; every one that cannot be read is told. Unknown names are told too. */
export function readSettings<S extends Settings>(
  settings: S,
  space: Opening,
  given: Readonly<Record<string, string>>,
): { readonly ok: true; readonly values: Values<S> } | Extract<Filled, { ok: false }> {
  const troubles: Trouble[] = [];
  const values: Record<string, unknown> = {};
  for (const key of Object.keys(given))
    if (!Object.hasOwn(settings, key))
      troubles.push({
        setting: key,
        cannot: `there is no setting "${key.slice(0, 40)}"`,
        limit: 0,
        asked: 0,
        ...didYouMean(key, settings),
      });
  for (const [key, s] of Object.entries(settings)) {
    const initial = typeof s.initial === 'string' ? s.initial : s.initial[space.units];
    const r = readOne(s, Object.hasOwn(given, key) ? (given[key] ?? '') : initial, initial, space);
    if ('value' in r) values[key] = r.value;
    else troubles.push({ setting: key, ...r });
  }
  return troubles.length ? { ok: false, troubles } : { ok: true, values: values as Values<S> };
}
const didYouMean = (key: string, settings: Settings): { nearest?: string } => {
  const near = nearestOf(key, Object.keys(settings));
  return near ? { nearest: near } : {};
};

function readOne(s: Setting, text: string, initial: string, space: Opening): Read {
  const t = text.trim();
  if (s.kind === 'length') return length(s, t, initial, space);
  if (s.kind === 'lengths') return lengths(s, t, initial, space);
  if (s.kind === 'choice') return choice(s, t, initial);
  if (s.kind === 'id') return idFor(t, initial, space);
  if (s.kind === 'part') return part(t);
  if (s.kind === 'wood') return t !== '' && t.length <= 60 ? { value: t } : unread(`a wood has a name of 1 to 60 letters`, initial);
  return amount(s, t, initial);
}
const unread = (cannot: string, nearest: string): Read => ({ cannot, limit: 0, asked: 0, nearest });

function length(s: Setting, t: string, initial: string, space: Opening): Read {
  const len = lengthOf(t, space);
  if ('cannot' in len) return { ...len, nearest: len.nearest ?? initial };
  return within(s, len, space.units);
}
function within(s: Setting, len: Len, units: 'mm' | 'in'): Read {
  const { least = 0, most = Infinity } = s;
  if (!(len.mm >= least))
    return { cannot: `the ${s.words} is at least {mm:${least}}`, limit: least, asked: len.mm, nearest: textAtLeast(least, units) };
  if (len.mm > most)
    return { cannot: `the ${s.words} is at most {mm:${most}}`, limit: most, asked: len.mm, nearest: textAtMost(most, units) };
  return { value: len };
}
/** A length as typed, or a size of the document by its name. */
function lengthOf(t: string, space: Opening): Len | Omit<Trouble, 'setting'> {
  const size = Object.hasOwn(space.sizes, t) ? space.sizes[t] : undefined;
  if (size !== undefined) return { mm: size, text: t };
  const r = readLength(t, space.units);
  if (r.ok) return { mm: r.mm, text: r.text };
  if ('ask' in r) {
    const [first] = r.ask;
    return { cannot: 'this length can be read in two ways', limit: 0, asked: 0, ...(first ? { nearest: first.text } : {}) };
  }
  const near = nearestOf(t, Object.keys(space.sizes));
  return { cannot: r.cannot, limit: 0, asked: 0, ...(near ? { nearest: near } : {}) };
}
function lengths(s: Setting, t: string, initial: string, space: Opening): Read {
  if (t === '') return { value: [] };
  const all: (Len | null)[] = [];
  for (const one of t.split(/[;,](?!\d)/).map((x) => x.trim())) {
    if (one === '*') {
      all.push(null);
      continue;
    }
    const r = lengthOf(one, space);
    if ('cannot' in r) return { ...r, nearest: initial };
    const fits = within(s, r, space.units);
    if (!('value' in fits)) return { ...fits, nearest: initial };
    all.push(r);
  }
  if (all.length > 60 || all.filter((x) => x === null).length > 1) return unread('at most 60 heights, and one "*" for the rest', initial);
  return { value: all };
}
function choice(s: Setting, t: string, initial: string): Read {
  const words = Object.keys(s.options ?? {});
  return words.includes(t) ? { value: t } : unread(`"${t.slice(0, 40)}" is no choice here`, nearestOf(t, words) ?? initial);
}
function idFor(t: string, initial: string, space: Opening): Read {
  const free = (id: string): boolean => !RESERVED.has(id) && ![...space.taken].some((x) => x === id || x.startsWith(`${id}_`));
  // Room for the longest name that a maker puts behind it.
  const fit = ID.test(t) && t.length <= 20;
  if (fit && free(t)) return { value: t };
  const base = fit && t.length <= 16 && !RESERVED.has(t) ? t : initial;
  let nearest = base;
  for (let n = 2; !free(nearest); n++) nearest = `${base}_${n}`;
  const cannot = fit ? `the name "${t}" is taken` : 'a name is a small letter and up to 19 small letters, digits or _';
  return { cannot, limit: 20, asked: t.length, nearest };
}
const part = (t: string): Read =>
  t === '' || /^[a-z][a-z0-9_]*(:[a-z0-9_]+|:\*)*$/.test(t) ? { value: t } : unread('this is no path of a part', '');

function amount(s: Setting, t: string, initial: string): Read {
  const n = s.kind === 'percent' ? wetnessIn(t) : /^\d+(\.\d+)?$/.test(t) ? Number(t) : null;
  if (n === null || !Number.isFinite(n))
    return unread(s.kind === 'percent' ? 'a moisture content ("8"), or the air ("65 % RH")' : 'this is no number', initial);
  const { least = 0, most = Infinity } = s;
  const whole = s.kind !== 'count' || Number.isInteger(n);
  if (n >= least && n <= most && whole) return { value: n };
  const near = Math.min(most, Math.max(least, s.kind === 'count' ? Math.round(n) : n));
  const bound = n < least ? least : most;
  const range = Number.isFinite(most) ? `from ${least} to ${most}` : `from ${least}`;
  return { cannot: `the ${s.words} is ${whole ? 'a number' : 'a whole number'} ${range}`, limit: bound, asked: n, nearest: String(near) };
}
