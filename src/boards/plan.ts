/** From a packed board to where every blank lies and the cuts in shop order, each with its stop or fence. */
import type { Blank } from './blank.ts';
import type { Cut, CutKind, Offcut, Placement, Rect } from './layout.ts';
import { type PackLine, SAME } from './need.ts';
import type { Lying, Open, Section, Strip } from './pack.ts';
import { type Shop, mmOf, ticksDown, ticksUp } from './shop.ts';

type Bench = {
  readonly shop: Shop;
  readonly line: PackLine;
  readonly blanks: readonly Blank[];
  readonly placements: Placement[];
  /** Width of the strip that each placement was cut from. */
  readonly stripWidths: number[];
  readonly cuts: Cut[];
  readonly offcuts: Offcut[];
};
type NoStep = Omit<Cut, 'step'>;

export function planOf(
  open: Open,
  line: PackLine,
  blanks: readonly Blank[],
  shop: Shop,
): { placements: Placement[]; cuts: Cut[]; offcuts: Offcut[] } {
  const bench: Bench = { shop, line, blanks, placements: [], stripWidths: [], cuts: [], offcuts: [] };
  const sections = tidied(open).map((section, i) => ({ section, n: i + 1, x: 0, body: '' }));
  const rough: NoStep[] = [];
  const rips: NoStep[] = [];
  const blankCuts: NoStep[] = [];
  crosscutSections(bench, sections, rough);
  for (const s of sections) {
    const strips = ripSection(bench, s, rips);
    for (const strip of strips) crosscutStrip(bench, strip, s.x + s.section.len, blankCuts);
  }
  const milling = bench.placements.flatMap((p, i) => millingOf(bench, p, bench.stripWidths[i] ?? p.width));
  const order: readonly CutKind[] = ['flatten', 'thickness', 'edge', 'width', 'length'];
  const milled = order.flatMap((what) => milling.filter((c) => c.what === what));
  [...rough, ...rips, ...blankCuts, ...milled].forEach((c, i) => bench.cuts.push({ step: i + 1, ...c }));
  return { placements: bench.placements, cuts: bench.cuts, offcuts: bench.offcuts };
}

/** Longest section, widest strip, longest blank first: the offcut gathers at the right end and the far edge. */
function tidied(open: Open): Section[] {
  const items = (s: readonly Lying[]): Lying[] => [...s].sort((a, b) => b.l - a.l || b.w - a.w || a.item - b.item);
  const least = (s: Strip): number => Math.min(...s.items.map((i) => i.item));
  const strips = (s: readonly Strip[]): Strip[] =>
    s.map((t) => ({ ...t, items: items(t.items) })).sort((a, b) => b.w - a.w || b.used - a.used || least(a) - least(b));
  return open.sections
    .map((s) => ({ ...s, strips: strips(s.strips) }))
    .sort((a, b) => b.len - a.len || b.used - a.used || Math.min(...a.strips.map(least)) - Math.min(...b.strips.map(least)));
}

const rect = (shop: Shop, x: number, y: number, length: number, width: number): Rect => ({
  x: mmOf(shop, x),
  y: mmOf(shop, y),
  length: mmOf(shop, length),
  width: mmOf(shop, width),
});
function keepOffcut(b: Bench, x: number, y: number, length: number, width: number): void {
  if (length <= 0 || width <= 0) return;
  const r = rect(b.shop, x, y, length, width);
  b.offcuts.push({ ...r, keep: r.length >= b.shop.keep.length && r.width >= b.shop.keep.width });
}

type Spread = { section: Section; n: number; x: number; body: string };

/** Trims the left end and crosscuts the sections one after the other from it; sets where each begins and what it is called. */
function crosscutSections(b: Bench, sections: Spread[], out: NoStep[]): void {
  const { shop, line } = b;
  const kerf = ticksUp(shop, shop.kerf.crosscut);
  const length = ticksDown(shop, line.stock.length);
  const width = ticksDown(shop, line.stock.width);
  const { x: start } = line.room;
  if (start > 0) {
    const takes = Math.min(kerf, start);
    const near = start - takes;
    const words = 'trim the left end clear of checks';
    out.push({
      what: 'trim',
      machine: 'crosscut saw',
      of: 'board',
      keeps: null,
      leaves: 'board',
      at: mmOf(shop, near),
      takes: mmOf(shop, takes),
      mark: mmOf(shop, near),
      band: rect(shop, near, 0, takes, width),
      words,
    });
  }
  let x = start;
  for (const s of sections) {
    s.x = x;
    const end = x + s.section.len;
    const rest = length - end;
    s.body = rest > 0 ? `section ${s.n}` : 'board';
    if (rest > 0) {
      const takes = Math.min(kerf, rest);
      const words = `crosscut section ${s.n}, over-long`;
      out.push({
        what: 'crosscut',
        machine: 'crosscut saw',
        of: 'board',
        keeps: s.body,
        leaves: rest > takes ? 'board' : null,
        at: mmOf(shop, s.section.len),
        takes: mmOf(shop, takes),
        mark: mmOf(shop, end),
        band: rect(shop, end, 0, takes, width),
        words,
      });
    }
    x = end + kerf;
  }
  keepOffcut(b, x, line.room.y, line.room.x + line.room.length - x, line.room.width);
}

type LaidStrip = { strip: Strip; x: number; y: number; body: string; name: string };

/** Makes one edge straight (for a table saw one face flat before it) and rips the strips from that edge. */
function ripSection(b: Bench, s: Spread, out: NoStep[]): LaidStrip[] {
  const { shop, line } = b;
  const rough = line.stock.surface === 'rough';
  const saw = rough ? shop.ripAt : 'table saw';
  const kerf = ticksUp(shop, shop.kerf.rip);
  const width = ticksDown(shop, line.stock.width);
  const none = { keeps: null, leaves: null, takes: 0, mark: null, band: null };
  if (rough && saw === 'table saw')
    out.push({
      ...none,
      what: 'flatten',
      machine: 'jointer',
      of: s.body,
      at: flattened(b),
      words: `flatten one face of ${s.body} before it meets the table saw`,
    });
  if (rough || line.room.y > 0)
    out.push({
      ...none,
      what: 'straighten',
      machine: rough ? 'jointer' : 'table saw',
      of: s.body,
      at: mmOf(shop, line.room.y),
      words: `make one edge of ${s.body} straight`,
    });
  const strips: LaidStrip[] = [];
  let y = line.room.y;
  s.section.strips.forEach((strip, i) => {
    const end = y + strip.w;
    const rest = width - end;
    const name = `strip ${s.n}.${i + 1}`;
    const body = rest > 0 ? name : s.body;
    if (rest > 0) {
      const takes = Math.min(kerf, rest);
      out.push({
        what: 'rip',
        machine: saw,
        of: s.body,
        keeps: name,
        leaves: rest > takes ? s.body : null,
        at: mmOf(shop, strip.w),
        takes: mmOf(shop, takes),
        mark: mmOf(shop, end),
        band: rect(shop, s.x, end, s.section.len, takes),
        words: `rip ${name} from the straight edge`,
      });
    }
    strips.push({ strip, x: s.x, y, body, name });
    y = end + kerf;
  });
  keepOffcut(b, s.x, y, s.section.len, line.room.y + line.room.width - y);
  return strips;
}

/** Crosscuts the blanks of a strip from its left end; `until` is where the strip ends. */
function crosscutStrip(b: Bench, s: LaidStrip, until: number, out: NoStep[]): void {
  const { shop } = b;
  const kerf = ticksUp(shop, shop.kerf.crosscut);
  let x = s.x;
  for (const lying of s.strip.items) {
    const blank = b.blanks[lying.item] as Blank;
    const end = x + lying.l;
    const rest = until - end;
    const name = nameOf(blank);
    const body = rest > 0 ? name : s.body;
    if (rest > 0) {
      const takes = Math.min(kerf, rest);
      out.push({
        what: 'crosscut',
        machine: 'crosscut saw',
        of: s.body,
        keeps: name,
        leaves: rest > takes ? s.body : null,
        at: mmOf(shop, lying.l),
        takes: mmOf(shop, takes),
        mark: mmOf(shop, end),
        band: rect(shop, end, s.y, takes, s.strip.w),
        words: `crosscut ${name} from ${s.name}`,
      });
    }
    b.placements.push(placementOf(b, blank, lying, x, s.y, body));
    b.stripWidths.push(mmOf(shop, s.strip.w));
    x = end + kerf;
  }
  keepOffcut(b, x, s.y, until - x, s.strip.w);
}
function placementOf(b: Bench, blank: Blank, lying: Lying, x: number, y: number, body: string): Placement {
  const { part, copy, piece, of, path, heart, finished, later } = blank;
  return { part, copy, piece, of, path, heart, finished, later, body, turned: lying.turned, ...rect(b.shop, x, y, lying.l, lying.w) };
}

/** How much the flattening of one face may take: half of what there is. */
const flattened = (b: Bench): number => Math.round((b.line.stock.thickness - b.line.gives) * 5e5) / 1e6;

/** What is still to be done to a blank once it is cut out, until it has its finished size or waits for its glue-up. */
function millingOf(b: Bench, p: Placement, stripWidth: number): NoStep[] {
  const { shop, line } = b;
  const { surface, thickness } = line.stock;
  const rough = surface === 'rough';
  const none = { of: p.body, keeps: null, leaves: null, takes: 0, mark: null, band: null };
  const name = nameOf(p);
  const width = p.turned ? p.finished.length : p.finished.width;
  const out: NoStep[] = [];
  if (rough && shop.ripAt !== 'table saw')
    out.push({ ...none, what: 'flatten', machine: 'jointer', at: flattened(b), words: `flatten one face of ${name}` });
  if (surface !== 'sheet' && (rough || thickness - p.finished.thickness > SAME))
    out.push({ ...none, what: 'thickness', machine: 'planer', at: p.finished.thickness, words: `plane ${name} to thickness` });
  const over = stripWidth - width;
  if (!p.later.width && over > (rough ? 1e-6 : surface === 'dressed' ? SAME : shop.tick)) {
    if (surface !== 'sheet')
      out.push({
        ...none,
        what: 'edge',
        machine: 'jointer',
        at: Math.min(over / 2, shop.rough.straighten),
        words: `joint one edge of ${name}`,
      });
    out.push({ ...none, what: 'width', machine: 'table saw', at: width, words: `cut ${name} to width` });
  }
  if (surface !== 'sheet' && !p.later.length && p.length - p.finished.length > shop.tick)
    out.push({
      ...none,
      what: 'length',
      machine: 'crosscut saw',
      at: p.finished.length,
      words: `square one end of ${name} and cut it to length`,
    });
  return out;
}
/** 'A 1', or 'A 1, piece 2' of a glued-up part. */
const nameOf = (p: Pick<Placement, 'part' | 'copy' | 'piece' | 'of'>): string =>
  `${p.part} ${p.copy}${p.of > 1 ? `, piece ${p.piece}` : ''}`;
