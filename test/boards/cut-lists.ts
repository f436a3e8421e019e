/**
 * Cut lists of published plans, copied as facts with their source: sizes in inches, dressed softwood or hardwood at the size it is sold,
 * and what the author bought. `least`: boards needed by length alone with a 1/8 in kerf, exact, no end trim; worked out by hand or by
 * complete search outside this project.
 */
export type ListPart = { readonly name: string; readonly qty: number; readonly l: number };
export type CutList = {
  readonly title: string;
  readonly source: string;
  readonly stock: string;
  readonly t: number;
  readonly w: number;
  readonly stockLength: number;
  readonly parts: readonly ListPart[];
  readonly bought: number;
  readonly least: number;
};
const p = (name: string, qty: number, l: number): ListPart => ({ name, qty, l });

const bed = {
  title: 'king bed frame with planked head and foot',
  source: 'ana-white.com, farmhouse bed, standard king size',
  stockLength: 96,
};
const table = { title: 'dining table with braced square ends', source: 'efsa-scotland.org, copy of a public plan of a farmhouse table' };
const stand = { title: 'bedside stand with drawer', source: 'morelikehome.net 2015/03, nightstands day 2' };

export const CUT_LISTS: readonly CutList[] = [
  { ...bed, stock: '4x4', t: 3.5, w: 3.5, parts: [p('head post', 2, 54), p('foot post', 2, 21)], bought: 2, least: 2 },
  {
    ...bed,
    stock: '2x2',
    t: 1.5,
    w: 1.5,
    parts: [p('head cleat', 2, 30), p('foot cleat long', 2, 8), p('foot cleat short', 2, 3)],
    bought: 1,
    least: 1,
  },
  { ...bed, stock: '1x6', t: 0.75, w: 5.5, parts: [p('head plank', 14, 30), p('foot plank', 14, 15)], bought: 7, least: 7 },
  { ...bed, stock: '1x4', t: 0.75, w: 3.5, parts: [p('panel batten', 4, 77)], bought: 4, least: 4 },
  { ...bed, stock: '2x6', t: 1.5, w: 5.5, parts: [p('cap board', 2, 86)], bought: 2, least: 2 },
  { ...bed, stock: '1x10', t: 0.75, w: 9.25, parts: [p('side rail', 2, 80)], bought: 2, least: 2 },
  {
    ...bed,
    stock: '2x4',
    t: 1.5,
    w: 3.5,
    parts: [p('cap rail', 2, 84), p('mattress bearer', 4, 83.5), p('head tie', 1, 77), p('centre leg', 4, 12.5), p('slat', 11, 77)],
    bought: 18,
    least: 18,
  },
  {
    ...table,
    stock: '2x4',
    t: 1.5,
    w: 3.5,
    stockLength: 96,
    parts: [
      p('corner brace', 8, 11.375),
      p('end spreader', 4, 20),
      p('end diagonal', 8, 32.625),
      p('long rail', 2, 65),
      p('knee brace', 2, 30.375),
    ],
    bought: 7,
    least: 7,
  },
  {
    ...table,
    stock: '1x4',
    t: 0.75,
    w: 3.5,
    stockLength: 144,
    parts: [p('end trim', 4, 28.375), p('trim block', 4, 3.5)],
    bought: 1,
    least: 1,
  },
  { ...table, stock: '2x10', t: 1.5, w: 9.25, stockLength: 96, parts: [p('top plank', 4, 96)], bought: 4, least: 4 },
  {
    // Its author bought eight: halving a 96 in board gives 47-15/16, not 48.
    title: 'slatted garden bench',
    source: 'home.howstuffworks.com, backyard benches',
    stock: '2x4',
    t: 1.5,
    w: 3.5,
    stockLength: 96,
    parts: [
      p('slat', 9, 48),
      p('short slat', 1, 40),
      p('base rail', 2, 20),
      p('leg or arm', 4, 17),
      p('back upright', 2, 31),
      p('seat bearer', 2, 23.75),
    ],
    bought: 8,
    least: 9,
  },
  {
    ...stand,
    stock: '1x4',
    t: 0.75,
    w: 3.5,
    stockLength: 96,
    parts: [p('board', 8, 18), p('drawer side', 2, 11.25), p('drawer back', 1, 14)],
    bought: 2,
    least: 2,
  },
  {
    ...stand,
    stock: '1x6',
    t: 0.75,
    w: 5.5,
    stockLength: 72,
    parts: [p('side', 2, 14), p('back', 1, 16.5), p('drawer front', 1, 16.25)],
    bought: 1,
    least: 1,
  },
  {
    ...stand,
    stock: '1x3',
    t: 0.75,
    w: 2.5,
    stockLength: 144,
    parts: [p('leg', 4, 16), p('front trim', 2, 12), p('side trim', 2, 6.625)],
    bought: 1,
    least: 1,
  },
  {
    // Bought five.
    title: 'farm table',
    source: 'storefrontlife.com, farmhouse table',
    stock: '2x4',
    t: 1.5,
    w: 3.5,
    stockLength: 96,
    parts: [p('long', 2, 78), p('short', 2, 17.25), p('longest', 1, 85), p('middle', 2, 24.25)],
    bought: 5,
    least: 4,
  },
  // 4 × 24 and three kerfs are 96-3/8: three come from a 96 in board, four from one of 97. After mowryjournal.com 2017/05.
  {
    title: 'signs, boards as labelled',
    source: 'mowryjournal.com 2017/05/03',
    stock: '1x8',
    t: 0.75,
    w: 7.25,
    stockLength: 96,
    parts: [p('sign', 27, 24)],
    bought: 9,
    least: 9,
  },
  {
    title: 'signs, boards an inch over',
    source: 'mowryjournal.com 2017/05/03',
    stock: '1x8',
    t: 0.75,
    w: 7.25,
    stockLength: 97,
    parts: [p('sign', 27, 24)],
    bought: 7,
    least: 7,
  },
];
