/** One finding as a numbered paragraph: what, why, and the cures that were tried and hold. */
import { useState, type ReactNode } from 'react';
import type { Finding as Record_ } from '../../src/model/finding.ts';
import { putRight } from '../document/piece.ts';
import { Said, figureText, saidText, useUnits } from '../look/Figures.tsx';
import { hover, look } from '../look/view.ts';
import { Lens } from '../viewer/Lens.tsx';
import { GRADE_WORDS, Sign } from './Sign.tsx';

export function Finding({ finding, number, open, main }: { finding: Record_; number: number; open: boolean; main: boolean }): ReactNode {
  const enter = (): void => hover(finding.parts);
  const leave = (): void => hover([]);
  return (
    <li className={`finding ${finding.grade}${open ? ' open' : ''}`} onPointerEnter={enter} onPointerLeave={leave}>
      <button
        aria-expanded={open}
        onClick={() => look({ finding: open ? null : finding.key, part: null, focus: !open })}
        onFocus={enter}
        onBlur={leave}
      >
        <Sign grade={finding.grade} number={number} />
        <span className="kind">{GRADE_WORDS[finding.grade]}</span>
        <span className="title">
          <Said text={finding.title} strong={false} />
        </span>
      </button>
      <p>
        <Said text={finding.why} />
      </p>
      {open ? (
        <>
          <Lens place="paragraph" />
          <Remedies finding={finding} main={main} />
          <Why finding={finding} />
        </>
      ) : null}
    </li>
  );
}
function Remedies({ finding, main }: { finding: Record_; main: boolean }): ReactNode {
  const units = useUnits();
  if (!finding.remedies.length) return null;
  return (
    <ul className="remedies">
      {finding.remedies.map((r, i) => (
        <li key={`${r.label} ${i}`}>
          <b>
            <Said text={r.label} strong={false} />
          </b>
          {r.consequence ? (
            <small>
              <Said text={r.consequence} strong={false} />
            </small>
          ) : null}
          <button
            className={`press${main && i === 0 ? ' filled' : ''}`}
            aria-label={`Put right: ${saidText(r.label, units)}`}
            onClick={() => putRight(finding, r)}
          >
            Put right
          </button>
        </li>
      ))}
    </ul>
  );
}

const BASIS = {
  read: 'read in',
  'read-secondhand': 'as quoted in',
  memory: 'from memory of',
  derived: 'follows from',
  'common practice': 'common practice',
} as const;
/** Measured, limit, how it is known, and who says so. */
function Why({ finding }: { finding: Record_ }): ReactNode {
  const [shown, show] = useState(false);
  const units = useUnits();
  const said = (n: number): string => figureText(finding.unit, n, units);
  return (
    <div className="why">
      <button className="inline" aria-expanded={shown} onClick={() => show(!shown)}>
        Why
      </button>
      {shown ? (
        <dl>
          {finding.unit === 'none' ? null : (
            <>
              <dt>{finding.basis}</dt>
              <dd className="q">{said(finding.measured)}</dd>
              <dt>limit</dt>
              <dd className="q">{said(finding.limit)}</dd>
            </>
          )}
          <dt>source</dt>
          <dd>
            {finding.source.basis === 'common practice'
              ? finding.source.name && finding.source.name !== 'common practice'
                ? `${finding.source.name}: common practice, no source`
                : 'common practice, no source'
              : `${BASIS[finding.source.basis]} ${finding.source.name}`}
          </dd>
        </dl>
      ) : null}
    </div>
  );
}
/** Many findings of one rule: one paragraph with a count; opened, the places one by one. */
export function Folded({
  first,
  number,
  all,
  open,
}: {
  first: Record_;
  number: number;
  all: readonly Record_[];
  open: string | null;
}): ReactNode {
  const inside = all.find((f) => f.key === open);
  const [shown, show] = useState(30);
  return (
    <li className={`finding folded ${first.grade}${inside ? ' open' : ''}`}>
      <button aria-expanded={inside !== undefined} onClick={() => look({ finding: inside ? null : first.key, part: null, focus: !inside })}>
        <Sign grade={first.grade} number={number} />
        <span className="kind">
          {GRADE_WORDS[first.grade]}, {all.length} times
        </span>
        <span className="title">
          <Said text={first.title} strong={false} />
        </span>
      </button>
      {inside ? (
        <ol className="places">
          {all.slice(0, shown).map((f) => (
            <li key={f.key} className={f.key === open ? 'on' : ''}>
              <button
                aria-expanded={f.key === open}
                onClick={() => look({ finding: f.key, focus: true })}
                onPointerEnter={() => hover(f.parts)}
                onPointerLeave={() => hover([])}
              >
                <Said text={f.why} />
              </button>
              {f.key === open ? (
                <>
                  <Lens place="paragraph" />
                  <Remedies finding={f} main />
                  <Why finding={f} />
                </>
              ) : null}
            </li>
          ))}
          {all.length > shown ? (
            <li>
              <button className="inline" onClick={() => show(shown + 60)}>
                {all.length - shown} more
              </button>
            </li>
          ) : null}
        </ol>
      ) : (
        <p>
          <Said text={first.why} />
        </p>
      )}
    </li>
  );
}
