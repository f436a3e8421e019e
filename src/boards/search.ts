/**
 * From blanks and kinds of board to a packing: several first plans by fixed rules, then again and again a few boards are emptied and
 * filled anew, and the plan is kept when it is no worse. Counted work and a seed: the same plan on every machine.
 */
import { type Open, type Packing, type Taste, bestPlace, emptyBoard, itemsOf, withItem, withoutSections } from './pack.ts';
import { type Random, below, newRandom } from './random.ts';
import { fillBySections } from './sections.ts';

/** What a plan is judged by, first to last: blanks left over, then cost and boards in the order asked, then wood in few boards. */
export type Aim = 'least wood' | 'fewest boards';
export type Score = { readonly left: number; readonly cost: number; readonly boards: number; readonly gathered: number };
export type Plan = { readonly boards: readonly Open[]; readonly left: readonly number[]; readonly score: Score };

export type SearchRun = {
  readonly effort: number;
  readonly seed: number;
  readonly aim: Aim;
  /** Nothing can be better: stop. */
  readonly enough: (score: Score) => boolean;
  readonly stop: () => boolean;
  readonly report: (plan: Plan, done: number) => void;
};

/** What is minded unless something else is tried. */
export const TASTE: Taste = { section: 0.75, strip: 0.6 };

/** Below 0 when `a` is the better plan. */
export function compareScores(a: Score, b: Score, aim: Aim): number {
  if (a.left !== b.left) return a.left - b.left;
  const cost = Math.abs(a.cost - b.cost) > 1e-9 * Math.max(1, a.cost) ? a.cost - b.cost : 0;
  const boards = a.boards - b.boards;
  const [first, second] = aim === 'fewest boards' ? [boards, cost] : [cost, boards];
  if (first !== 0) return first;
  return second !== 0 ? second : b.gathered - a.gathered;
}

/** How a fill goes about it: the order of the items, what it minds, and which board it opens next. */
type Way = { readonly order: readonly number[]; readonly taste: Taste; readonly opens: readonly number[] };

/** Fills `boards` and, where nothing fits, opens new ones, as long as there are any. Lines outside `opens` are never opened. */
export function fill(p: Packing, boards: readonly Open[], way: Way): { readonly boards: Open[]; readonly left: number[] } {
  const out = [...boards];
  const left: number[] = [];
  const taken = new Map<number, number>();
  for (const b of out) taken.set(b.line, (taken.get(b.line) ?? 0) + 1);
  for (const item of way.order) {
    let place = bestPlace(p, out, item, way.taste);
    if (!place) {
      const needs = p.needs[p.kindOf[item] as number];
      const line = way.opens.find((l) => needs?.[l] && (p.lines[l]?.count ?? Infinity) > (taken.get(l) ?? 0));
      if (line === undefined) {
        left.push(item);
        continue;
      }
      taken.set(line, (taken.get(line) ?? 0) + 1);
      const fresh = bestPlace(p, [emptyBoard(line)], item, way.taste);
      if (!fresh)
        throw new Error(`a board of ${JSON.stringify(p.lines[line])} should take item ${item} of ${JSON.stringify(needs?.[line])}`);
      place = { ...fresh, board: out.length };
      out.push(emptyBoard(line));
    }
    out[place.board] = withItem(p, out[place.board] as Open, place, item);
  }
  return { boards: out, left };
}

/** Each board changed for the cheapest kind that still holds what lies on it. */
function cheapened(p: Packing, boards: readonly Open[], lines: readonly number[]): Open[] {
  const taken = new Map<number, number>();
  for (const b of boards) taken.set(b.line, (taken.get(b.line) ?? 0) + 1);
  return boards.map((b) => {
    const now = p.lines[b.line] as Packing['lines'][number];
    let best = b.line;
    for (const l of lines) {
      const line = p.lines[l] as Packing['lines'][number];
      if (line.cost >= (p.lines[best] as Packing['lines'][number]).cost || (line.count ?? Infinity) <= (taken.get(l) ?? 0)) continue;
      if (b.used <= line.X && b.sections.every((s) => s.used <= line.Y) && sameNeeds(p, b, l)) best = l;
    }
    if (best === b.line || now.cost <= (p.lines[best] as Packing['lines'][number]).cost) return b;
    taken.set(b.line, (taken.get(b.line) ?? 0) - 1);
    taken.set(best, (taken.get(best) ?? 0) + 1);
    return { ...b, line: best };
  });
}
const sameNeeds = (p: Packing, b: Open, line: number): boolean =>
  b.sections.every((s) =>
    s.strips.every((strip) =>
      strip.items.every((i) => {
        const need = p.needs[p.kindOf[i.item] as number]?.[line];
        return (
          need !== null &&
          need !== undefined &&
          (i.turned
            ? need.l === i.w && need.w === i.l && p.turns[p.kindOf[i.item] as number]?.[line] === true
            : need.l === i.l && need.w === i.w)
        );
      }),
    ),
  );

/** The score of boards and what is left over. */
export function judged(p: Packing, boards: readonly Open[], left: readonly number[]): Plan {
  const count = p.lines.map(() => 0);
  let gathered = 0;
  for (const b of boards) {
    count[b.line] = (count[b.line] ?? 0) + 1;
    const line = p.lines[b.line] as Packing['lines'][number];
    const share = b.area / (line.X * line.Y);
    gathered += share * share;
  }
  // Added up line by line, so that the sum does not hang on the order of the boards.
  const cost = count.reduce((c, n, l) => c + n * (p.lines[l] as Packing['lines'][number]).cost, 0);
  return { boards, left, score: { left: left.length, cost, boards: boards.length, gathered } };
}

/** Size of an item on the first line that takes it: only to put items in order. */
function sizeOf(p: Packing, item: number): { l: number; w: number } {
  return p.needs[p.kindOf[item] as number]?.find((n) => n !== null) ?? { l: 0, w: 0 };
}
const KEYS: readonly ((s: { l: number; w: number }) => number)[] = [
  (s) => s.l,
  (s) => s.l * s.w,
  (s) => s.w * 1e7 + s.l,
  (s) => s.l + 2 * s.w,
  (s) => s.l * 1e7 + s.w,
];

/** Items by a key, largest first; equal ones in their own order; `noise` up to that share of the key. */
function ordered(p: Packing, items: readonly number[], key: number, noise: number, r: Random): number[] {
  const by = KEYS[key % KEYS.length] as (s: { l: number; w: number }) => number;
  const rank = items.map((item) => ({ item, at: by(sizeOf(p, item)) * (1 + (noise * below(r, 1001)) / 1000) }));
  return rank.sort((a, b) => b.at - a.at || a.item - b.item).map((x) => x.item);
}
/** Lines in the order in which boards are opened. */
function openings(p: Packing, lines: readonly number[], way: number, r: Random): number[] {
  const line = (l: number): Packing['lines'][number] => p.lines[l] as Packing['lines'][number];
  const area = (l: number): number => Math.max(1, line(l).X * line(l).Y);
  const keys: readonly ((l: number) => number)[] = [
    (l) => line(l).cost / area(l),
    (l) => line(l).cost,
    (l) => -area(l),
    () => below(r, 1000),
  ];
  const by = keys[way % keys.length] as (l: number) => number;
  const rank = lines.map((l) => ({ l, at: by(l), area: area(l) }));
  return rank.sort((a, b) => a.at - b.at || b.area - a.area || a.l - b.l).map((x) => x.l);
}

/** The best plan, and the very first one: all that a search stopped at once would have. */
export type Found = { readonly best: Plan; readonly first: Plan };
/** Looks for the best plan for these items on these kinds of board; throws only where there is not even a first one, which is our fault. */
export function search(p: Packing, items: readonly number[], lines: readonly number[], run: SearchRun): Found {
  const r = newRandom(run.seed);
  let best: Plan | null = null;
  let first: Plan | null = null;
  const consider = (boards: readonly Open[], left: readonly number[]): boolean => {
    const plan = judged(p, cheapened(p, boards, lines), left);
    first ??= plan;
    if (best && compareScores(plan.score, best.score, run.aim) > 0) return false;
    best = plan;
    return true;
  };
  for (let key = 0; key < KEYS.length; key++)
    for (let way = 0; way < 3; way++) {
      if (best && (run.stop() || (way > 0 && lines.length < 2))) continue;
      const done = fill(p, [], {
        order: ordered(p, items, key, 0, r),
        taste: TASTE,
        opens: openings(p, lines, run.aim === 'fewest boards' ? 2 - way : way, r),
      });
      consider(done.boards, done.left);
    }
  const kinds = new Set(items.map((i) => p.kindOf[i])).size;
  for (let way = 0; way < 2 && kinds <= MANY_KINDS && !run.stop(); way++) {
    const done = bySections(p, [], items, openings(p, lines, way, r), r);
    consider(done.boards, done.left);
  }
  if (!best || !first) throw new Error('no first plan was made');
  let plan: Plan = best;
  for (let k = 0; k < run.effort; k++) {
    if (run.enough(plan.score) || run.stop()) break;
    const torn = emptied(p, plan.boards, r);
    const order = ordered(p, [...torn.items, ...plan.left], below(r, KEYS.length), [0, 0.1, 0.4][below(r, 3)] ?? 0, r);
    const taste = { section: 0.4 + below(r, 60) / 100, strip: 0.2 + below(r, 75) / 100 };
    const opens = openings(p, lines, below(r, 4), r);
    const patterned = order.length <= 200 && below(r, 3) === 0;
    const done = patterned ? bySections(p, torn.boards, order, opens, r) : fill(p, torn.boards, { order, taste, opens });
    if (consider(done.boards, done.left)) plan = best;
    if (k % 50 === 49) run.report(plan, k + 1);
  }
  run.report(plan, run.effort);
  return { best: plan, first };
}

/** Above this many kinds of blank, a first plan section by section takes too long. */
const MANY_KINDS = 60;
/** New boards section by section; what is left of the last, poorest one goes wherever it finds room. */
function bySections(
  p: Packing,
  boards: readonly Open[],
  items: readonly number[],
  opens: readonly number[],
  r: Random,
): { readonly boards: readonly Open[]; readonly left: number[] } {
  const taken = new Map<number, number>();
  for (const b of boards) taken.set(b.line, (taken.get(b.line) ?? 0) + 1);
  const done = fillBySections(p, items, opens, taken, r);
  const share = (b: Open): number => b.area / ((p.lines[b.line]?.X ?? 1) * (p.lines[b.line]?.Y ?? 1));
  const poorest = done.boards.length === 0 ? null : done.boards.reduce((a, b) => (share(b) < share(a) ? b : a));
  const order = [...(poorest ? itemsOf(poorest) : []), ...done.left].sort((a, b) => sizeOf(p, b).l - sizeOf(p, a).l || a - b);
  const kept = done.boards.filter((b) => b !== poorest);
  const again = fill(p, [...boards, ...kept], { order, taste: TASTE, opens });
  // Where that takes one board more than the pattern did, the pattern stays.
  const plain = [...boards, ...done.boards];
  return again.left.length > done.left.length || again.boards.length > plain.length ? { boards: plain, left: done.left } : again;
}

/** One to four boards emptied, poorly filled ones rather than full ones, and now and then a section of some others. */
function emptied(p: Packing, boards: readonly Open[], r: Random): { readonly boards: Open[]; readonly items: number[] } {
  const gone = new Set<number>();
  const share = (b: number): number => {
    const board = boards[b] as Open;
    const line = p.lines[board.line] as Packing['lines'][number];
    return board.area / (line.X * line.Y);
  };
  const want = Math.min(boards.length, 1 + below(r, 4));
  for (let k = 0; k < want; k++) {
    const a = below(r, boards.length);
    const b = below(r, boards.length);
    gone.add(share(a) <= share(b) ? a : b);
  }
  const items = [...gone].flatMap((b) => itemsOf(boards[b] as Open));
  let kept = boards.filter((_, b) => !gone.has(b));
  if (below(r, 2) === 0)
    kept = kept.map((board) => {
      if (board.sections.length === 0 || below(r, kept.length) > 2) return board;
      const c = below(r, board.sections.length);
      items.push(...(board.sections[c]?.strips ?? []).flatMap((s) => s.items.map((i) => i.item)));
      return withoutSections(p, board, (s) => s === c);
    });
  return { boards: kept.filter((b) => b.sections.length > 0), items };
}
