/** Works an expression out. */
import { nearestInteger } from '../../units/round.ts';
import type { Asking, Expr, Operator } from './parse.ts';
import { exprText } from './text.ts';
import { type DocUnit, type Value, alike, dimWords, mmOf } from './value.ts';

export { type DocUnit, type Value, asAngle, asLength, asNumber } from './value.ts';
export type Evaluated = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: string };
/** Answers what a size, a reading or a spot comes to; a spot's two places are left for it to evaluate, for only it knows where from. */
export type Look = (node: Asking) => Evaluated;

const fail = (problem: string): Evaluated => ({ ok: false, problem });
const done = (dim: Value['dim'], v: number): Evaluated => ({ ok: true, value: { dim, v } });

/** The value of an expression in a document of this unit. Trouble is told, never thrown: mixed kinds, division by zero, numbers without end. */
export function evaluateExpr(expr: Expr, unit: DocUnit, look: Look): Evaluated {
  const r = work(expr, unit, look);
  if (!r.ok) return r;
  if (!Number.isFinite(r.value.v)) return fail(`${exprText(expr, unit)} comes to no finite number`);
  return r.value.v === 0 ? done(r.value.dim, 0) : r;
}

function work(e: Expr, unit: DocUnit, look: Look): Evaluated {
  if (e.k === 'lit') return { ok: true, value: e.value };
  if (e.k === 'size' || e.k === 'read' || e.k === 'on') return look(e);
  if (e.k === 'neg') {
    const a = evaluateExpr(e.a, unit, look);
    return a.ok ? done(a.value.dim, -a.value.v) : a;
  }
  if (e.k === 'bin') {
    const a = evaluateExpr(e.a, unit, look);
    if (!a.ok) return a;
    const b = evaluateExpr(e.b, unit, look);
    return b.ok ? binary(e.op, a.value, b.value, unit, e) : b;
  }
  const args: Value[] = [];
  for (const arg of e.args) {
    const r = evaluateExpr(arg, unit, look);
    if (!r.ok) return r;
    args.push(r.value);
  }
  return e.fn === 'round' ? rounded(args, unit, e) : extreme(e.fn, args, unit, e);
}

function binary(op: Operator, a: Value, b: Value, unit: DocUnit, e: Expr): Evaluated {
  if (op === '*') return times(a, b, e, unit);
  if (op === '/') return over(a, b, e, unit);
  const both = alike(a, b, unit);
  if (!both) return fail(`${dimWords(a)} and ${dimWords(b)} cannot be ${op === '+' ? 'added' : 'subtracted'}: ${exprText(e, unit)}`);
  return done(both.dim, op === '+' ? both.a + both.b : both.a - both.b);
}

const plain = (v: Value): boolean => v.dim === 'flex' || v.dim === 'number';

function times(a: Value, b: Value, e: Expr, unit: DocUnit): Evaluated {
  if (!plain(a) && !plain(b)) return fail(`${dimWords(a)} times ${dimWords(b)} is no size: ${exprText(e, unit)}`);
  const dim = !plain(a) ? a.dim : !plain(b) ? b.dim : a.dim === 'flex' || b.dim === 'flex' ? 'flex' : 'number';
  return done(dim, a.v * b.v);
}

function over(a: Value, b: Value, e: Expr, unit: DocUnit): Evaluated {
  if (b.v === 0) return fail(`division by zero in ${exprText(e, unit)}`);
  if (plain(b)) return done(a.dim, a.v / b.v);
  // A bare number over a length is a length in the document's unit over a length.
  const both = a.dim === b.dim || a.dim === 'flex' ? alike(a, b, unit) : null;
  return both ? done('number', both.a / both.b) : fail(`${dimWords(a)} cannot be divided by ${dimWords(b)}: ${exprText(e, unit)}`);
}

function extreme(fn: 'min' | 'max', args: readonly Value[], unit: DocUnit, e: Expr): Evaluated {
  let best = args[0];
  if (!best) return fail(`${fn} needs something to choose from`);
  for (const next of args.slice(1)) {
    const both = alike(best, next, unit);
    if (!both) return fail(`${fn} cannot choose between ${dimWords(best)} and ${dimWords(next)}: ${exprText(e, unit)}`);
    best = { dim: both.dim, v: fn === 'min' ? Math.min(both.a, both.b) : Math.max(both.a, both.b) };
  }
  return { ok: true, value: best };
}

/** To whole mm, inches or degrees, or to whole steps; halves go away from zero. */
function rounded(args: readonly Value[], unit: DocUnit, e: Expr): Evaluated {
  const [x, step] = args;
  if (!x) return fail('round needs a size');
  if (!step) {
    const one = x.dim === 'length' ? mmOf(unit) : x.dim === 'angle' ? Math.PI / 180 : 1;
    return done(x.dim, nearestInteger(x.v / one) * one);
  }
  const both = alike(x, step, unit);
  if (!both) return fail(`${dimWords(x)} cannot be rounded to steps of ${dimWords(step)}: ${exprText(e, unit)}`);
  if (!(both.b > 0)) return fail(`a step to round to is above 0: ${exprText(e, unit)}`);
  return done(both.dim, nearestInteger(both.a / both.b) * both.b);
}
