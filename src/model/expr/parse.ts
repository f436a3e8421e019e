/** Expressions of sizes: read once into a plain tree, evaluated as often as the sizes change. */
import { toNumber } from '../../units/ratio.ts';
import { nearestWord } from '../nearest.ts';
import { type PathRef, type Refused, pathText, refused } from './path.ts';
import { type Token, tokensOf } from './tokens.ts';
import type { DocUnit, Value } from './value.ts';
import { FUNCTIONS, type FunctionWord, MOST, READINGS, type ReadingWord, SPOTS, isFunction, isReading } from './words.ts';

export { type PathRef, parsePath, parseReading } from './path.ts';
export type { ReadingWord } from './words.ts';
export type Operator = '+' | '-' | '*' | '/';

/** Plain data, fit for JSON. Literals hold mm and radians; a bare number stays as written (see `Value`). */
export type Expr =
  | { readonly k: 'lit'; readonly value: Value }
  | { readonly k: 'size'; readonly id: string }
  | { readonly k: 'read'; readonly path: PathRef; readonly of: ReadingWord | 'run' }
  | { readonly k: 'on'; readonly axis: 'x' | 'y' | 'z'; readonly path: PathRef; readonly mark: string; readonly a: Expr; readonly b: Expr }
  | { readonly k: 'neg'; readonly a: Expr }
  | { readonly k: 'bin'; readonly op: Operator; readonly a: Expr; readonly b: Expr }
  | { readonly k: 'call'; readonly fn: FunctionWord; readonly args: readonly Expr[] };
/** The nodes whose value comes from elsewhere in the document. */
export type Asking = Extract<Expr, { k: 'size' | 'read' | 'on' }>;
export type Parsed = { readonly ok: true; readonly expr: Expr } | Refused;

const BIND: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2 };

/**
 * Reads an expression. The document's unit is not looked at: a bare number keeps it open until it is evaluated, so one tree serves both.
 * Refusals carry the place in the text, a sentence, and where there is one the nearest valid word. Never throws.
 */
export function parseExpr(text: string, _unit: DocUnit): Parsed {
  const before = known.get(text);
  if (before) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const parsed = readText(text);
  known.set(text, parsed);
  return parsed;
}
/** What was read before: an edit changes one text of hundreds. Trees are plain data that nobody changes. */
const known = new Map<string, Parsed>();
const MOST_KNOWN = 4096;
function readText(text: string): Parsed {
  const cut = tokensOf(text);
  if (!cut.ok) return cut;
  const s: Stream = { tokens: cut.tokens, i: 0, end: text.length };
  const r = sum(s, 0, 0);
  if (!r.ok) return r;
  const left = s.tokens[s.i];
  return left ? unexpected(left, text) : r;
}

/** Reads a bare JSON number as it stands, and a text as an expression. */
export function readExpr(source: string | number, unit: DocUnit): Parsed {
  if (typeof source === 'string') return parseExpr(source, unit);
  return Number.isFinite(source)
    ? { ok: true, expr: { k: 'lit', value: { dim: 'flex', v: source } } }
    : refused(0, 'this is no finite number');
}

type Stream = { readonly tokens: readonly Token[]; i: number; readonly end: number };

/** Precedence climbing: everything that binds tighter than `least`. */
function sum(s: Stream, least: number, depth: number): Parsed {
  let left = operand(s, depth);
  for (;;) {
    if (!left.ok) return left;
    const t = s.tokens[s.i];
    const bind = t?.t === 'sign' ? (BIND[t.sign] ?? 0) : 0;
    if (t?.t !== 'sign' || bind <= least) return left;
    s.i++;
    const right = sum(s, bind, depth);
    if (!right.ok) return right;
    left = { ok: true, expr: { k: 'bin', op: t.sign as Operator, a: left.expr, b: right.expr } };
  }
}

function operand(s: Stream, depth: number): Parsed {
  const t = s.tokens[s.i++];
  if (!t) return refused(s.end, 'something is missing at the end');
  if (depth > MOST.depth) return refused(t.at, `this is nested more than ${MOST.depth} deep: name parts of it as sizes`);
  if (t.t === 'lit') return { ok: true, expr: { k: 'lit', value: literalValue(t) } };
  if (t.t === 'name') return named(s, t, depth);
  if (t.sign === '-' || t.sign === '+') {
    // A minus binds tighter than any product: -a*b is (-a)*b, which is the same.
    const r = operand(s, depth + 1);
    return r.ok && t.sign === '-' ? { ok: true, expr: { k: 'neg', a: r.expr } } : r;
  }
  if (t.sign === '(') return closed(s, sum(s, 0, depth + 1), t);
  return refused(t.at, t.sign === ')' ? 'there is nothing in front of this ")"' : `a size is missing in front of "${t.sign}"`);
}

function literalValue(t: Extract<Token, { t: 'lit' }>): Value {
  if (t.lit.kind === 'angle') return { dim: 'angle', v: t.lit.rad };
  return t.lit.kind === 'length' ? { dim: 'length', v: toNumber(t.lit.mm) } : { dim: 'flex', v: toNumber(t.lit.plain) };
}

function closed(s: Stream, inner: Parsed, open: Token): Parsed {
  if (!inner.ok) return inner;
  const t = s.tokens[s.i];
  if (isSign(t, ')')) {
    s.i++;
    return inner;
  }
  return t ? refused(t.at, 'a ")" or a sign between two sizes is missing here') : refused(open.at, 'this "(" is never closed');
}
const isSign = (t: Token | undefined, sign: string): boolean => t?.t === 'sign' && t.sign === sign;

type Name = Extract<Token, { t: 'name' }>;
function named(s: Stream, t: Name, depth: number): Parsed {
  const { path, word } = t;
  if (isSign(s.tokens[s.i], '(')) return called(s, t, depth);
  if (word !== null) return reading(t, word);
  if (path.names.length > 0) return refused(t.end, `say which face or size of "${pathText(path)}" is meant`, `${pathText(path)}.width`);
  if (isFunction(path.id)) return refused(t.end, `${path.id} needs its brackets`, `${path.id}(…)`);
  if (SPOTS.has(path.id)) return refused(t.end, `${path.id} needs its brackets`, `${path.id}(leg.inner, 0, 0)`);
  if (isReading(path.id)) return refused(t.at, `"${path.id}" of what? Say the part in front of it`, `leg.${path.id}`);
  return { ok: true, expr: { k: 'size', id: path.id } };
}

function reading(t: Name, word: string): Parsed {
  if (!isReading(word)) return refused(t.end - word.length, `"${word}" is no face or size of a part`, nearestWord(word, READINGS));
  if (word === 'run' && t.path.names.length > 0) return refused(t.at, 'all copies have the same run', `${t.path.id}.run`);
  return { ok: true, expr: { k: 'read', path: t.path, of: word } };
}

function called(s: Stream, t: Name, depth: number): Parsed {
  const id = t.word === null && t.path.names.length === 0 ? t.path.id : '';
  const axis = SPOTS.get(id);
  if (axis) return spot(s, t, axis, depth);
  if (!isFunction(id))
    return refused(
      t.at,
      `"${id || pathText(t.path)}" cannot be called; there are ${FUNCTIONS.join(', ')}, ${[...SPOTS.keys()].join(', ')}`,
      nearestWord(id, [...FUNCTIONS, ...SPOTS.keys()]),
    );
  const open = s.tokens[s.i++] as Token;
  const args = list(s, depth, open);
  if (!args.ok) return args;
  if (id === 'round' && args.list.length > 2) return refused(t.at, 'round takes one size, or a size and a step');
  return { ok: true, expr: { k: 'call', fn: id, args: args.list } };
}

type Args = { readonly ok: true; readonly list: readonly Expr[] } | Refused;
function list(s: Stream, depth: number, open: Token): Args {
  const out: Expr[] = [];
  for (;;) {
    const r = sum(s, 0, depth + 1);
    if (!r.ok) return r;
    out.push(r.expr);
    if (isSign(s.tokens[s.i], ',')) {
      s.i++;
      continue;
    }
    const end = closed(s, r, open);
    return end.ok ? { ok: true, list: out } : end;
  }
}

/** xon(leg:left.inner, a, b): where a slanting face stands at one spot. */
function spot(s: Stream, t: Name, axis: 'x' | 'y' | 'z', depth: number): Parsed {
  const open = s.tokens[s.i++] as Token;
  const face = s.tokens[s.i++];
  const form = `${axis}on(part.face, one place, the other)`;
  if (face?.t !== 'name' || face.word === null)
    return refused(face?.at ?? s.end, `a part with one of its faces or marks comes first: ${form}`);
  if (!isSign(s.tokens[s.i], ',')) return refused(s.tokens[s.i]?.at ?? s.end, `two places must follow: ${form}`);
  s.i++;
  const args = list(s, depth, open);
  if (!args.ok) return args;
  const [a, b] = args.list;
  if (!a || !b || args.list.length !== 2) return refused(t.at, `two places must follow: ${form}`);
  return { ok: true, expr: { k: 'on', axis, path: face.path, mark: face.word, a, b } };
}

function unexpected(t: Token, text: string): Refused {
  if (t.t !== 'sign') return refused(t.at, `a sign is missing in front of "${text.slice(t.at, t.end)}"`);
  return refused(
    t.at,
    t.sign === ')'
      ? 'this ")" closes nothing'
      : t.sign === '('
        ? 'a sign is missing in front of this "("'
        : `"${t.sign}" cannot stand here`,
  );
}

/** Every node that reads something outside the expression, in the order of the text; a spot before what stands in its brackets. */
export function readsOf(expr: Expr): Asking[] {
  if (expr.k === 'lit') return [];
  if (expr.k === 'size' || expr.k === 'read') return [expr];
  if (expr.k === 'on') return [expr, ...readsOf(expr.a), ...readsOf(expr.b)];
  if (expr.k === 'neg') return readsOf(expr.a);
  return expr.k === 'bin' ? [...readsOf(expr.a), ...readsOf(expr.b)] : expr.args.flatMap(readsOf);
}
