/** Pictograms: 20 grid, 1.5 line, butt ends; filled = the thing meant. Never without a word beside them. */
import type { ReactNode } from 'react';

const LINES = {
  cutopen: 'M2.5 2.5h15v15h-15z M2.5 12.5a5 5 0 0 1 5 5 M2.5 8.5a9 9 0 0 1 9 9 M2.5 4.5a13 13 0 0 1 13 13',
  whole: 'M2.5 6.5l4-4h11v11l-4 4h-11z M2.5 6.5h11v11 M13.5 6.5l4-4',
  turn: 'M16.5 10a6.5 6.5 0 1 1-2.2-4.9 M14.8 1.5v4h-4',
  client: 'M3.5 17.5v-15h13v15 M7 17.5v-5.5h6v5.5 M6 12h8',
  open: 'M2.5 16.5v-13h5l2 2.5h8v10.5z',
  chevron: 'M5 7.5l5 5 5-5',
} as const;

export function Pictogram({ name }: { name: keyof typeof LINES | 'alone' }): ReactNode {
  return (
    <svg className="pict" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      {name === 'alone' ? (
        <>
          <path d="M1.5 6.5h3v7h-3z M15.5 6.5h3v7h-3z" strokeDasharray="2 1.5" />
          <path d="M7.5 3.5h5v13h-5z" fill="currentColor" />
        </>
      ) : (
        <path d={LINES[name]} />
      )}
    </svg>
  );
}
/** Our mark: a tenon and the mortise that waits for it. */
export const Mark = (): ReactNode => (
  <svg width="26" height="20" viewBox="0 0 26 20" aria-hidden="true">
    <path d="M1 3h9v4h5v6h-5v4H1z" fill="currentColor" />
    <path d="M25 1v18h-7v-6h3.2V7H18V1z" fill="none" stroke="currentColor" strokeWidth="1.6" />
  </svg>
);
