/** A part's wood cut out of its stock: the one interpreter of part records on the kernel. */
import { type Box, boxAround, outBox, sizeOf, unionBox } from '../geom/box.ts';
import type { Vec2, Vec3 } from '../geom/vec3.ts';
import type { Feature, FeatureOp, PartRecord } from '../model/record.ts';
import { type Cutter, cutterOf } from './cutter.ts';
import { type Body, kernel } from './kernel.ts';
import { own } from './scope.ts';
import { type Made, blockOf, bodyOf } from './shape.ts';
import type { Solid } from './solid.ts';

export type Cut =
  | { readonly ok: true; readonly solid: Solid }
  /** The record cannot be cut: `problem` names the part and, where it lies there, the feature, and what is wrong. */
  | { readonly ok: false; readonly who: string; readonly feature: string | null; readonly problem: string };

/**
 * ((stock - shapes) + adds) - removes - lates, in the record frame; the solid belongs to the open scope. What the user can
 * get wrong (a size of zero, a profile that crosses itself) comes back as a problem that names `who` and the feature. A part
 * that is cut away whole or in two is still a solid: `factsOf` tells.
 */
export function cutPart(record: PartRecord, { who }: { readonly who: string }): Cut {
  const refuse = (problem: string, feature: string | null = null): Cut => ({
    ok: false,
    who,
    feature,
    problem: feature === null ? `${who}: ${problem}` : `${who}: ${feature} ${problem}`,
  });
  const flaw = stockFlaw(record.stock);
  if (flaw) return refuse(flaw);
  const cutters: Cutter[] = [];
  for (const f of record.features) {
    const cutter = cutterOf(f);
    if (typeof cutter === 'string') return refuse(cutter, f.name);
    cutters.push(cutter);
  }
  const room = roomOf(record, cutters);
  const made: (Made | null)[] = [];
  for (const [i, cutter] of cutters.entries()) {
    const one = bodyOf(cutter, room);
    if (typeof one === 'string') return refuse(one, record.features[i]?.name ?? null);
    made.push(one);
  }
  const stock = blockOf(record.stock);
  const body = assemble(record, stock.body, made);
  const status = body.status();
  if (status !== 'NoError') return refuse(`the kernel could not cut it (${status})`);
  const makers = new Map<number, number | 'stock'>([[stock.original, 'stock']]);
  made.forEach((m, i) => m && makers.set(m.original, i));
  return { ok: true, solid: { who, record, cutters, body, makers } };
}

function stockFlaw(stock: Box): string | null {
  const size = sizeOf(stock);
  if (![...stock.min, ...stock.max].every(Number.isFinite)) return `its stock of ${size.join(' x ')} mm is not all numbers`;
  return size.some((s) => s < 1e-6) ? `its stock of ${size.join(' x ')} mm has no wood in it` : null;
}
/** A box round all wood, adds included. */
export function roomOf(record: PartRecord, cutters: readonly Cutter[]): Box {
  return cutters.reduce((room, c, i) => (record.features[i]?.op === 'add' ? unionBox(room, cutterBox(c) ?? room) : room), record.stock);
}
function cutterBox(c: Cutter): Box | null {
  if (c.kind === 'half') return null;
  const points = [...(c.outline[0]?.points ?? []), ...(c.kind === 'prism' ? (c.to?.[0]?.points ?? []) : [])];
  const spread = (p: Vec2): Vec3[] =>
    c.kind === 'prism'
      ? [
          [p[0], p[1], c.from],
          [p[0], p[1], c.end],
        ]
      : [
          [-p[0], -p[0], p[1]],
          [p[0], p[0], p[1]],
        ];
  const box = boxAround(points.flatMap(spread));
  return box && outBox(c.at, box);
}
function assemble(record: PartRecord, stock: Body, made: readonly (Made | null)[]): Body {
  const of = (...ops: FeatureOp[]): Body[] =>
    made.flatMap((m, i) => (m && ops.includes((record.features[i] as Feature).op) ? [m.body] : []));
  const { Manifold } = kernel();
  const [shapes, adds, removes] = [of('shape'), of('add'), of('remove', 'late')];
  const shaped = shapes.length > 0 ? own(Manifold.difference([stock, ...shapes])) : stock;
  const grown = adds.length > 0 ? own(Manifold.union([shaped, ...adds])) : shaped;
  return removes.length > 0 ? own(Manifold.difference([grown, ...removes])) : grown;
}
