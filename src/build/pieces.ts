/** `made`: a part glued up from layers and staves, as boxes of its stock. */
import { type Box } from '../geom/box.ts';
import type { PartDoc } from '../model/document.ts';
import { asLength } from '../model/expr/evaluate.ts';
import { QUADS } from '../model/ids.ts';
import { type Problem, problem } from '../model/problem.ts';
import type { Resolution, Resolved } from './resolve.ts';

export type Piece = { readonly box: Box; readonly name: string };
const MOST = 200;

/**
 * The pieces of one copy, outermost division first: 'top#1.3' is stave 3 of layer 1. One piece when the part is not made up. As drawn
 * the layers must add up to the part; as built a measured part has more or less wood than its layers were planned to, and each takes its share.
 */
export function piecesOf(
  r: Resolved,
  stock: Box,
  resolution: Resolution,
  unit: 'mm' | 'in',
  asBuilt: boolean,
  problems: Problem[],
): Piece[] {
  let pieces: Piece[] = [{ box: stock, name: '' }];
  const doc = r.instance.doc as PartDoc;
  for (const [i, m] of (doc.made ?? []).entries()) {
    const where = `parts/${r.instance.id}/made/${i}`;
    const axis = QUADS.findIndex((q) => q.size === m.along) as 0 | 1 | 2;
    const sizes = (box: Box): number[] | null => {
      const whole = box.max[axis] - box.min[axis];
      return 'layers' in m ? layers(m.layers, whole, m.along, where) : staves(m.staves.widest, whole, where);
    };
    const next: Piece[] = [];
    for (const p of pieces) {
      const list = sizes(p.box);
      if (!list) return [{ box: stock, name: '' }];
      let from = p.box.min[axis];
      list.forEach((s, k) => {
        const to = k === list.length - 1 ? p.box.max[axis] : from + s;
        next.push({
          box: { min: withAt(p.box.min, axis, from), max: withAt(p.box.max, axis, to) },
          name: p.name ? `${p.name}.${k + 1}` : `${k + 1}`,
        });
        from = to;
      });
    }
    pieces = next;
  }
  return pieces;

  function mm(text: string | number, where: string): number | null {
    const v = resolution.evaluate(r.instance, text, where);
    if (!v.ok) problems.push(...v.problems);
    const n = v.ok ? asLength(v.value, unit) : null;
    if (n && !n.ok) problems.push(problem(where, n.problem));
    return n?.ok ? n.v : null;
  }
  function layers(list: readonly (string | number)[], whole: number, along: string, where: string): number[] | null {
    const out = list.map((t, k) => mm(t, `${where}/layers/${k}`));
    if (out.some((n) => n !== null && !(n > 0))) problems.push(problem(where, 'every layer must be above 0.'));
    if (out.some((n) => n === null || !(n > 0))) return null;
    const sum = (out as number[]).reduce((a, b) => a + b, 0);
    if (asBuilt) return (out as number[]).map((n) => (n * whole) / sum);
    if (Math.abs(sum - whole) > 0.01) {
      problems.push(
        problem(where, `the layers of "${r.instance.path}" add up to ${sum.toFixed(2)} mm, but its ${along} is ${whole.toFixed(2)} mm.`),
      );
      return null;
    }
    return out as number[];
  }
  function staves(widest: string | number, whole: number, where: string): number[] | null {
    const w = mm(widest, `${where}/staves/widest`);
    if (w !== null && !(w > 0)) problems.push(problem(`${where}/staves/widest`, 'the widest stave must be above 0.'));
    if (w === null || !(w > 0)) return null;
    const n = Math.max(1, Math.ceil(whole / w - 1e-9));
    if (n > MOST) {
      problems.push(
        problem(where, `"${r.instance.path}" would be glued up from ${n} staves; at most ${MOST} are allowed. Let them be wider.`),
      );
      return null;
    }
    return Array.from({ length: n }, () => whole / n);
  }
}
function withAt(v: Box['min'], axis: 0 | 1 | 2, n: number): Box['min'] {
  const out: [number, number, number] = [v[0], v[1], v[2]];
  out[axis] = n;
  return out;
}
