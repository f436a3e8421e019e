/** Marks over the drawing: signs of findings, the ring and its line to the lens, the chosen size, balloons. Never in WebGL. */
import type { ReactNode } from 'react';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { axisIndex } from '../../src/geom/vec3.ts';
import { boxAround, cornersOf, outBox } from '../../src/geom/box.ts';
import type { PieceView, SizeView } from '../../src/piece/view.ts';
import { useUnits } from '../look/Figures.tsx';
import { lengthText } from '../look/lengths.ts';
import { look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { paragraphs } from '../said/paragraphs.ts';
import { Sign } from '../said/Sign.tsx';
import { type Anchor, placeBalloons } from './balloons.ts';
import { useOpened } from './Lens.tsx';
import type { Stage } from './stage.ts';
import { type LensSpot, useStage } from './useStage.ts';

/** Signs at rest on the wood; more would hide it. */
const MOST_SIGNS = 9;
/** More letters than this are shown for the chosen group only. */
const MOST_LETTERS = 30;

export function Overlay({ lens }: { lens: LensSpot | null }): ReactNode {
  const stage = useStage((s) => s.stage);
  useStage((s) => s.frame);
  const size = useStage((s) => s.size);
  const together = useView((v) => v.together);
  const scene = useResults((r) => r.scene);
  if (!stage || !scene || !size.width) return null;
  return (
    <>
      <svg className="marks" width={size.width} height={size.height} viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
        {together < 0.55 ? <Balloons stage={stage} piece={scene.piece} /> : null}
        {together > 0.98 ? <Ring stage={stage} lens={lens} /> : null}
        {together > 0.98 ? <Dimension stage={stage} piece={scene.piece} /> : null}
        <Names stage={stage} piece={scene.piece} />
      </svg>
      {together > 0.98 ? <Signs stage={stage} /> : null}
    </>
  );
}
const ringOf = (stage: Stage, at: Vec3, reach: number): number =>
  Math.min(useStage.getState().size.width < 600 ? 30 : 46, Math.max(18, 0.9 * reach * stage.pxPerMm(at)));

function Ring({ stage, lens }: { stage: Stage; lens: LensSpot | null }): ReactNode {
  const finding = useOpened();
  const shot = useStage((s) => s.shot);
  const part = useView((v) => v.part);
  if (!finding || part !== null || stage.isAway(finding.where.at)) return null;
  const [x, y] = stage.place(finding.where.at);
  const r = ringOf(stage, finding.where.at, finding.where.reach);
  const ring = finding.grade === 'note' ? 'ring ink' : 'ring';
  let leader: string | null = null;
  if (lens && shot?.finding === finding.key) {
    const [dx, dy] = [lens.x - x, lens.y - y];
    const d = Math.hypot(dx, dy);
    if (d > r + lens.r) leader = `M${x + (dx / d) * r} ${y + (dy / d) * r}L${lens.x - (dx / d) * lens.r} ${lens.y - (dy / d) * lens.r}`;
  }
  return (
    <g className={ring}>
      {leader ? <path className="leader" d={leader} /> : null}
      <circle className="casing" cx={x} cy={y} r={r} />
      <circle cx={x} cy={y} r={r} />
    </g>
  );
}
/** Signs beside their places; the opened one hangs on its ring. Those that would lie on each other are moved apart. */
function Signs({ stage }: { stage: Stage }): ReactNode {
  const findings = useResults((r) => r.verdict?.findings) ?? [];
  const open = useView((v) => v.finding);
  const size = useStage((s) => s.size);
  const chosen = useView((v) => v.size);
  const piece = useResults((r) => r.scene?.piece);
  // The figure of the chosen size is not covered.
  const part = useView((v) => v.part);
  const put = piece ? labelOf(stage, piece, chosen) : [];
  return paragraphs(findings)
    .filter((p) => part === null || p.all.some((f) => f.parts.includes(part)))
    .slice(0, size.width < 600 ? 5 : MOST_SIGNS)
    .map((p) => {
      const f = p.all.find((a) => a.key === open) ?? p.first;
      if (stage.isAway(f.where.at)) return null;
      let [x, y] = stage.place(f.where.at);
      if (f.key === open && part === null) {
        const r = ringOf(stage, f.where.at, f.where.reach);
        [x, y] = [x - 0.78 * r - 4, y + 0.78 * r + 4];
      }
      const spot = freeSpot(x, y, put, size);
      if (!spot) return null;
      [x, y] = spot;
      put.push({ x, y });
      return (
        <button
          key={f.key}
          className={`place ${f.grade}`}
          style={{ left: x, top: y }}
          aria-label={`Finding ${p.number}: ${f.title}`}
          tabIndex={-1}
          onClick={() => look({ finding: f.key, part: null, focus: true })}
        >
          <Sign grade={f.grade} number={p.number} size={24} />
        </button>
      );
    });
}
function labelOf(stage: Stage, piece: PieceView, id: string | null): { x: number; y: number }[] {
  const size = piece.sizes.find((s) => s.id === id);
  if (!size?.axis || !size.span) return [];
  const [p, q] = dimensionEnds(piece, size, stage).map(stage.place);
  return p && q ? [{ x: (p[0] + q[0]) / 2, y: (p[1] + q[1]) / 2 }] : [];
}
/** The wanted place, or the nearest of the places round it where no other sign lies and the sheet's words do not stand. */
function freeSpot(
  x: number,
  y: number,
  put: readonly { x: number; y: number }[],
  size: { width: number; height: number },
): readonly [number, number] | null {
  const head = size.width < 600 ? 16 : 64;
  const free = (px: number, py: number): boolean =>
    px > 16 && px < size.width - 16 && py > head && py < size.height - 100 && put.every((o) => Math.hypot(o.x - px, o.y - py) >= 30);
  if (x < 0 || y < 0 || x > size.width || y > size.height) return null;
  for (let r = 0; r <= 96; r += 32)
    for (let k = 0; k < (r ? 8 : 1); k++) {
      const [px, py] = [x + r * Math.cos((k * Math.PI) / 4), y - r * Math.sin((k * Math.PI) / 4)];
      if (free(px, py)) return [px, py];
    }
  return null;
}
/** The chosen size as a dimension on the wood. */
function Dimension({ stage, piece }: { stage: Stage; piece: PieceView }): ReactNode {
  const id = useView((v) => v.size);
  const units = useUnits();
  const part = useView((v) => v.part);
  const size = piece.sizes.find((s) => s.id === id);
  if (!size?.axis || !size.span || size.kind !== 'length' || (part !== null && !size.usedBy.includes(part))) return null;
  const [a, b] = dimensionEnds(piece, size, stage);
  if (stage.isAway(a) || stage.isAway(b)) return null;
  const [p, q] = [stage.place(a), stage.place(b)];
  const d = Math.hypot(q[0] - p[0], q[1] - p[1]);
  if (d < 8) return null;
  const [ux, uy] = [(q[0] - p[0]) / d, (q[1] - p[1]) / d];
  const text = lengthText(size.value, units, false);
  const [mx, my] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  const half = text.length * 4.6 + 8;
  const inside = d > 2 * half + 24;
  const tick = (x: number, y: number): string =>
    `M${x - 5 * (ux + uy)} ${y - 5 * (uy - ux)}L${x + 5 * (ux + uy)} ${y + 5 * (uy - ux)}M${x - 7 * uy} ${y + 7 * ux}L${x + 7 * uy} ${y - 7 * ux}`;
  const line = inside
    ? `M${p[0]} ${p[1]}L${mx - ux * half} ${my - uy * half}M${mx + ux * half} ${my + uy * half}L${q[0]} ${q[1]}`
    : `M${p[0]} ${p[1]}L${q[0]} ${q[1]}`;
  const path = line + tick(...p) + tick(...q);
  return (
    <g className="dimension">
      <path className="casing" d={path} />
      <path d={path} />
      <text x={inside ? mx : mx - uy * 18} y={(inside ? my : my + Math.abs(ux) * 20) + 5} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
/** Along its axis at its span, at the near lower edge of the parts that read it. */
function dimensionEnds(piece: PieceView, size: SizeView, stage: Stage): readonly [Vec3, Vec3] {
  const i = axisIndex(size.axis ?? 'x');
  const boxes = piece.parts.filter((p) => size.usedBy.includes(p.path)).map((p) => outBox(p.frame, p.stock));
  const box = boxAround(boxes.flatMap(cornersOf)) ?? piece.box ?? { min: [0, 0, 0], max: [0, 0, 0] };
  const right = stage.place([box.max[0], box.min[1], box.min[2]])[0] > stage.place([box.max[0], box.max[1], box.min[2]])[0];
  const mid: Vec3 =
    i === 0 ? [0, box.min[1], box.min[2]] : i === 1 ? [right ? box.max[0] : box.min[0], 0, box.min[2]] : [box.min[0], box.min[1], 0];
  const end = (n: number): Vec3 => [i === 0 ? n : mid[0], i === 1 ? n : mid[1], i === 2 ? n : mid[2]];
  return [end(size.span?.[0] ?? 0), end(size.span?.[1] ?? 0)];
}
/** The name of the part that is pointed at or chosen, beside it. */
function Names({ stage, piece }: { stage: Stage; piece: PieceView }): ReactNode {
  const hover = useView((v) => v.hover);
  const chosen = useView((v) => v.part);
  const together = useView((v) => v.together);
  const paths = [...new Set([...(chosen === null ? [] : [chosen]), ...(hover.length === 1 ? hover : [])])];
  if (together < 0.55) return null;
  return paths.map((path) => {
    const part = piece.parts.find((p) => p.path === path);
    const middle = stage.middle(path);
    if (!part || !middle) return null;
    const [x, y] = stage.place(middle);
    return (
      <g key={path} className={`name${path === chosen ? ' on' : ''}`} transform={`translate(${Math.round(x)} ${Math.round(y)})`}>
        <circle r="13" />
        <text y="5" textAnchor="middle">
          {part.letter}
        </text>
        <text className="words" x="19" y="5">
          {part.label}
        </text>
      </g>
    );
  });
}
function Balloons({ stage, piece }: { stage: Stage; piece: PieceView }): ReactNode {
  const chosen = useView((v) => v.part);
  const size = useStage((s) => s.size);
  const { anchors, counts } = anchorsOf(stage, piece, chosen);
  const narrow = size.width < 600;
  const balloons = placeBalloons(anchors, {
    left: narrow ? 22 : 160,
    right: size.width - (narrow ? 22 : 160),
    top: narrow ? 26 : 78,
    bottom: size.height - (narrow ? 120 : 128),
  });
  return balloons.map((b) => {
    const [dx, dy] = [b.x - b.bx, b.y - b.by];
    const d = Math.hypot(dx, dy) || 1;
    const n = counts.get(b.letter) ?? 1;
    const clear = b.letter ? 14 : 3;
    return (
      <g key={b.letter} className="balloon">
        <path d={`M${b.bx + (dx / d) * clear} ${b.by + (dy / d) * clear}L${b.x} ${b.y}`} />
        <circle className="dot" cx={b.x} cy={b.y} r="2.5" />
        <circle cx={b.bx} cy={b.by} r={clear} />
        <text x={b.bx} y={b.by + 5} textAnchor="middle">
          {b.letter}
        </text>
        {narrow ? null : (
          <text
            className="words"
            x={b.bx + (b.side === 'left' ? -1 : 1) * (clear + 6)}
            y={b.by + 5}
            textAnchor={b.side === 'left' ? 'end' : 'start'}
          >
            {b.words.length > 18 ? `${b.words.slice(0, 17)}…` : b.words}
            {n > 1 ? `, ${n}` : ''}
          </text>
        )}
      </g>
    );
  });
}
/** One part for each letter, the one nearest to a side of the sheet, so that its leader crosses the least. */
function anchorsOf(stage: Stage, piece: PieceView, chosen: string | null): { anchors: Anchor[]; counts: Map<string, number> } {
  const counts = new Map<string, number>();
  const group = piece.parts.find((p) => p.path === chosen)?.group ?? null;
  const letters = new Set(piece.parts.map((p) => p.letter));
  const best = new Map<string, Anchor>();
  for (const p of piece.parts) {
    counts.set(p.letter, (counts.get(p.letter) ?? 0) + 1);
    if (p.kind === 'hardware' || (letters.size > MOST_LETTERS && p.group !== group)) continue;
    const middle = stage.middle(p.path);
    if (!middle) continue;
    const [x, y] = stage.place(middle);
    const had = best.get(p.letter);
    if (!had || x > had.x)
      best.set(p.letter, {
        letter: p.letter,
        words: kindWords(piece, p.letter),
        path: p.path,
        x,
        y,
        ends: stage.ends(p.path).map(stage.place),
      });
  }
  return { anchors: [...best.values()], counts };
}
/** What all parts of a letter are called: the words that their labels share. */
function kindWords(piece: PieceView, letter: string): string {
  const labels = piece.parts.filter((p) => p.letter === letter).map((p) => p.label.split(' '));
  const shared = (labels[0] ?? []).filter((w) => labels.every((l) => l.includes(w)));
  return (shared.length ? shared : (labels[0] ?? [])).join(' ');
}
