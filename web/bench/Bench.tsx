/** What is done with the piece: its boards, its cut list, the order of work; words, not tabs. */
import { lazy, Suspense, type ReactNode } from 'react';
import { saveMade } from '../document/piece.ts';
import { type Page, look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';

// Lists and boards are not needed for the first picture.
const Boards = lazy(() => import('./Boards.tsx').then((m) => ({ default: m.Boards })));
const CutList = lazy(() => import('./CutList.tsx').then((m) => ({ default: m.CutList })));
const Order = lazy(() => import('./Order.tsx').then((m) => ({ default: m.Order })));
const PAGES: readonly { readonly page: Page; readonly words: string }[] = [
  { page: 'boards', words: 'Boards' },
  { page: 'list', words: 'Cut list' },
  { page: 'order', words: 'Order of work' },
];
export function Bench(): ReactNode {
  const page = useView((v) => v.page);
  const piece = useResults((r) => r.piece);
  return (
    <section className={`bench page-${page}`} aria-label="The bench">
      <div className="head">
        <div className="words" role="group" aria-label="Page of the bench">
          {PAGES.map((p) => (
            <button key={p.page} aria-pressed={page === p.page} onClick={() => look({ page: p.page })}>
              {p.words}
            </button>
          ))}
          {piece?.parts.length ? (
            <button title="Saves one HTML page that opens from disk and turns" onClick={() => void saveMade('client-page')}>
              For the client
            </button>
          ) : null}
        </div>
        <Sum />
      </div>
      <Suspense fallback={<p className="quiet">…</p>}>
        {page === 'boards' ? <Boards /> : page === 'list' ? <CutList /> : <Order />}
      </Suspense>
    </section>
  );
}
/** One line that says how the layout stands. */
function Sum(): ReactNode {
  const layout = useResults((r) => r.layout);
  const page = useView((v) => v.page);
  if (!layout || page !== 'boards') return null;
  const n = layout.boards.length;
  if (!n) return null;
  const { bound, unplaced } = layout;
  return (
    <p className="sum q">
      <b>{n === 1 ? '1 board' : `${n} boards`}</b>
      <span className="wide">
        , <b>{Math.round(layout.yield * 100)} %</b> becomes parts
      </span>{' '}
      ·{' '}
      {unplaced.length ? (
        <b>{unplaced.length === 1 ? 'one part finds no board' : `${unplaced.length} parts find no board`}</b>
      ) : bound.proved && bound.boards >= n ? (
        <>
          <b>fewer is impossible</b>, proved
        </>
      ) : (
        <>at most {n - bound.boards === 1 ? '1 board' : `${n - bound.boards} boards`} could be saved</>
      )}
    </p>
  );
}
