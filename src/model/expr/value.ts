/** What an expression comes to, and what may be added to what. */
import { INCH } from '../../units/ratio.ts';

/**
 * length: mm. angle: radians. number: a bare ratio, made by dividing a length by a length. flex: a bare number as written, which
 * stands for the document's unit where a length is wanted, for degrees where an angle is wanted, and for itself in products.
 */
export type Value = { readonly dim: 'flex' | 'length' | 'angle' | 'number'; readonly v: number };
export type DocUnit = 'mm' | 'in';
export type Got = { readonly ok: true; readonly v: number } | { readonly ok: false; readonly problem: string };

export const mmOf = (unit: DocUnit): number => (unit === 'in' ? INCH : 1);
const WORDS = { flex: 'a number', length: 'a length', angle: 'an angle', number: 'a plain number' } as const;
export const dimWords = (v: Value): string => WORDS[v.dim];
const no = (wanted: string, v: Value): Got => ({ ok: false, problem: `${wanted} is wanted here, and this is ${dimWords(v)}` });

/** mm. */
export function asLength(v: Value, unit: DocUnit): Got {
  if (v.dim === 'length') return { ok: true, v: v.v };
  return v.dim === 'flex' ? { ok: true, v: v.v * mmOf(unit) } : no('a length', v);
}
/** A count or a ratio. */
export function asNumber(v: Value): Got {
  return v.dim === 'number' || v.dim === 'flex' ? { ok: true, v: v.v } : no('a plain number', v);
}
/** Radians; a bare number is taken as degrees. */
export function asAngle(v: Value): Got {
  if (v.dim === 'angle') return { ok: true, v: v.v };
  return v.dim === 'flex' ? { ok: true, v: (v.v * Math.PI) / 180 } : no('an angle', v);
}

/** Two values brought to one kind, so that they may be added or compared; null where they never can be. */
export function alike(a: Value, b: Value, unit: DocUnit): { readonly dim: Value['dim']; readonly a: number; readonly b: number } | null {
  if (a.dim === b.dim) return { dim: a.dim, a: a.v, b: b.v };
  const k = mmOf(unit);
  if (a.dim === 'length' && b.dim === 'flex') return { dim: 'length', a: a.v, b: b.v * k };
  if (a.dim === 'flex' && b.dim === 'length') return { dim: 'length', a: a.v * k, b: b.v };
  const plain = (v: Value): boolean => v.dim === 'flex' || v.dim === 'number';
  return plain(a) && plain(b) ? { dim: 'number', a: a.v, b: b.v } : null;
}
