/** The bar: which piece, back and forth, units, and whether it is kept. */
import { useEffect, type ReactNode } from 'react';
import { useAside } from '../document/aside.ts';
import { useKeeping } from '../document/keeping.ts';
import { redo, saveDocument, undo } from '../document/piece.ts';
import { titleOf, useDocument } from '../document/store.ts';
import { useUnits } from '../look/Figures.tsx';
import { lengthText } from '../look/lengths.ts';
import { Mark } from '../look/Pictogram.tsx';
import { leaveGallery } from '../start/address.ts';
import { type Units, look, setUnits, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';

export function Bar(): ReactNode {
  const screen = useView((v) => v.screen);
  const piece = useResults((r) => r.piece);
  const past = useDocument((d) => d.past);
  const future = useDocument((d) => d.future);
  useEffect(() => void (document.title = piece && screen === 'piece' ? `${piece.title} · Dryfit` : 'Dryfit'), [piece, screen]);
  return (
    <header className="bar">
      <button className="mark" onClick={() => look({ screen: 'start' })} aria-label="Dryfit: all pieces">
        <Mark />
        <span>Dryfit</span>
      </button>
      {piece && screen === 'piece' ? (
        <>
          <Piece />
          <span className="space" />
          <button className="verb" disabled={!past.length} title={past.at(-1)?.words} onClick={undo}>
            Undo
          </button>
          <button className="verb" disabled={!future.length} title={future[0]?.words} onClick={redo}>
            Redo
          </button>
          <UnitWords />
          <Kept />
          <button className="verb open" onClick={() => look({ screen: 'start' })}>
            Open
          </button>
          <button className="verb save" onClick={() => void saveDocument()}>
            Save a file
          </button>
        </>
      ) : (
        <>
          <span className="space" />
          {screen === 'gallery' ? <UnitWords /> : null}
          <Back />
        </>
      )}
    </header>
  );
}
/** To the maker's own piece; an example on the sheet is none. */
function Back(): ReactNode {
  const screen = useView((v) => v.screen);
  const piece = useResults((r) => r.piece);
  const aside = useAside((a) => a.own);
  const title = aside ? (aside.document.json === null ? null : titleOf(aside.document.json)) : (piece?.title ?? null);
  if (title === null) return null;
  return (
    <button className="verb" onClick={() => (screen === 'gallery' ? leaveGallery() : look({ screen: 'piece' }))}>
      Back to {title.length > 30 ? 'the piece' : title}
    </button>
  );
}
/** Its name, and in one line what it is of and how big. */
function Piece(): ReactNode {
  const piece = useResults((r) => r.piece);
  const units = useUnits();
  if (!piece) return null;
  const volume = new Map<string, number>();
  for (const p of piece.parts)
    if (p.kind === 'wood') volume.set(p.wood, (volume.get(p.wood) ?? 0) + p.finished.length * p.finished.width * p.finished.thickness);
  const woods = [...volume].sort((a, b) => b[1] - a[1]).map(([w]) => w.replaceAll('_', ' '));
  const { box } = piece;
  const sizes = box ? [0, 1, 2].map((i) => lengthText((box.max[i] ?? 0) - (box.min[i] ?? 0), units, false)).join(' × ') : '';
  return (
    <div className="title">
      <b>{piece.title}</b>
      <span className="q">
        {woods.slice(0, 2).join(' and ')}
        {sizes ? ` · ${sizes} ${units}` : ''}
      </span>
    </div>
  );
}
function UnitWords(): ReactNode {
  const units = useUnits();
  const word = (u: Units, words: string): ReactNode => (
    <button aria-pressed={units === u} onClick={() => setUnits(u)}>
      {words}
    </button>
  );
  return (
    <div className="words units" role="group" aria-label="Units">
      {word('in', 'inches')}
      {word('mm', 'mm')}
    </div>
  );
}
/** Where "kept on this machine" stands, a notice takes its place until the next act. */
function Kept(): ReactNode {
  const kept = useKeeping((k) => k.kept);
  const notice = useView((v) => v.notice);
  return (
    <span className="kept" role="status">
      {notice ? (
        <>
          {notice.words}
          {notice.act ? (
            <button className="inline" onClick={notice.act.run}>
              {notice.act.words}
            </button>
          ) : null}
        </>
      ) : kept === null ? (
        ''
      ) : kept ? (
        'kept on this machine'
      ) : (
        'not kept here: save a file'
      )}
    </span>
  );
}
