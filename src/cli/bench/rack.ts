/** A rack of posts and rails, as many parts as asked for, in records: mortised posts in a row, tenoned rails between neighbours. */
import { type Frame, HOME } from '../../src/geom/frame.ts';
import { slot } from '../../src/geom/loop.ts';
import type { PartRecord } from '../../src/model/record.ts';
import { block, board, feature, prism } from '../support/records.ts';

export type Stood = { readonly who: string; readonly record: PartRecord; readonly frame: Frame };

const LEVELS = 4;
const BAY = 400;
const POST = 45;
const RAIL = { thick: 20, wide: 70 };

/** `parts` of them, five to a bay: a post and four rails. Rail tenons are 8 mm thick and 20 long, and every seventh rail's too thick. */
export function rack(parts: number): Stood[] {
  const out: Stood[] = [];
  for (let i = 0; out.length < parts; i++) {
    out.push({ who: `post ${i + 1}`, record: post(i), frame: { ...HOME, o: [i * BAY, 0, 0] } });
    for (let level = 0; level < LEVELS && out.length < parts; level++)
      out.push({
        who: `rail ${i + 1}.${level + 1}`,
        record: rail(i + level),
        frame: { ...HOME, o: [i * BAY + POST, 12, 150 + 160 * level] },
      });
  }
  return out;
}
/** Mortises of both neighbours' rails on every level; the ones of odd posts have round ends, as a router leaves them. */
function post(i: number): PartRecord {
  const mortises = Array.from({ length: LEVELS }, (_, l) => 150 + 160 * l).flatMap((z, l) =>
    [0, POST - 21].map((x) =>
      i % 2 === 0
        ? block(`mortise ${l}`, 'remove', [x, 18, z + 10], [x + 21, 26, z + RAIL.wide - 10])
        : feature(`mortise ${l}`, 'remove', prism(slot([z + 10, 22], [z + RAIL.wide - 10, 22], 4), x, x + 21), {
            o: [0, 0, 0],
            x: [0, 0, 1],
            y: [0, 1, 0],
            z: [1, 0, 0],
          }),
    ),
  );
  return { ...board(POST, POST, 860 + (i % 3), mortises), key: `post ${i}` };
}
function rail(i: number): PartRecord {
  const long = BAY - POST;
  const low = i % 7 === 0 ? 5.8 : 6;
  return {
    ...board(long, RAIL.thick, RAIL.wide, [
      block('tenon left', 'add', [-20, low, 10], [1, 14, RAIL.wide - 10]),
      block('tenon right', 'add', [long - 1, low, 10], [long + 20, 14, RAIL.wide - 10]),
      block('groove', 'remove', [-1, 0, -1], [long + 1, 5, 3 + (i % 4)]),
    ]),
    key: `rail ${i}`,
  };
}
