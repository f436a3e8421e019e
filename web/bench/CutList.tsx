/** The cut list: one row a kind of part; a row leads to the part. */
import { useState, type ReactNode } from 'react';
import type { CutRow } from '../../src/piece/view.ts';
import { saveMade } from '../document/piece.ts';
import { useUnits } from '../look/Figures.tsx';
import { lengthText, printed } from '../look/lengths.ts';
import { hover, look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';

const CHUNK = 120;
export function CutList(): ReactNode {
  const rows = useResults((r) => r.rows);
  const units = useUnits();
  const [shown, show] = useState(CHUNK);
  if (!rows?.length) return <p className="quiet">{rows ? 'Nothing to cut yet.' : '…'}</p>;
  return (
    <div className="table">
      <table>
        <caption className="hidden">Cut list, lengths in {units === 'in' ? 'inches' : 'millimetres'}</caption>
        <thead>
          <tr>
            <th scope="col" colSpan={2}>
              part
            </th>
            <th scope="col" className="figure">
              how many
            </th>
            <th scope="col">wood</th>
            {['length', 'width', 'thickness', 'rough length', 'rough width', 'rough thickness'].map((h, i) => (
              <th key={h} scope="col" className="figure size">
                {i % 3 === 0 ? `${h}, ${units}` : h}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, shown).map((r) => (
            <Row key={r.letter + r.part} row={r} />
          ))}
        </tbody>
      </table>
      <p className="after">
        {rows.length > shown ? (
          <button className="inline" onClick={() => show(shown + 4 * CHUNK)}>
            {rows.length - shown} more rows
          </button>
        ) : null}
        <button className="inline" onClick={() => void saveMade('cut-list')}>
          save the cut list
        </button>
      </p>
    </div>
  );
}
function Row({ row }: { row: CutRow }): ReactNode {
  const on = useView((v) => row.paths.includes(v.part ?? '') || v.hover.some((h) => row.paths.includes(h)));
  const pick = (): void => look({ part: row.paths[0] ?? null, finding: null });
  return (
    <tr className={on ? 'on' : ''} onClick={pick} onPointerEnter={() => hover(row.paths)} onPointerLeave={() => hover([])}>
      <td className="lettered">{row.letter ? <span className={`disc${on ? ' on' : ''}`}>{row.letter}</span> : null}</td>
      <th scope="row">
        <button className="row-link" onClick={pick} onFocus={() => hover(row.paths)} onBlur={() => hover([])}>
          {row.words}
        </button>
        {row.handedOf === null ? null : <small>mirror image of {row.handedOf}</small>}
      </th>
      <td className="figure">{row.count}</td>
      <td>{row.wood.replaceAll('_', ' ')}</td>
      <Cells {...row.finished} />
      <Cells {...row.rough} rough />
    </tr>
  );
}
function Cells({
  length,
  width,
  thickness,
  rough = false,
}: {
  length: number;
  width: number;
  thickness: number;
  rough?: boolean;
}): ReactNode {
  const units = useUnits();
  return [length, width, thickness].map((mm, i) => {
    const p = printed(mm, units);
    return (
      <td key={i} className={`size q${rough ? ' rough' : ''}`} aria-label={lengthText(mm, units)}>
        <span className="whole">
          {p.whole}
          {p.decimals ? `.${p.decimals}` : ''}
        </span>
        <span className="part-of fr">{p.numerator ? `${p.numerator}⁄${p.denominator}` : ''}</span>
      </td>
    );
  });
}
