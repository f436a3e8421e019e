/**
 * A slow, separate reading of a laid board: it knows nothing of how the layout was made, takes the board, does one cut after the
 * other, and says what does not come out. Tests and hand edits use it; an empty answer is a proof that the plan can be cut.
 */
import type { Cut, CutKind, LaidBoard, Placement, Rect } from './layout.ts';
import type { Shop } from './shop.ts';

type Body = Rect & {
  readonly thickness: number;
  readonly flat: boolean;
  readonly straight: boolean;
  readonly planed: boolean;
  readonly toWidth: boolean;
};
const NEAR = 1e-4;

/** Everything wrong with the plan of this board, in words; empty when every blank comes out with its size. */
export function replay(board: LaidBoard, shop: Shop): string[] {
  const faults: string[] = [];
  const bodies = new Map<string, Body>();
  const ready = board.surface !== 'rough';
  bodies.set('board', {
    x: 0,
    y: 0,
    length: board.length,
    width: board.width,
    thickness: board.thickness,
    flat: ready,
    straight: ready,
    planed: ready,
    toWidth: false,
  });
  const lastSaw = board.cuts.findLastIndex((c) => SAWING.has(c.what));
  /** As cut out of the board, before milling. */
  let cutOut = new Map(bodies);
  let dust = 0;
  board.cuts.forEach((cut, i) => {
    const body = bodies.get(cut.of);
    if (!body) faults.push(`step ${cut.step} works on ${cut.of}, which is not there`);
    else {
      dust += lostTo(cut, body);
      faults.push(...done(cut, body, bodies, board, shop).map((f) => `step ${cut.step} (${cut.words}): ${f}`));
    }
    if (i < lastSaw && MILLING.has(cut.what))
      faults.push(`step ${cut.step} (${cut.words}): it comes before the last cut on the rough board`);
    if (i === lastSaw) cutOut = new Map(bodies);
  });
  const whole = board.length * board.width;
  const found = [...cutOut.values()].reduce((a, b) => a + b.length * b.width, dust);
  // What a board has beyond whole ticks may be lost at its far end and edge.
  if (Math.abs(whole - found) > 1e-6 * whole + shop.tick * (board.length + board.width))
    faults.push(`${whole} mm² of board became ${found} mm² of wood, dust and waste`);
  for (const p of board.placements) faults.push(...cameOut(p, cutOut.get(p.body), bodies.get(p.body), board, shop));
  return [...faults, ...between(board, shop)];
}
const SAWING: ReadonlySet<CutKind> = new Set(['trim', 'crosscut', 'rip', 'straighten']);
const MILLING: ReadonlySet<CutKind> = new Set(['thickness', 'edge', 'width', 'length']);

/** Face of the board that a rough cut turns to dust or waste. */
function lostTo(cut: Cut, body: Body): number {
  if (cut.what === 'straighten') return cut.at * body.length;
  if (cut.what === 'rip') return cut.takes * body.length;
  if (cut.what === 'crosscut') return cut.takes * body.width;
  return cut.what === 'trim' ? (cut.at + cut.takes) * body.width : 0;
}

/** Does one cut: changes `bodies`, returns what is wrong with it. */
function done(cut: Cut, body: Body, bodies: Map<string, Body>, board: LaidBoard, shop: Shop): string[] {
  const out: string[] = [];
  const set = (b: Body): void => void bodies.set(cut.of, b);
  switch (cut.what) {
    case 'trim':
    case 'crosscut':
      return parted(cut, body, bodies, board, shop, 'length');
    case 'rip':
      if (!body.straight) out.push('no straight edge runs along the fence');
      if (cut.machine === 'table saw' && !body.flat) out.push('no flat face lies on the table');
      return [...out, ...parted(cut, body, bodies, board, shop, 'width')];
    case 'straighten':
      set({ ...body, y: body.y + cut.at, width: body.width - cut.at, straight: true });
      return out;
    case 'flatten':
      set({ ...body, thickness: body.thickness - cut.at, flat: true });
      return out;
    case 'thickness':
      if (!body.flat) out.push('the planer needs one flat face');
      if (cut.at > body.thickness + NEAR) out.push(`only ${body.thickness} mm of thickness are left`);
      set({ ...body, thickness: cut.at, planed: true });
      return out;
    case 'edge':
      if (!body.flat) out.push('an edge is jointed with a flat face against the fence');
      set({ ...body, width: body.width - cut.at, straight: true });
      return out;
    case 'width':
      if (!body.flat || !body.straight) out.push('a rip at the saw needs a flat face and a straight edge');
      if (!body.planed) out.push('it goes to width before it is planed');
      if (cut.at > body.width + NEAR) out.push(`only ${body.width} mm of width are left`);
      set({ ...body, width: cut.at, toWidth: true });
      return out;
    case 'length':
      if (cut.at > body.length + NEAR) out.push(`only ${body.length} mm of length are left`);
      if (board.cuts.some((c) => c.of === cut.of && c.what === 'width' && c.step > cut.step))
        out.push('it goes to length before it goes to width');
      set({ ...body, length: cut.at });
      return out;
  }
}

/** A saw cut right across or right along a body. */
function parted(cut: Cut, body: Body, bodies: Map<string, Body>, board: LaidBoard, shop: Shop, way: 'length' | 'width'): string[] {
  const out: string[] = [];
  const from = way === 'length' ? 'x' : 'y';
  const rest = body[way] - cut.at - cut.takes;
  const kerf = way === 'length' ? shop.kerf.crosscut : shop.kerf.rip;
  if (cut.at < -NEAR || (cut.keeps !== null && cut.at < NEAR)) out.push(`nothing is kept at ${cut.at} mm`);
  if (rest < -shop.tick - NEAR) out.push(`the cut at ${cut.at} mm lies beyond the end at ${body[way]} mm`);
  if (cut.takes < kerf - NEAR && cut.leaves !== null && cut.what !== 'trim') out.push(`the blade takes ${kerf} mm, not ${cut.takes}`);
  const band: Rect = { x: body.x, y: body.y, length: body.length, width: body.width, [from]: body[from] + cut.at, [way]: cut.takes };
  if (
    cut.band === null ||
    (['x', 'y', 'length', 'width'] as const).some((k) => Math.abs((cut.band?.[k] ?? NaN) - band[k]) > shop.tick + NEAR)
  )
    out.push('the dust is drawn elsewhere than the cut runs');
  for (const p of board.placements) if (overlap(band, p) > NEAR) out.push(`it runs through ${p.part} ${p.copy}`);
  if (cut.keeps !== null) bodies.set(cut.keeps, { ...body, [way]: cut.at });
  if (cut.leaves === null) {
    if (cut.of !== cut.keeps) bodies.delete(cut.of);
  } else bodies.set(cut.leaves, { ...body, [from]: body[from] + cut.at + cut.takes, [way]: rest });
  return out;
}

/** How deep two rectangles lie in each other; 0 or less when they do not. */
const overlap = (a: Rect, b: Rect): number =>
  Math.min(Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x), Math.min(a.y + a.width, b.y + b.width) - Math.max(a.y, b.y));

/** Did the blank come out where it was drawn, large enough, and to its finished size? */
function cameOut(p: Placement, cutOut: Body | undefined, body: Body | undefined, board: LaidBoard, shop: Shop): string[] {
  const name = `${p.part} ${p.copy} (${p.piece})`;
  if (!body || !cutOut) return [`${name} is never cut out`];
  const out: string[] = [];
  if (Math.abs(cutOut.x - p.x) > NEAR || Math.abs(cutOut.y - p.y) > NEAR)
    out.push(`${name} is cut out at ${cutOut.x}, ${cutOut.y}, drawn at ${p.x}, ${p.y}`);
  if (Math.abs(cutOut.length - p.length) > shop.tick + NEAR) out.push(`${name} is cut ${cutOut.length} mm long, drawn ${p.length}`);
  if (cutOut.width < p.width - NEAR) out.push(`${name} is cut ${cutOut.width} mm wide, drawn ${p.width}`);
  const finished = p.turned ? { ...p.finished, length: p.finished.width, width: p.finished.length } : p.finished;
  // A blank that no rip parted from the board's far edge keeps what the board has beyond whole ticks.
  const beyond = cutOut.y + cutOut.width > board.width - NEAR ? shop.tick : 0;
  const slack = {
    // One tick that the blank was rounded up by, one that its board may have beyond whole ticks.
    length: p.later.length ? Infinity : 2 * shop.tick,
    width: p.later.width ? Infinity : (board.surface === 'rough' ? NEAR : board.surface === 'dressed' ? 0.3 : shop.tick) + beyond,
    thickness: board.surface === 'rough' ? NEAR : 0.3,
  };
  for (const k of ['length', 'width', 'thickness'] as const) {
    const over = body[k] - finished[k];
    if (over < -NEAR - (board.surface === 'rough' ? 0 : 0.3) || over > slack[k] + NEAR)
      out.push(`${name} ends with a ${k} of ${body[k]} mm instead of ${finished[k]}`);
  }
  return out;
}

/** Every blank inside its board's room, and every two a kerf apart. */
function between(board: LaidBoard, shop: Shop): string[] {
  const out: string[] = [];
  const r = board.room;
  board.placements.forEach((p, i) => {
    if (p.x < r.x - NEAR || p.y < r.y - NEAR || p.x + p.length > r.x + r.length + NEAR || p.y + p.width > r.y + r.width + NEAR)
      out.push(`${p.part} ${p.copy} lies outside the room of the board`);
    for (const q of board.placements.slice(i + 1)) {
      const gapX = Math.max(q.x - p.x - p.length, p.x - q.x - q.length);
      const gapY = Math.max(q.y - p.y - p.width, p.y - q.y - q.width);
      if (gapX < shop.kerf.crosscut - NEAR && gapY < shop.kerf.rip - NEAR)
        out.push(`${p.part} ${p.copy} and ${q.part} ${q.copy} lie closer than the kerf`);
    }
  });
  return out;
}
