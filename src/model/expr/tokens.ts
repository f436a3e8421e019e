/** Cuts an expression into its tokens; a length as makers write it is one of them. */
import { plainCharacters } from '../../units/characters.ts';
import { type Literal, UNIT_WORDS, literalAt } from '../../units/literal.ts';
import { nearestWord } from '../nearest.ts';
import { type PathRef, type Refused, pathAt, refused } from './path.ts';
import { MOST } from './words.ts';

export type Token =
  | { readonly t: 'lit'; readonly at: number; readonly end: number; readonly lit: Exclude<Literal, { kind: 'ask' | 'bad' }> }
  | { readonly t: 'name'; readonly at: number; readonly end: number; readonly path: PathRef; readonly word: string | null }
  | { readonly t: 'sign'; readonly at: number; readonly end: number; readonly sign: '+' | '-' | '*' | '/' | '(' | ')' | ',' };

const SIGNS = new Set(['+', '-', '*', '/', '(', ')', ',']);

/** All tokens of the text, or the first place that cannot be read. */
export function tokensOf(text: string): { readonly ok: true; readonly tokens: readonly Token[] } | Refused {
  const t = plainCharacters(text);
  const tokens: Token[] = [];
  // For each open bracket whether it is a function's: only there a comma parts two numbers.
  const brackets: boolean[] = [];
  let i = 0;
  while (i < t.length) {
    if (t[i] === ' ') {
      i++;
      continue;
    }
    if (tokens.length >= MOST.tokens) return refused(i, `this has more than ${MOST.tokens} words and signs: name parts of it as sizes`);
    const next = tokenAt(t, i, tokens.at(-1), brackets.at(-1) ?? false);
    if ('ok' in next) return next;
    if (next.t === 'sign') {
      const last = tokens.at(-1);
      if (next.sign === '(') brackets.push(last?.t === 'name');
      if (next.sign === ')') brackets.pop();
    }
    tokens.push(next);
    i = next.end;
  }
  return tokens.length > 0 ? { ok: true, tokens } : refused(0, 'nothing is written here');
}

function tokenAt(t: string, i: number, last: Token | undefined, inCall: boolean): Token | Refused {
  const before = last?.t === 'sign' && (last.sign === '*' || last.sign === '/') ? last.sign : undefined;
  const lit = literalAt(t, i, { before, inCall });
  if (lit) return literalToken(t, i, lit, before);
  const c = t[i] as string;
  if (SIGNS.has(c)) return { t: 'sign', at: i, end: i + 1, sign: c as '+' };
  const name = pathAt(t, i);
  if (name === null) return refused(i, `${printable(t.codePointAt(i) as number)} cannot stand here`);
  if (!name.ok) return name;
  return { t: 'name', at: i, end: name.end, path: name.path, word: name.word };
}

function literalToken(t: string, i: number, lit: Literal, before: '*' | '/' | undefined): Token | Refused {
  const written = t.slice(i, lit.end).trim();
  if (lit.kind === 'bad') return refused(lit.at, lit.problem, lit.nearest[0]);
  if (lit.kind === 'ask') {
    const ways = lit.readings.map((r) => r.text);
    const words = ways.length > 1 ? `can be read two ways: ${ways.join(' or ')}` : `is not sure: write ${ways.join('')} if that is meant`;
    return refused(i, `"${written}" ${words}`, ways[0]);
  }
  if ('dashed' in lit && lit.dashed) {
    // 2-1/2*x: is it two and a half times x, or two less half of x?
    const after = /^ *([*/])/.exec(t.slice(lit.end, lit.end + 40))?.[1];
    const beside = before ?? after;
    if (beside)
      return refused(i, `beside "${beside}", "${written}" can be read two ways: put brackets round what belongs together`, `(${written})`);
  }
  if (lit.kind === 'number') {
    const word = /^ *([a-zA-Z]+)/.exec(t.slice(lit.end, lit.end + 40));
    if (word) return refused(lit.end, `"${word[1]}" is no unit of length or angle`, nearestWord(word[1] as string, UNIT_WORDS));
  }
  return { t: 'lit', at: i, end: lit.end, lit };
}

/** One character fit to be shown in a message. */
const printable = (point: number): string => {
  const c = String.fromCodePoint(point);
  return /[\p{C}\p{Z}]/u.test(c) ? `the hidden character ${point.toString(16).padStart(4, '0')}` : `"${c}"`;
};
