/** Writes an expression back, for messages and patches. */
import { writeLength } from '../../units/write.ts';
import type { Expr } from './parse.ts';
import { pathText } from './path.ts';
import type { DocUnit, Value } from './value.ts';

const BIND = { '+': 1, '-': 1, '*': 2, '/': 2 } as const;

/** A text that reads back as the same expression (a literal to 1e-6 mm), in a document of this unit. */
export const exprText = (e: Expr, unit: DocUnit): string => write(e, unit, 0, false);

/** `least` is how tightly the surroundings bind; `right` tells the right-hand side of - and /. */
function write(e: Expr, unit: DocUnit, least: number, right: boolean): string {
  if (e.k === 'lit') return literal(e.value, unit, least);
  if (e.k === 'size') return e.id;
  if (e.k === 'read') return `${pathText(e.path)}.${e.of}`;
  if (e.k === 'on') return `${e.axis}on(${pathText(e.path)}.${e.mark}, ${write(e.a, unit, 0, false)}, ${write(e.b, unit, 0, false)})`;
  if (e.k === 'call') return `${e.fn}(${e.args.map((a) => write(a, unit, 0, false)).join(', ')})`;
  if (e.k === 'neg') {
    const inner = `-${write(e.a, unit, 3, false)}`;
    return right ? `(${inner})` : inner;
  }
  const bind = BIND[e.op];
  const text = `${write(e.a, unit, bind, false)} ${e.op} ${write(e.b, unit, bind, true)}`;
  return bind < least || (bind === least && right) ? `(${text})` : text;
}

function literal(v: Value, unit: DocUnit, least: number): string {
  const text =
    v.dim === 'length'
      ? length(v.v, unit)
      : v.dim === 'angle'
        ? `${plainNumber(Number(((v.v * 180) / Math.PI).toFixed(10)))} deg`
        : plainNumber(v.v);
  // Beside * and / a fraction would be read two ways.
  return (text.startsWith('-') && least > 0) || (least > 1 && /[-/]/.test(text)) ? `(${text})` : text;
}

/** In the document's unit, or in the other where that is shorter: 3 mm stays 3 mm in a document in inches. */
function length(mm: number, unit: DocUnit): string {
  const [own, other] = [writeLength(mm, unit), writeLength(mm, unit === 'mm' ? 'in' : 'mm')];
  return other.length + 2 < own.length ? other : own;
}

/** Never with an exponent, which the language has not. */
function plainNumber(n: number): string {
  const s = String(n);
  return s.includes('e') ? n.toFixed(12).replace(/\.?0+$/, '') : s;
}
