/** The rough boards as strips: number, thickness, end with its rings, and the parts chalked on. */
import { memo, useEffect, useRef, useState, type ReactNode } from 'react';
import { layAgain } from '../document/piece.ts';
import { useUnits } from '../look/Figures.tsx';
import { lengthText } from '../look/lengths.ts';
import { hover, look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { cssColour, toneOf } from '../viewer/species.ts';
import type { BoardView, LayoutView, PlacementView } from '../workers/protocol.ts';

const MARGIN = 60;
const WIDE = 500;
/** Strips drawn at once; more appear as the page is scrolled to them. */
const CHUNK = 24;

export function Boards(): ReactNode {
  const layout = useResults((r) => r.layout);
  const piece = useResults((r) => r.piece);
  const laying = useResults((r) => r.laying);
  const unlaid = useResults((r) => r.unlaid);
  const [shown, show] = useState(CHUNK);
  const end = useRef<HTMLDivElement>(null);
  const count = layout?.boards.length ?? 0;
  useEffect(() => {
    if (!end.current) return;
    const watcher = new IntersectionObserver(([e]) => e?.isIntersecting && show((n) => n + CHUNK));
    watcher.observe(end.current);
    return () => watcher.disconnect();
  }, [count, shown]);
  if (unlaid)
    return (
      <p className="quiet">
        {unlaid}{' '}
        <button className="inline" onClick={layAgain}>
          Lay it again
        </button>
      </p>
    );
  if (!layout)
    return (
      <p className="quiet">
        {piece?.parts.length ? (laying?.words ?? 'Laying it on boards…') : 'Boards appear here when there is something to lay on them.'}
      </p>
    );
  const longest = Math.max(1, ...layout.boards.map((b) => b.length));
  return (
    <>
      {layout.unplaced.length ? (
        <ul className="unplaced">
          {alike(layout.unplaced).map(({ first, count }) => (
            <li key={first.letter + first.label + first.why}>
              <b>
                {first.letter} {first.label}
                {count > 1 ? `, ${count} of them` : ''}
              </b>{' '}
              {first.why}
            </li>
          ))}
        </ul>
      ) : null}
      <ol className="boards">
        {layout.boards.slice(0, shown).map((b, i) => (
          <li key={b.id}>
            <Strip board={b} number={i + 1} scale={(WIDE - MARGIN) / longest} />
          </li>
        ))}
      </ol>
      {count > shown ? <div ref={end} className="quiet">{`${count - shown} more`}</div> : null}
    </>
  );
}
type Unplaced = LayoutView['unplaced'][number];
/** What is said of several pieces in the same words is said once. */
function alike(unplaced: readonly Unplaced[]): readonly { readonly first: Unplaced; readonly count: number }[] {
  const out = new Map<string, { readonly first: Unplaced; readonly count: number }>();
  for (const first of unplaced) {
    const words = JSON.stringify(first);
    out.set(words, { first, count: (out.get(words)?.count ?? 0) + 1 });
  }
  return [...out.values()];
}
/** A small steady number from a name, for ragged edges and the like. */
const seedOf = (text: string): number => [...text].reduce((h, c) => (Math.imul(h, 31) + (c.codePointAt(0) ?? 0)) >>> 0, 7);
const wave = (seed: number, t: number): number => Math.sin(t * 7.1 + seed) + 0.5 * Math.sin(t * 17.3 + seed * 2.3);

const Strip = memo(function Strip({ board, number, scale }: { board: BoardView; number: number; scale: number }): ReactNode {
  const units = useUnits();
  const h = Math.max(14, board.width * scale);
  const w = board.length * scale;
  const tone = toneOf(board.wood);
  const seed = seedOf(board.id);
  const label = `Board ${number}, ${board.wood} ${board.words}, ${lengthText(board.length, units)} by ${lengthText(board.width, units)}: ${board.placements.map((p) => `${p.letter} ${p.label}`).join(', ') || 'nothing'}`;
  return (
    <svg className={`strip${tone.pale ? ' pale' : ''}`} viewBox={`0 0 ${WIDE} ${h + 2}`} role="group" aria-label={label}>
      <text className="number" x="0" y={h / 2 - 1}>
        {number}
      </text>
      <text className="stuff" x="0" y={h / 2 + 12}>
        {board.words}
      </text>
      <End board={board} h={h} scale={scale} />
      <g transform={`translate(${MARGIN} 1)`}>
        <path className="rough" d={outline(w, h, seed)} />
        {[0.2, 0.45, 0.7].map((t) => (
          <path
            key={t}
            className="fibre"
            d={`M2 ${h * t + wave(seed, t)} C${w * 0.3} ${h * t + 2 * wave(seed, t + 1)} ${w * 0.6} ${h * t + 2 * wave(seed, t + 2)} ${w - 2} ${h * t + wave(seed, t + 3)}`}
          />
        ))}
        {board.defects.map((d, i) => (
          <ellipse
            key={i}
            className="knot"
            cx={(d.x + d.length / 2) * scale}
            cy={(d.y + d.width / 2) * scale}
            rx={Math.max(2, (d.length * scale) / 2)}
            ry={Math.max(1.5, (d.width * scale) / 2)}
          />
        ))}
        {board.kept.map((k, i) => (
          <rect
            key={i}
            className="kept"
            x={k.x * scale}
            y={k.y * scale}
            width={k.length * scale}
            height={k.width * scale}
            fill={cssColour(tone.early)}
          />
        ))}
        <Placements board={board} scale={scale} />
      </g>
    </svg>
  );
});
function outline(w: number, h: number, seed: number): string {
  const n = 8;
  const at = (i: number, side: number): string =>
    `${((w * i) / n).toFixed(1)} ${(side * h - (side ? 0.6 : -0.6) * (1 + wave(seed + side * 9, i * 0.7)) * 0.6).toFixed(1)}`;
  const top = Array.from({ length: n + 1 }, (_, i) => at(i, 0));
  const low = Array.from({ length: n + 1 }, (_, i) => at(n - i, 1));
  return `M${top.join('L')}L${low.join('L')}Z`;
}
/** The end as the sawyer sees it: arcs round the true pith where it is known. */
function End({ board, h, scale }: { board: BoardView; h: number; scale: number }): ReactNode {
  const tone = toneOf(board.wood);
  const [across, above] = board.pith ?? [0, -board.width * 0.6];
  const w = Math.max(6, Math.min(12, board.thickness * scale * 1.6));
  const k = h / board.width;
  const id = `end-${board.id.replaceAll(/\W/g, '-')}`;
  const step = Math.max(2.6, 9 * k);
  return (
    <g transform={`translate(${MARGIN - w - 6} 1)`}>
      <clipPath id={id}>
        <rect width={w} height={h} />
      </clipPath>
      <rect width={w} height={h} fill={cssColour(tone.early, -0.05)} />
      <g clipPath={`url(#${id})`} fill="none" stroke={cssColour(tone.late, -0.05)}>
        {Array.from({ length: 36 }, (_, i) => (
          <circle key={i} cx={w / 2 - above * k} cy={h / 2 + across * k} r={2 + i * step} />
        ))}
      </g>
      <rect className="end-edge" width={w} height={h} />
    </g>
  );
}
type Disc = { readonly placement: PlacementView; readonly words: string; readonly x: number; readonly y: number };
/** One letter a placement; neighbours of one letter on a thin strip share one ("A ×4"). */
function discsOf(board: BoardView, scale: number): Disc[] {
  const out: Disc[] = [];
  const thin = new Map<string, PlacementView[]>();
  for (const p of board.placements) {
    if (p.width * scale >= 16 && p.length * scale >= 18)
      out.push({ placement: p, words: p.letter, x: (p.x + p.length / 2) * scale, y: (p.y + p.width / 2) * scale });
    else thin.set(p.letter, [...(thin.get(p.letter) ?? []), p]);
  }
  for (const [letter, ps] of thin) {
    const [first] = ps;
    const x = (Math.min(...ps.map((p) => p.x)) + Math.max(...ps.map((p) => p.x + p.length))) / 2;
    const y = (Math.min(...ps.map((p) => p.y)) + Math.max(...ps.map((p) => p.y + p.width))) / 2;
    const disc = { words: ps.length > 1 ? `${letter} ×${ps.length}` : letter, x: x * scale, y: y * scale };
    if (first && out.every((o) => Math.abs(o.x - disc.x) > 24 || Math.abs(o.y - disc.y) > 12)) out.push({ placement: first, ...disc });
  }
  return out;
}
function Placements({ board, scale }: { board: BoardView; scale: number }): ReactNode {
  const chosen = useView((v) => v.part);
  const hovered = useView((v) => v.hover);
  const tone = toneOf(board.wood);
  const on = (p: PlacementView): boolean => p.paths.some((q) => q === chosen || hovered.includes(q));
  const pick = (p: PlacementView): void => look({ part: p.paths.includes(chosen ?? '') ? null : (p.paths[0] ?? null), finding: null });
  return (
    <>
      {board.placements.map((p, i) => (
        <g
          key={i}
          className={`placement${on(p) ? ' on' : ''}`}
          role="button"
          tabIndex={0}
          aria-label={`${p.letter}, ${p.label}`}
          onClick={() => pick(p)}
          onKeyDown={(e) => (e.key === 'Enter' || e.key === ' ') && (e.preventDefault(), pick(p))}
          onPointerEnter={() => hover(p.paths)}
          onPointerLeave={() => hover([])}
          onFocus={() => hover(p.paths)}
          onBlur={() => hover([])}
        >
          <rect x={p.x * scale} y={p.y * scale} width={p.length * scale} height={p.width * scale} fill={cssColour(tone.mean)} />
          <Figure p={p} scale={scale} seed={seedOf(board.id + String(i))} stroke={cssColour(tone.late)} />
          <rect className="casing" x={p.x * scale} y={p.y * scale} width={p.length * scale} height={p.width * scale} />
          <rect className="chalk" x={p.x * scale} y={p.y * scale} width={p.length * scale} height={p.width * scale} />
        </g>
      ))}
      {discsOf(board, scale).map((d) => (
        <g
          key={`${d.words}${d.x}`}
          className={`letter${on(d.placement) ? ' on' : ''}`}
          transform={`translate(${d.x} ${d.y})`}
          aria-hidden="true"
        >
          <rect
            x={-Math.max(9.5, d.words.length * 4.4 + 3)}
            y="-9.5"
            width={2 * Math.max(9.5, d.words.length * 4.4 + 3)}
            height="19"
            rx="9.5"
          />
          <text y="4.4" textAnchor="middle">
            {d.words}
          </text>
        </g>
      ))}
    </>
  );
}
/** Flat-sawn figure: a few nested tongues of grain. */
function Figure({ p, scale, seed, stroke }: { p: PlacementView; scale: number; seed: number; stroke: string }): ReactNode {
  const [x, y, w, h] = [p.x * scale, p.y * scale, p.length * scale, p.width * scale];
  if (h < 7 || w < 30) return null;
  const mid = y + h * (0.5 + 0.12 * wave(seed, 1));
  const tongues = Array.from({ length: 3 }, (_, i) => {
    const tip = x + w * (0.25 + 0.22 * i + 0.05 * wave(seed, i + 3));
    const open = h * (0.14 + 0.1 * i);
    return `M${x + 1} ${mid - open} C${x + (tip - x) * 0.6} ${mid - open} ${tip} ${mid - open * 0.6} ${tip} ${mid} C${tip} ${mid + open * 0.6} ${x + (tip - x) * 0.6} ${mid + open} ${x + 1} ${mid + open}`;
  });
  const lines = [0.12, 0.86].map(
    (t) =>
      `M${x + 1} ${y + h * t} C${x + w * 0.3} ${y + h * t + wave(seed, t) * 0.8} ${x + w * 0.7} ${y + h * t - wave(seed, t + 2) * 0.8} ${x + w - 1} ${y + h * t}`,
  );
  return <path className="figure" d={[...tongues, ...lines].join('')} stroke={stroke} />;
}
