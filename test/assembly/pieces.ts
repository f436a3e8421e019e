/** Pieces whose order was worked out by hand, or is known: the joinery table of the planner's notes, rebuilt here from blocks. */
import type { PlanLink } from '../../src/assembly/part.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { type Block, type Piece, X, Y, Z, back, link, wood } from './wood.ts';

/** Frame in the xy-plane, 20 thick: stiles 50 wide with mortises 30 deep, rails with tenons, panel 10 deep in grooves all round. */
function frameAndPanel(): Piece {
  const panel: Block = [40, 360, 40, 460, 7, 13];
  const tenons: Block[] = [
    [20, 380, 10, 40, 7, 13],
    [20, 380, 460, 490, 7, 13],
  ];
  const parts = [
    wood('stile:left', [[0, 50, 0, 500, 0, 20]], [panel, ...tenons]),
    wood('stile:right', [[350, 400, 0, 500, 0, 20]], [panel, ...tenons]),
    wood('rail:bottom', [[50, 350, 0, 50, 0, 20], tenons[0]!], [panel]),
    wood('rail:top', [[50, 350, 450, 500, 0, 20], tenons[1]!], [panel]),
    wood('panel', [panel]),
  ];
  const rail = (r: string): Piece['links'] => [link(r, 'stile:left', X), link(r, 'stile:right', back(X))];
  return {
    parts,
    links: [
      ...rail('rail:bottom'),
      ...rail('rail:top'),
      {
        joint: 'groove',
        parts: ['panel', 'stile:left', 'stile:right', 'rail:bottom', 'rail:top'],
        frees: [
          { moves: ['stile:left'], along: back(X) },
          { moves: ['stile:right'], along: X },
          { moves: ['rail:bottom'], along: back(Y) },
          { moves: ['rail:top'], along: Y },
        ],
        loose: true,
      },
    ],
  };
}
/** The same with the frame in one piece: nothing moves. */
function panelInOneFrame(): Piece {
  const panel: Block = [40, 360, 40, 460, 7, 13];
  return {
    parts: [wood('frame', [[0, 400, 0, 500, 0, 20]], [[50, 350, 50, 450, 0, 20], panel]), wood('panel', [panel])],
    links: [{ joint: 'groove', parts: ['frame', 'panel'], frees: [], loose: true }],
  };
}
/** Four bars round a square, each tenoned 25 deep into the side of the next. */
function pinwheel(): Piece {
  const ta: Block = [255, 280, 10, 30, 5, 15];
  const tb: Block = [260, 290, 255, 280, 5, 15];
  const tc: Block = [20, 45, 270, 290, 5, 15];
  const td: Block = [10, 40, 20, 45, 5, 15];
  // A bottom, B right, C top, D left: each ends against the side of the next.
  const parts = [
    wood('a', [[0, 255, 0, 45, 0, 20], ta], [td]),
    wood('b', [[255, 300, 0, 255, 0, 20], tb], [ta]),
    wood('c', [[45, 300, 255, 300, 0, 20], tc], [tb]),
    wood('d', [[0, 45, 45, 300, 0, 20], td], [tc]),
  ];
  return { parts, links: [link('a', 'b', back(X)), link('b', 'c', back(Y)), link('c', 'd', X), link('d', 'a', Y)] };
}
/** Left and right are the tail boards (tails stepped: wider at their ends), front and back the pin boards; bottom in grooves all round. */
function dovetailedBox(): Piece {
  const bottom: Block = [8, 292, 8, 192, 12, 18];
  const tails = (x0: number): Block[] =>
    [20, 50, 80].flatMap((z): Block[] => [
      [x0, x0 + 15, 7, 15, z - 8, z + 8],
      [x0, x0 + 15, 0, 7, z - 11, z + 11],
      [x0, x0 + 15, 185, 193, z - 8, z + 8],
      [x0, x0 + 15, 193, 200, z - 11, z + 11],
    ]);
  const [l, r] = [tails(0), tails(285)];
  const parts = [
    wood('left', [[0, 15, 15, 185, 0, 100], ...l], [bottom]),
    wood('right', [[285, 300, 15, 185, 0, 100], ...r], [bottom]),
    wood('front', [[0, 300, 0, 15, 0, 100]], [...l, ...r, bottom]),
    wood('back', [[0, 300, 185, 200, 0, 100]], [...l, ...r, bottom]),
    wood('bottom', [bottom]),
  ];
  const corner = (side: string, away: Vec3): PlanLink[] => [link(side, 'front', away), link(side, 'back', away)];
  const groove: PlanLink = {
    joint: 'groove',
    parts: ['bottom', 'front', 'back', 'left', 'right'],
    frees: [
      { moves: ['front'], along: back(Y) },
      { moves: ['back'], along: Y },
      { moves: ['left'], along: back(X) },
      { moves: ['right'], along: X },
    ],
    loose: true,
  };
  return { parts, links: [...corner('left', back(X)), ...corner('right', X), groove] };
}
/** A top with a tongue and three tenons 50 deep in the cap at its right end, three pegs through cap and tenons. */
function breadboard(): Piece {
  const tongue: Block = [600, 610, 0, 300, 10, 20];
  const tenons = [30, 130, 230].map((y): Block => [600, 650, y, y + 40, 10, 20]);
  const pegs = [50, 150, 250].map((y): Block => [624, 632, y - 4, y + 4, 0, 30]);
  const parts = [
    wood('top', [[0, 600, 0, 300, 0, 30], tongue, ...tenons], pegs),
    wood('cap', [[600, 680, 0, 300, 0, 30]], [tongue, ...tenons, ...pegs]),
    ...pegs.map((p, k) => wood(`end/1/peg${k}`, [p], [], { kind: 'extra', label: `peg ${k + 1}` })),
  ];
  const names = [0, 1, 2].map((k) => `end/1/peg${k}`);
  return {
    parts,
    links: [
      {
        joint: 'end',
        parts: ['top', 'cap', ...names],
        frees: [{ moves: ['cap'], along: X }, ...names.map((n) => ({ moves: [n], along: Z }))],
      },
    ],
  };
}
/** A leg with two rails whose tenons would meet, so their ends are cut back (stepped); a peg from the front through the first tenon. */
function leg(): Piece {
  const one: Block[] = [
    [30, 40, 15, 25, 410, 470],
    [20, 30, 15, 20, 410, 470],
  ];
  const two: Block[] = [
    [15, 25, 30, 40, 410, 470],
    [15, 20, 20, 30, 410, 470],
  ];
  const peg: Block = [32, 38, 0, 28, 437, 443];
  const parts = [
    wood('leg', [[0, 40, 0, 40, 0, 500]], [...one, ...two, peg]),
    wood('rail:long', [[40, 400, 10, 30, 400, 480], ...one], [peg]),
    wood('rail:short', [[10, 30, 40, 300, 400, 480], ...two]),
    wood('pin/1/peg', [peg], [], { kind: 'extra', label: 'peg' }),
  ];
  const links: PlanLink[] = [
    link('rail:long', 'leg', X),
    link('rail:short', 'leg', Y),
    { joint: 'pin', parts: ['pin/1/peg', 'leg', 'rail:long'], frees: [{ moves: ['pin/1/peg'], along: back(Y) }] },
  ];
  return { parts, links };
}
/** A shelf in stopped sliding housings (undercut), slid in from the front, under a top tenoned between the sides. */
function slidingShelf(): Piece {
  const tongue = (x0: number, x1: number, wide: readonly [number, number]): Block[] => [
    [x0, x1, 0, 250, 205, 215],
    [wide[0], wide[1], 0, 250, 202, 218],
  ];
  const [a, b] = [tongue(10, 18, [10, 14]), tongue(382, 390, [386, 390])];
  const pins: Block[] = [
    [6, 18, 60, 110, 384, 396],
    [6, 18, 190, 240, 384, 396],
    [382, 394, 60, 110, 384, 396],
    [382, 394, 190, 240, 384, 396],
  ];
  const parts = [
    wood('left', [[0, 18, 0, 300, 0, 400]], [...a, ...pins]),
    wood('right', [[382, 400, 0, 300, 0, 400]], [...b, ...pins]),
    wood('shelf', [[18, 382, 0, 280, 200, 220], ...a, ...b]),
    wood('top', [[18, 382, 0, 300, 380, 400], ...pins]),
  ];
  return {
    parts,
    links: [link('shelf', 'left', back(Y)), link('shelf', 'right', back(Y)), link('top', 'left', X), link('top', 'right', back(X))],
  };
}
/** Four legs, four aprons with tenons (12 deep across, 20 deep along), a top laid on. */
function table(): Piece {
  const at: Record<string, readonly [number, number]> = {
    'left:front': [0, 0],
    'right:front': [960, 0],
    'left:back': [0, 460],
    'right:back': [960, 460],
  };
  // The short aprons' tenons sit outside the long ones'.
  const side = (x: number): Block[] => [
    [x, x + 8, 28, 40, 630, 690],
    [x, x + 8, 460, 472, 630, 690],
  ];
  const aprons: Record<string, { body: Block; tenons: readonly Block[] }> = {
    front: {
      body: [40, 960, 10, 30, 620, 700],
      tenons: [
        [20, 40, 15, 25, 630, 690],
        [960, 980, 15, 25, 630, 690],
      ],
    },
    back: {
      body: [40, 960, 470, 490, 620, 700],
      tenons: [
        [20, 40, 475, 485, 630, 690],
        [960, 980, 475, 485, 630, 690],
      ],
    },
    left: { body: [4, 24, 40, 460, 620, 700], tenons: side(8) },
    right: { body: [976, 996, 40, 460, 620, 700], tenons: side(984) },
  };
  const tenons = Object.values(aprons).flatMap((a) => a.tenons);
  const parts = [
    ...Object.entries(at).map(([n, [x, y]]) =>
      wood(`leg:${n}`, [[x, x + 40, y, y + 40, 0, 700]], tenons, { label: `${n.split(':').toReversed().join(' ')} leg` }),
    ),
    ...Object.entries(aprons).map(([n, a]) => wood(`apron:${n}`, [a.body, ...a.tenons], [], { label: `${n} apron` })),
    wood('top', [[-30, 1030, -30, 530, 700, 722]]),
  ];
  const links: PlanLink[] = [
    ...['front', 'back'].flatMap((n) => [link(`apron:${n}`, `leg:left:${n}`, X), link(`apron:${n}`, `leg:right:${n}`, back(X))]),
    ...['left', 'right'].flatMap((n) => [link(`apron:${n}`, `leg:${n}:front`, Y), link(`apron:${n}`, `leg:${n}:back`, back(Y))]),
    { joint: 'fix', parts: ['top', 'apron:front', 'apron:back', 'apron:left', 'apron:right'], frees: [{ moves: ['top'], along: Z }] },
  ];
  return { parts, links };
}

export const pieces = { frameAndPanel, panelInOneFrame, pinwheel, dovetailedBox, breadboard, leg, slidingShelf, table };
