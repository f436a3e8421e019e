/** The lens: the place of the opened finding, cut open and enlarged, with letters and its one red measure. */
import { useEffect, useRef, type ReactNode } from 'react';
import type { Finding } from '../../src/model/finding.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { capital, figureText, useUnits } from '../look/Figures.tsx';
import { useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { useStage } from './useStage.ts';

/** Which way the lens looks, in words. */
function cutWords(cut: Vec3): readonly [string, string] {
  const [x, y, z] = cut.map(Math.abs) as [number, number, number];
  if (z >= x && z >= y) return ['cut level', cut[2] > 0 ? 'seen from above' : 'seen from below'];
  if (x >= y) return ['cut upright', cut[0] > 0 ? 'seen from the right' : 'seen from the left'];
  return ['cut upright', cut[1] > 0 ? 'seen from behind' : 'seen from the front'];
}
export const cutOf = (f: Finding): Vec3 => f.where.cut ?? [0, 0, 1];

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
  const mine = shot && finding && shot.finding === finding.key ? shot : null;
  useEffect(() => {
    if (!mine || !canvas.current) return;
    canvas.current.width = mine.image.width;
    canvas.current.height = mine.image.height;
    canvas.current.getContext('2d')?.putImageData(mine.image, 0, 0);
  }, [mine]);
  if (!mine || !finding) return null;
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
