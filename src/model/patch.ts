/** Changes of a document as data: applied, undone, checked for staleness. */
import type { Json, Patch } from './finding.ts';

export type Applied =
  | { readonly ok: true; readonly json: Json; readonly undo: readonly Patch[] }
  | { readonly ok: false; readonly problem: string; readonly patch: Patch };

/**
 * Applies patches in order to a JSON value without changing it; returns the new value (sharing what did not change) and the
 * patches that undo them. A patch whose `was` no longer holds, or whose path leads nowhere, stops the whole: nothing is applied.
 */
export function applyPatches(json: Json, patches: readonly Patch[]): Applied {
  let now = json;
  const undo: Patch[] = [];
  for (const patch of patches) {
    const keys = patch.path.split('/').filter((k) => k !== '');
    if (keys.some((k) => k === '__proto__' || k === 'constructor' || k === 'prototype'))
      return { ok: false, problem: `"${patch.path}" is not a place in a document`, patch };
    const step = applyAt(now, keys, patch);
    if (!step.ok) return { ok: false, problem: step.problem, patch };
    now = step.json;
    undo.unshift(step.undo);
  }
  return { ok: true, json: now, undo };
}

type Step = { ok: true; json: Json; undo: Patch } | { ok: false; problem: string };

function applyAt(json: Json, keys: readonly string[], patch: Patch): Step {
  const [key, ...rest] = keys;
  if (key === undefined) return replaceRoot(json, patch);
  if (json === null || typeof json !== 'object') return { ok: false, problem: `nothing can stand at "${patch.path}"` };
  const has = Array.isArray(json) ? key === '-' || (/^\d+$/.test(key) && Number(key) < json.length) : Object.hasOwn(json, key);
  const child = has && key !== '-' ? (json as Record<string, Json>)[key] : undefined;
  if (rest.length) {
    if (child === undefined && patch.op === 'remove') return { ok: false, problem: `there is nothing at "${patch.path}"` };
    const inner = applyAt(child ?? {}, rest, patch);
    if (!inner.ok) return inner;
    // A branch that this patch had to make goes again with the undo.
    const undo: Patch =
      child === undefined ? { op: 'remove', path: patch.path.split('/').filter(Boolean).slice(0, -rest.length).join('/') } : inner.undo;
    return { ok: true, json: withKey(json, key, inner.json), undo };
  }
  if (patch.was !== undefined && !sameJson(child ?? null, patch.was))
    return { ok: false, problem: `"${patch.path}" has changed meanwhile` };
  if (patch.op !== 'add' && child === undefined) return { ok: false, problem: `there is nothing at "${patch.path}"` };
  if (patch.op === 'remove') return { ok: true, json: withoutKey(json, key), undo: { op: 'add', path: patch.path, value: child ?? null } };
  if (patch.value === undefined) return { ok: false, problem: `the change at "${patch.path}" says no value` };
  if (Array.isArray(json)) return intoList(json, key, child, patch, patch.value);
  const undo: Patch = child === undefined ? { op: 'remove', path: patch.path } : { op: 'replace', path: patch.path, value: child };
  return { ok: true, json: withKey(json, key, patch.value), undo };
}

/** 'add' into a list inserts (at '-': appends); 'replace' exchanges. */
function intoList(list: readonly Json[], key: string, child: Json | undefined, patch: Patch, value: Json): Step {
  if (patch.op === 'replace')
    return { ok: true, json: withKey(list, key, value), undo: { op: 'replace', path: patch.path, value: child ?? null } };
  const at = key === '-' ? list.length : Number(key);
  const undo: Patch = { op: 'remove', path: `${patch.path.slice(0, patch.path.length - key.length)}${at}` };
  return { ok: true, json: [...list.slice(0, at), value, ...list.slice(at)], undo };
}
function replaceRoot(json: Json, patch: Patch): Step {
  if (patch.op === 'remove' || patch.value === undefined) return { ok: false, problem: 'the whole document cannot be taken away' };
  return { ok: true, json: patch.value, undo: { op: 'replace', path: '', value: json } };
}
function withKey(json: Json, key: string, value: Json): Json {
  if (Array.isArray(json)) return json.map((v, i) => (i === Number(key) ? value : v));
  return { ...(json as Record<string, Json>), [key]: value };
}
function withoutKey(json: Json, key: string): Json {
  if (Array.isArray(json)) return json.filter((_, i) => i !== Number(key));
  const out = { ...(json as Record<string, Json>) };
  delete out[key];
  return out;
}
/** Equal as values; the order of keys does not count. */
export function sameJson(a: Json, b: Json): boolean {
  if (a === b) return true;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object' || Array.isArray(a) !== Array.isArray(b)) return false;
  const ka = Object.keys(a);
  return (
    ka.length === Object.keys(b).length &&
    ka.every((k) => Object.hasOwn(b, k) && sameJson((a as Record<string, Json>)[k] ?? null, (b as Record<string, Json>)[k] ?? null))
  );
}
