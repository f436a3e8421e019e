/** The lens: the place of the opened finding, cut open and enlarged, with letters and its one red measure. */
import { useEffect, useRef, type ReactNode } from 'react';
import type { Finding } from '../../src/model/finding.ts';
import { type Vec3, dot, sub } from '../../src/geom/vec3.ts';
import { capital, figureText, useUnits } from '../look/Figures.tsx';
import { useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { lensFrame } from './lensShot.ts';
import { useStage } from './useStage.ts';

/** Which way the lens looks, in words. */
function cutWords(cut: Vec3): readonly [string, string] {
  const [x, y, z] = cut.map(Math.abs) as [number, number, number];
  if (z >= x && z >= y) return ['cut level', cut[2] > 0 ? 'seen from above' : 'seen from below'];
  if (x >= y) return ['cut upright', cut[0] > 0 ? 'seen from the right' : 'seen from the left'];
  return ['cut upright', cut[1] > 0 ? 'seen from behind' : 'seen from the front'];
}
export const cutOf = (f: Finding): Vec3 => f.where.cut ?? [0, 0, 1];

/** Shared wood that is too thin for the picture: where it lies in the lens, 0…100, never under three wide. */
function biteBox(f: Finding, positions: Float32Array): { x: number; y: number; width: number; height: number } | null {
  const lens = lensFrame({ at: f.where.at, reach: f.where.reach, cut: cutOf(f) });
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3) {
    const p = sub([positions[i] ?? 0, positions[i + 1] ?? 0, positions[i + 2] ?? 0], lens.at);
    const [x, y] = [50 + (50 * dot(p, lens.right)) / lens.half, 50 - (50 * dot(p, lens.up)) / lens.half];
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  }
  if (!(x1 >= x0)) return null;
  const [w, h] = [Math.max(1.6, x1 - x0), Math.max(1.6, y1 - y0)];
  return { x: (x0 + x1 - w) / 2, y: (y0 + y1 - h) / 2, width: w, height: h };
}
export function useOpened(): Finding | null {
  const key = useView((v) => v.finding);
  return useResults((r) => r.verdict?.findings.find((f) => f.key === key)) ?? null;
}
/** `place`: on the sheet beside the piece, or within the paragraph on a narrow page (the style sheet shows one of the two). */
export function Lens({ place }: { place: 'sheet' | 'paragraph' }): ReactNode {
  const finding = useOpened();
  const shot = useStage((s) => s.shot);
  const canvas = useRef<HTMLCanvasElement>(null);
  const piece = useResults((r) => r.piece);
  const units = useUnits();
  const bite = useResults((r) => r.bite);
  const mine = shot && finding && shot.finding === finding.key ? shot : null;
  useEffect(() => {
    if (!mine || !canvas.current) return;
    canvas.current.width = mine.image.width;
    canvas.current.height = mine.image.height;
    canvas.current.getContext('2d')?.putImageData(mine.image, 0, 0);
  }, [mine]);
  if (!mine || !finding) return null;
  const shared = mine.red || bite?.finding !== finding.key ? null : biteBox(finding, bite.positions);
  const parts = new Map(piece?.parts.map((p) => [p.path, p]));
  const [how, from] = cutWords(cutOf(finding));
  const title = `${capital(parts.get(finding.parts[0] ?? '')?.label ?? 'The place')}, ${how}`;
  const measure = finding.unit === 'mm' && finding.grade !== 'note' ? figureText('mm', finding.measured, units) : null;
  return (
    <figure className={`lens ${place} ${finding.grade}`}>
      <figcaption>
        <b>{title}</b>
        <span>{from}</span>
      </figcaption>
      <div className="glass">
        <canvas ref={canvas} role="img" aria-label={`${title}, ${from}`} />
        <svg viewBox="0 0 100 100" aria-hidden="true">
          {mine.letters.map((l) => (
            <g key={l.path} transform={`translate(${l.x * 100} ${l.y * 100})`} className="letter">
              <circle r="4.4" />
              <text y="1.9" textAnchor="middle">
                {parts.get(l.path)?.letter}
              </text>
            </g>
          ))}
          {shared ? (
            <>
              <rect className="casing" {...shared} />
              <rect className="bite" {...shared} />
            </>
          ) : null}
          {mine.red && measure ? (
            <>
              <path className="casing" d={`M${mine.red[0] * 100} ${mine.red[1] * 100}V100`} />
              <path className="red" d={`M${mine.red[0] * 100} ${mine.red[1] * 100}V100`} />
            </>
          ) : null}
        </svg>
      </div>
      {measure ? <p className="q">{measure}</p> : null}
    </figure>
  );
}
