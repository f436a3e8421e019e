/** The sign of a finding: shape and fill by grade, its number inside; the same on the wood, in text and on papers. */
import type { ReactNode } from 'react';
import type { Grade } from '../../src/model/finding.ts';

export const GRADE_WORDS: Readonly<Record<Grade, string>> = { stops: 'stops it', trouble: 'trouble later', note: 'worth knowing' };

export function Sign({ grade, number, size = 28 }: { grade: Grade; number: number; size?: number }): ReactNode {
  return (
    <svg className={`sign ${grade}`} width={size} height={size} viewBox="0 0 28 28" aria-hidden="true">
      {grade === 'note' ? <circle cx="14" cy="14" r="12.75" /> : <rect x="1.25" y="1.25" width="25.5" height="25.5" />}
      <text x="14" y="20" textAnchor="middle" fontSize={number > 99 ? 12 : 17}>
        {number}
      </text>
    </svg>
  );
}
