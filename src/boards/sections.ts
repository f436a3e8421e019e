/**
 * Boards filled section by section: of all section lengths that some blank fills a whole number of times, the one whose strips use
 * its area best, again and again. Finds the tight patterns of many equal blanks, which adding one blank after the other misses.
 */
import { type Lying, type Open, type Packing, type Section, type Strip } from './pack.ts';
import { type Random, below } from './random.ts';

/** Blanks of one kind lying one way, and the items of that kind still to be laid. */
type Shape = { readonly kind: number; readonly l: number; readonly w: number; readonly turned: boolean };
type Pick = { readonly shape: Shape; readonly n: number };
type Draft = { readonly w: number; readonly area: number; readonly picks: readonly Pick[] };

/** Items laid on new boards of the first line of `opens` that takes any, until nothing more goes; what is left over comes back. */
export function fillBySections(
  p: Packing,
  items: readonly number[],
  opens: readonly number[],
  taken: ReadonlyMap<number, number>,
  r: Random,
): { boards: Open[]; left: number[] } {
  const queue = new Map<number, number[]>();
  for (const item of items) {
    const kind = p.kindOf[item] as number;
    queue.set(kind, [...(queue.get(kind) ?? []), item]);
  }
  const boards: Open[] = [];
  const used = new Map(taken);
  for (const line of opens) {
    const most = p.lines[line]?.count ?? Infinity;
    while ((used.get(line) ?? 0) < most) {
      const board = oneBoard(p, line, queue, r);
      if (!board) break;
      boards.push(board);
      used.set(line, (used.get(line) ?? 0) + 1);
    }
  }
  return { boards, left: [...queue.values()].flat().sort((a, b) => a - b) };
}

function oneBoard(p: Packing, line: number, queue: Map<number, number[]>, r: Random): Open | null {
  const { X, Y } = p.lines[line] as Packing['lines'][number];
  const sections: Section[] = [];
  let used = 0;
  for (;;) {
    const start = sections.length === 0 ? 0 : p.kx;
    const shapes = shapesOn(p, line, queue);
    const drafts = bestSection(p, shapes, X - used - start, Y, queue, r);
    const section = drafts.length === 0 ? null : made(p, drafts, queue);
    if (!section) break;
    used += start + section.len;
    sections.push(section);
  }
  const area = sections.reduce((a, s) => a + s.strips.reduce((b, t) => b + t.items.reduce((c, i) => c + i.l * i.w, 0), 0), 0);
  return sections.length === 0 ? null : { line, used, area, sections };
}
function shapesOn(p: Packing, line: number, queue: ReadonlyMap<number, readonly number[]>): Shape[] {
  return [...queue].flatMap(([kind, left]) => {
    const need = p.needs[kind]?.[line];
    if (!need || left.length === 0) return [];
    const along: Shape = { kind, l: need.l, w: need.w, turned: false };
    return p.turns[kind]?.[line] ? [along, { kind, l: need.w, w: need.l, turned: true }] : [along];
  });
}

/** The strips of the section that uses its length and the width of the board best. */
function bestSection(
  p: Packing,
  shapes: readonly Shape[],
  room: number,
  Y: number,
  queue: ReadonlyMap<number, readonly number[]>,
  r: Random,
): readonly Draft[] {
  const lengths = new Set<number>();
  for (const s of shapes) {
    const n = queue.get(s.kind)?.length ?? 0;
    if (s.w <= Y) for (let m = 1; m <= n && m * (s.l + p.kx) - p.kx <= room; m++) lengths.add(m * (s.l + p.kx) - p.kx);
  }
  let best: readonly Draft[] = [];
  let rate = 0;
  for (const len of [...lengths].sort((a, b) => b - a)) {
    const strips = draftStrips(p, shapes, len, Y, queue);
    const chosen = chooseStrips(p, strips, Y, queue);
    const area = chosen.reduce((a, d) => a + d.area, 0);
    // A little noise, so that later rounds try other patterns than the first.
    const worth = (area / ((len + p.kx) * (Y + p.ky))) * (1 + below(r, 40) / 1000);
    if (worth > rate) {
      rate = worth;
      best = chosen;
    }
  }
  return best;
}

/** For every width the fullest strip of that length: its own blank as often as it goes, then the widest others that still fit. */
function draftStrips(p: Packing, shapes: readonly Shape[], len: number, Y: number, queue: ReadonlyMap<number, readonly number[]>): Draft[] {
  const byWidth = [...shapes].sort((a, b) => b.w - a.w || b.l - a.l || a.kind - b.kind);
  const drafts: Draft[] = [];
  byWidth.forEach((first, at) => {
    if (first.w > Y || first.l > len) return;
    let rest = len + p.kx;
    let area = 0;
    const picks: Pick[] = [];
    const spent = new Map<number, number>();
    for (const s of [first, ...byWidth.slice(at + 1)]) {
      const free = (queue.get(s.kind)?.length ?? 0) - (spent.get(s.kind) ?? 0);
      const n = Math.min(free, Math.floor(rest / (s.l + p.kx)));
      if (n <= 0) continue;
      picks.push({ shape: s, n });
      spent.set(s.kind, (spent.get(s.kind) ?? 0) + n);
      rest -= n * (s.l + p.kx);
      area += n * s.l * s.w;
    }
    drafts.push({ w: first.w, area, picks });
  });
  return drafts;
}

const NODES = 300;
/** Strips side by side with the most area, by trying; for many and narrow strips only the first few hundred ways. */
function chooseStrips(p: Packing, drafts: readonly Draft[], Y: number, queue: ReadonlyMap<number, readonly number[]>): readonly Draft[] {
  const rated = [...drafts].sort((a, b) => b.area / (b.w + p.ky) - a.area / (a.w + p.ky) || b.w - a.w);
  let best: readonly Draft[] = [];
  let most = 0;
  let nodes = 0;
  const spent = new Map<number, number>();
  const spend = (d: Draft, by: 1 | -1): void => d.picks.forEach((k) => spent.set(k.shape.kind, (spent.get(k.shape.kind) ?? 0) + by * k.n));
  const enough = (d: Draft): boolean =>
    d.picks.every((k) => (spent.get(k.shape.kind) ?? 0) + k.n <= (queue.get(k.shape.kind)?.length ?? 0));
  const descend = (from: number, room: number, area: number, chosen: readonly Draft[]): void => {
    if (area > most) {
      most = area;
      best = chosen;
    }
    for (let i = from; i < rated.length && nodes < NODES; i++) {
      const d = rated[i] as Draft;
      if (d.w + p.ky > room || !enough(d)) continue;
      // No strip after this one is denser: the room left cannot hold more than that.
      if (area + (room * d.area) / (d.w + p.ky) <= most) return;
      nodes++;
      spend(d, 1);
      descend(i, room - d.w - p.ky, area + d.area, [...chosen, d]);
      spend(d, -1);
    }
  };
  descend(0, Y + p.ky, 0, []);
  return best;
}

/** The section with items taken from the queue. */
function made(p: Packing, drafts: readonly Draft[], queue: Map<number, number[]>): Section {
  const strips = drafts.map((d): Strip => {
    const items = d.picks.flatMap(({ shape, n }) => {
      const left = queue.get(shape.kind) ?? [];
      return left.splice(0, n).map((item): Lying => ({ item, l: shape.l, w: shape.w, turned: shape.turned }));
    });
    return { w: d.w, used: items.reduce((u, i) => u + i.l + p.kx, -p.kx), items };
  });
  return { len: Math.max(...strips.map((s) => s.used)), used: strips.reduce((u, s) => u + s.w + p.ky, -p.ky), strips };
}
