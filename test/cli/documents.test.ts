/** Whole documents through the command line, every number worked out by hand beside it. mm unless it says inches. */
import { describe, expect, test } from 'vitest';
import { dryfit, fixturePath } from '../support/cli.ts';

type Size = { readonly length: number; readonly width: number; readonly thickness: number };
type Checked = {
  readonly verdict: string;
  readonly counts: { readonly parts: number; readonly joints: number; readonly kinds: number; readonly extras: number };
  readonly findings: readonly {
    readonly rule: string;
    readonly grade: string;
    readonly parts: readonly string[];
    readonly measured: number;
    readonly limit: number;
    readonly basis: string;
  }[];
  readonly sizes: Readonly<Record<string, number>>;
  readonly parts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly finished: Size;
    readonly stock: readonly (readonly number[])[];
    readonly pieces: readonly (readonly number[])[];
    readonly key: string;
  }[];
  readonly spaces: readonly { readonly id: string; readonly min: readonly number[]; readonly max: readonly number[] }[];
};
type Row = {
  readonly part: string;
  readonly count: number;
  readonly wood: string;
  readonly handedOf: string | null;
  readonly letter: string;
  readonly finished: Size;
};

const IN = 25.4;
/** In inches, without the last digits of a division. */
const inches = (mm: number): number => Number((mm / IN).toFixed(6));
const run = (verb: string, name: string, exit: number, ...more: readonly string[]): unknown => {
  const ran = dryfit(process.cwd(), verb, fixturePath(name), '--json', ...more);
  expect(ran.code, ran.err).toBe(exit);
  return JSON.parse(ran.out);
};
const check = (name: string, exit = 0): Checked => run('check', name, exit) as Checked;
const list = (name: string, exit = 0): readonly Row[] => (run('list', name, exit) as { rows: Row[] }).rows;
const stockOf = (c: Checked, id: string): number[] => {
  const p = c.parts.find((q) => q.id === id);
  if (!p) throw new Error(`no ${id} among ${c.parts.map((q) => q.id).join(', ')}`);
  return (p.stock[1] ?? []).map((m, i) => m - (p.stock[0]?.[i] ?? 0));
};
function expectStock(c: Checked, table: Readonly<Record<string, readonly number[]>>): void {
  for (const [id, want] of Object.entries(table))
    stockOf(c, id).forEach((got, i) => expect(got, `${id}, axis ${i}`).toBeCloseTo(want[i] ?? 0, 4));
}
const loud = (c: Checked): string[] => c.findings.filter((f) => f.grade !== 'note').map((f) => `${f.rule}: ${f.parts.join(' ')}`);
const row = (rows: readonly Row[], part: string): [number, number, number, number][] =>
  rows.filter((r) => r.part === part).map((r) => [r.count, r.finished.length, r.finished.width, r.finished.thickness]);

test('hearth stool: leaning legs by trigonometry, nine places', () => {
  const c = check('hearth-stool');
  expect(c.counts).toMatchObject({ parts: 7, joints: 9 });
  expect(loud(c)).toEqual([]);
  // Leg below the seat, to the long points: 12.5 in / cos 15° + 1.5 in · tan 15°; rungs: √3 (101.6 + 234.95 tan 15°) less the 1.5 in legs.
  const a = Math.PI / 12;
  const leg = (12.5 * IN) / Math.cos(a) + 1.5 * IN * Math.tan(a);
  const rung = Math.sqrt(3) * (101.6 + 234.95 * Math.tan(a)) - 1.5 * IN;
  expectStock(c, {
    seat: [11 * IN, 11 * IN, 1.5 * IN],
    'leg:1': [1.5 * IN, 1.5 * IN, leg],
    'leg:2': [1.5 * IN, 1.5 * IN, leg],
    'leg:3': [1.5 * IN, 1.5 * IN, leg],
    'rung:1': [rung, (7 / 8) * IN, (7 / 8) * IN],
    'rung:2': [rung, (7 / 8) * IN, (7 / 8) * IN],
    'rung:3': [rung, (7 / 8) * IN, (7 / 8) * IN],
  });
  expect(leg).toBeCloseTo(338.909052, 5);
  expect(rung).toBeCloseTo(246.917037, 5);
  // One kind of rung. The legs differ in the saw cut for the wedge alone, which lies across the grain of the seat and not of the leg.
  expect(new Set(c.parts.filter((p) => p.id.startsWith('rung')).map((p) => p.key)).size).toBe(1);
});

describe('window table: one leg measured', () => {
  const c = check('window-table');
  test('drawn by the numbers, built with the measured leg', () => {
    expect(c.counts).toMatchObject({ parts: 9, joints: 12 });
    expect(loud(c)).toEqual([]);
    // Aprons: 1200 - 2·40 - 2·45 = 1030 and 600 - 2·40 - 2·45 = 430; legs 735 - 22. The measured leg is 0.8 slimmer, so the rear apron 0.8 longer.
    expectStock(c, {
      'leg:left:front': [45, 45, 713],
      'leg:right:rear': [44.2, 45, 713],
      'long_apron:front': [1030, 20, 90],
      'long_apron:rear': [1030.8, 20, 90],
      'short_apron:left': [20, 430, 90],
      'short_apron:right': [20, 430, 90],
      top: [1200, 600, 22],
    });
    // Top: five staves of 120. Legs: two layers of 22.5.
    expect(c.parts.find((p) => p.id === 'top')?.pieces).toEqual(Array.from({ length: 5 }, () => [1200, 120, 22]));
    expect(c.parts.find((p) => p.id === 'leg:left:front')?.pieces).toEqual([
      [45, 22.5, 713],
      [45, 22.5, 713],
    ]);
  });
});

describe('linen chest: three graduated drawers from the maker in named spaces', () => {
  const c = check('linen-chest');
  // 700 high, less the foot of 50 and four boards of 20: 570 for three openings, each 30 higher than the last: 160, 190, 220.
  test('the openings', () => {
    expect(c.sizes['first']).toBe(160);
    expect(c.spaces.map((s) => [s.id, (s.max[0] ?? 0) - (s.min[0] ?? 0), (s.max[2] ?? 0) - (s.min[2] ?? 0), s.min[2]])).toEqual([
      ['lower', 760, 220, 70],
      ['middle', 760, 190, 310],
      ['upper', 760, 160, 520],
    ]);
  });
  test('it goes together, with nothing to watch', () => {
    expect(c.verdict).toBe('together');
    expect(c.findings).toEqual([]);
    // Two corners at the top, six ends of boards; each drawer: four corners, two side grooves and one in the front.
    expect(c.counts).toMatchObject({ parts: 2 + 1 + 3 + 3 * 5, joints: 2 + 6 + 3 * (2 + 2 + 2 + 1) });
  });
  test('the cut list', () => {
    const rows = list('linen-chest');
    // Fronts: 760 less 1 of air on each side; 2 less than the opening high.
    expect([row(rows, 'drawer_a_front'), row(rows, 'drawer_b_front'), row(rows, 'drawer_c_front')]).toEqual([
      [[1, 758, 158, 18]],
      [[1, 758, 188, 18]],
      [[1, 758, 218, 18]],
    ]);
    // Sides: 450 less 10 behind. Left and right are a handed pair: the groove is on the inside.
    expect(row(rows, 'drawer_a_side')).toEqual([
      [1, 440, 158, 12],
      [1, 440, 158, 12],
    ]);
    // Backs stand on the bottom (10 + 8 up) and 3 below the sides' top: 158 - 18 - 3.
    expect([row(rows, 'drawer_a_back'), row(rows, 'drawer_b_back'), row(rows, 'drawer_c_back')]).toEqual([
      [[1, 758, 137, 12]],
      [[1, 758, 167, 12]],
      [[1, 758, 197, 12]],
    ]);
    // Bottoms, three alike: between the sides 758 - 24 = 734; grooves 6 deep, room 1/96 of 422 halved and rounded = 2.2, so a tongue of 3.8 each side;
    // from the front's back (18) to the back's (440) = 422 and 6 into the front.
    expect(row(rows, 'drawer_a_bottom')).toEqual([[3, 741.6, 428, 8]]);
    // Case boards housed 6 deep: 760 + 12; three alike.
    expect(row(rows, 'bottom')).toEqual([[3, 772, 450, 20]]);
    expect(rows.find((r) => r.part === 'drawer_a_side' && r.handedOf !== null)?.handedOf).toBe(
      rows.find((r) => r.part === 'drawer_a_side')?.letter,
    );
  });
});

test('breadboard top of two layers of five staves: ten pieces, three tenons at each end', () => {
  const c = check('breadboard-top');
  expect(c.findings).toEqual([]);
  const top = c.parts.find((p) => p.id === 'top');
  expect(top?.pieces).toEqual(Array.from({ length: 10 }, () => [1200, 100, 20]));
  // The tenons, 55 at each end, lengthen the wood: 1200 + 110.
  expect(top?.finished).toEqual({ length: 1310, width: 500, thickness: 40 });
  expectStock(c, { 'end:left': [80, 500, 40], 'end:right': [80, 500, 40] });
  // Handed copies are one record; three pegs in each end.
  expect(c.parts.find((p) => p.id === 'end:left')?.key).toBe(c.parts.find((p) => p.id === 'end:right')?.key);
  expect(c.counts).toMatchObject({ parts: 3, joints: 2, kinds: 2, extras: 6 });
});

test('one peg through two tenons', () => {
  const c = check('one-peg');
  expect(c.findings).toEqual([]);
  expect(c.counts).toMatchObject({ parts: 3, joints: 3, extras: 1 });
  const rows = list('one-peg');
  expect(row(rows, 'peg')).toEqual([[1, 110, 6, 6]]);
  // Rail and brace 200 between their shoulders' faces and a tenon of 40 each; the brace is the rail turned over.
  expect(c.parts.filter((p) => p.id !== 'sill').map((p) => [p.id, p.finished.length])).toEqual([
    ['brace', 240],
    ['rail', 240],
  ]);
});

test('a tray with mirrored dovetailed corners, the grooves hidden under a tail', () => {
  const c = check('dovetailed-tray');
  expect(c.findings).toEqual([]);
  // Each end of a pair is the same record as the other; one kind each.
  expect(c.parts.map((p) => [p.id, p.kind])).toEqual([
    ['bottom', 'A'],
    ['end:back', 'B'],
    ['end:front', 'B'],
    ['side:left', 'C'],
    ['side:right', 'C'],
  ]);
  expect(new Set(c.parts.map((p) => p.key)).size).toBe(3);
  // Bottom: 276 x 216 between, room 216/96/2 = 1.1, at least 1.5, so tongues of 4.5 in grooves 6 deep.
  expect(c.parts[0]?.finished).toEqual({ length: 276 + 9, width: 216 + 9, thickness: 6 });
});

test('a rail that came out 1.0 short between two cut posts: the right shoulder stands open, nothing moves', () => {
  const c = check('short-rail', 1);
  expect(c.findings.map((f) => [f.rule, f.parts, f.measured, f.basis])).toEqual([['open-shoulder', ['post:right', 'rail'], 1, 'measured']]);
  expectStock(c, { 'post:left': [40, 40, 300], 'post:right': [40, 40, 300], rail: [319, 20, 60] });
  expect(list('short-rail', 1).map((r) => [r.part, r.count, r.finished.length])).toEqual([
    ['post', 2, 300],
    ['rail', 1, 319 + 50],
  ]);
});

test('a circle of three readings is named as its chain', () => {
  const ran = dryfit(process.cwd(), 'check', fixturePath('circle'), '--json');
  expect(ran.code).toBe(2);
  const { problems } = JSON.parse(ran.out) as { problems: { where: string; what: string }[] };
  expect(problems).toHaveLength(1);
  expect(problems[0]?.what).toContain('c.right reads b.right reads a.right reads c.right');
});

describe('a published walnut side table (source in the document)', () => {
  const c = check('p1-side-table');
  test('its sizes', () => {
    expect(loud(c)).toEqual([]);
    // Rails: 12 between shoulders and a tenon of 1 at each end. Legs are 2 by 2-1/8: two kinds, each the other's mirror image.
    const rows = list('p1-side-table');
    expect(row(rows, 'long_rail').map((r) => inches(r[1]))).toEqual([14]);
    expect(row(rows, 'side_rail').map((r) => [r[0], inches(r[1]), inches(r[2]), inches(r[3])])).toEqual([[2, 14, 4, 9 / 16]]);
    expect(
      rows
        .filter((r) => r.part === 'leg')
        .map((r) => [r.count, r.letter, r.handedOf, inches(r.finished.width), inches(r.finished.thickness), inches(r.finished.length)]),
    ).toEqual([
      [2, 'A', null, 2.125, 2, 23.25],
      [2, 'B', 'A', 2.125, 2, 23.25],
    ]);
  });
  test('the cheeks are 3/32 each: told as a tenon thicker than half of its rail', () => {
    const f = c.findings.find((g) => g.rule === 'tenon-thick');
    expect(f?.measured).toBeCloseTo((3 / 8) * IN, 6);
    expect(f?.limit).toBeCloseTo((9 / 32) * IN, 6);
    expect(f?.parts).toEqual(['long_rail:front', 'long_rail:rear', 'side_rail:left', 'side_rail:right']);
  });
  test('an 8/4 board does not give a leg 2 in thick: named on the boards that the source lists', () => {
    const { unplaced } = run('lay', 'p1-side-table', 0, '--stock', fixturePath('p1-boards')) as {
      unplaced: { part: string; why: string; need: number; have: number; path: string }[];
    };
    const legs = unplaced.filter((u) => u.path.startsWith('leg'));
    expect(legs.map((u) => u.path).sort()).toEqual(['leg:left:front', 'leg:left:rear', 'leg:right:front', 'leg:right:rear']);
    // A rough 8/4 board, 2 in, planes to 1-3/4.
    for (const u of legs) expect([u.why, inches(u.need), inches(u.have)]).toEqual(['too thick', 2, 1.75]);
  });
});

test('a published maple stand (source in the document): four legs are four turns of one part', () => {
  const c = check('p2-plant-stand');
  expect(loud(c)).toEqual([]);
  const legs = list('p2-plant-stand').filter((r) => r.part === 'leg');
  expect(legs.map((r) => [r.count, r.handedOf, inches(r.finished.length), inches(r.finished.width), inches(r.finished.thickness)])).toEqual(
    [[4, null, 23, 1.5, 1.5]],
  );
  // Aprons 7-1/2 between the legs and 3/4 of tenon at each end.
  for (const r of list('p2-plant-stand').filter((q) => q.part === 'apron')) expect([r.count, inches(r.finished.length)]).toEqual([2, 9]);
});

describe('a published pine bookcase (source in the document)', () => {
  test('equal clear spaces, shelf length and depth', () => {
    const c = check('p4-bookcase');
    expect(c.findings).toEqual([]);
    // (1800 - 60 - 5·18) / 4 = 412.5 between shelves.
    expect(c.sizes['clear']).toBe(412.5);
    // 800 - 2·18 between the sides and 6 in each housing; 280 less the back of 4.
    expect(row(list('p4-bookcase'), 'shelf')).toEqual([[5, 776, 276, 18]]);
  });
  test('boards 280 wide are not to be had: each must be glued up, and the layout says of how many', () => {
    const { unplaced } = run('lay', 'p4-bookcase', 0, '--stock', fixturePath('p4-boards')) as {
      unplaced: { path: string; why: string; cure: { do: string; count?: number } }[];
    };
    const wood = unplaced.filter((u) => !u.path.startsWith('back'));
    expect(wood).toHaveLength(7);
    for (const u of wood) expect([u.why, u.cure.do, u.cure.count]).toEqual(['too wide', 'staves', u.path.startsWith('side') ? 3 : 2]);
  });
});
