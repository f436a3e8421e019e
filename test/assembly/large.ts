/** Large pieces, to see that planning stays bounded. */
import type { PlanLink } from '../../src/assembly/part.ts';
import { type Block, type Piece, X, Y, Z, back, link, wood } from './wood.ts';

/** A bed base: two rails along x, two ends, `slats` slats tenoned between the rails. */
export function slatted(slats: number): Piece {
  const long = 60 * slats + 40;
  const at = Array.from({ length: slats }, (_, k) => 40 + 60 * k);
  const tenon = (x: number, y0: number, y1: number): Block => [x + 5, x + 35, y0, y1, 45, 55];
  const front = at.map((x) => tenon(x, 10, 30));
  const rear = at.map((x) => tenon(x, 770, 790));
  const ends: Block[] = [
    [-10, 10, 5, 25, 20, 80],
    [-10, 10, 775, 795, 20, 80],
    [long - 10, long + 10, 5, 25, 20, 80],
    [long - 10, long + 10, 775, 795, 20, 80],
  ];
  const parts = [
    wood('rail:front', [[0, long, 0, 30, 0, 100]], [...front, ...ends]),
    wood('rail:back', [[0, long, 770, 800, 0, 100]], [...rear, ...ends]),
    wood('end:left', [[-30, 0, 0, 800, 0, 100], ends[0]!, ends[1]!]),
    wood('end:right', [[long, long + 30, 0, 800, 0, 100], ends[2]!, ends[3]!]),
    ...at.map((x, k) => wood(`slat:${k + 1}`, [[x, x + 40, 30, 770, 40, 60], front[k]!, rear[k]!])),
  ];
  const links: PlanLink[] = [
    ...at.flatMap((_, k) => [link(`slat:${k + 1}`, 'rail:front', Y), link(`slat:${k + 1}`, 'rail:back', back(Y))]),
    ...['front', 'back'].flatMap((r) => [link('end:left', `rail:${r}`, back(X)), link('end:right', `rail:${r}`, X)]),
  ];
  return { parts, links };
}
/** A tower of frames: each level four posts in four corners and four rails tenoned between them, level standing on level by dowels. */
export function tower(levels: number): Piece {
  const parts = [];
  const links: PlanLink[] = [];
  for (let n = 0; n < levels; n++) {
    const z = 200 * n;
    const corners = { a: [0, 0], b: [460, 0], c: [460, 460], d: [0, 460] } as const;
    const pins = Object.values(corners).map(([x, y]): Block => [x + 15, x + 25, y + 15, y + 25, z + 190, z + 220]);
    const rails: Record<string, { body: Block; ends: readonly [Block, Block]; between: readonly [string, string]; along: typeof X }> = {
      front: {
        body: [40, 460, 10, 30, z + 100, z + 180],
        ends: [
          [28, 40, 4, 12, z + 110, z + 170],
          [460, 472, 4, 12, z + 110, z + 170],
        ],
        between: ['a', 'b'],
        along: X,
      },
      back: {
        body: [40, 460, 470, 490, z + 100, z + 180],
        ends: [
          [28, 40, 488, 496, z + 110, z + 170],
          [460, 472, 488, 496, z + 110, z + 170],
        ],
        between: ['d', 'c'],
        along: X,
      },
      left: {
        body: [10, 30, 40, 460, z + 100, z + 180],
        ends: [
          [8, 16, 30, 40, z + 110, z + 170],
          [8, 16, 460, 470, z + 110, z + 170],
        ],
        between: ['a', 'd'],
        along: Y,
      },
      right: {
        body: [470, 490, 40, 460, z + 100, z + 180],
        ends: [
          [484, 492, 30, 40, z + 110, z + 170],
          [484, 492, 460, 470, z + 110, z + 170],
        ],
        between: ['b', 'c'],
        along: Y,
      },
    };
    // Front and back tenons need wood round them.
    const body = (r: string): Block =>
      r === 'front' ? [40, 460, 2, 30, z + 100, z + 180] : r === 'back' ? [40, 460, 470, 498, z + 100, z + 180] : rails[r]!.body;
    const cuts = [
      ...Object.values(rails).flatMap((r) => r.ends),
      ...pins,
      ...pins.map((p): Block => [p[0], p[1], p[2], p[3], p[4] - 200, p[5] - 200]),
    ];
    for (const [name, [x, y]] of Object.entries(corners))
      parts.push(
        wood(`post:${n}:${name}`, [[x, x + 40, y, y + 40, z, z + 200]], n === 0 ? cuts.slice(0, 12) : cuts, { group: `level:${n}` }),
      );
    for (const [name, r] of Object.entries(rails)) {
      parts.push(wood(`rail:${n}:${name}`, [body(name), ...r.ends], [], { group: `level:${n}` }));
      links.push(
        link(`rail:${n}:${name}`, `post:${n}:${r.between[0]}`, r.along),
        link(`rail:${n}:${name}`, `post:${n}:${r.between[1]}`, back(r.along)),
      );
    }
    if (n < levels - 1)
      pins.forEach((p, k) => {
        const name = 'abcd'[k]!;
        parts.push(wood(`pin:${n}:${name}`, [p], [], { kind: 'extra' }));
        links.push({
          joint: `pin:${n}`,
          parts: [`pin:${n}:${name}`, `post:${n}:${name}`, `post:${n + 1}:${name}`],
          frees: [{ moves: [`post:${n + 1}:${name}`], along: Z }],
        });
      });
  }
  return { parts, links };
}
