/** The five places: bar, said, sheet, stick, bench; on a phone one below the other, with five words at the foot. */
import { lazy, Suspense, useEffect, type DragEvent, type ReactNode } from 'react';
import { Band } from './bar/Band.tsx';
import { Bar } from './bar/Bar.tsx';
import { Bench } from './bench/Bench.tsx';
import { Keys } from './commands/Keys.tsx';
import { onKey } from './commands/commands.ts';
import { readFile } from './document/files.ts';
import { keepNow, openText } from './document/piece.ts';
import { type Dock, look, useView } from './look/view.ts';
import { SaidColumn } from './said/SaidColumn.tsx';
import { clearAddress, followAddress } from './start/address.ts';
import { Start } from './start/Start.tsx';
import { Stick } from './stick/Stick.tsx';
import { Sheet } from './viewer/Sheet.tsx';

const Gallery = lazy(() => import('./gallery/Gallery.tsx').then((m) => ({ default: m.Gallery })));

export function App(): ReactNode {
  const screen = useView((v) => v.screen);
  const entry = useView((v) => v.entry);
  const dock = useView((v) => v.dock);
  const pulled = useView((v) => v.pulled);
  const keys = useView((v) => v.keys);
  useEffect(() => {
    const leave = (): void => void keepNow();
    addEventListener('keydown', onKey);
    addEventListener('pagehide', leave);
    const unfollow = followAddress();
    return () => {
      unfollow();
      removeEventListener('keydown', onKey);
      removeEventListener('pagehide', leave);
    };
  }, []);
  useEffect(clearAddress, [screen]);
  const place = screen === 'gallery' && entry !== null ? 'gallery entry' : screen;
  return (
    <div
      className={`app ${place} dock-${dock}${pulled ? ' pulled' : ''}`}
      onDragOver={(e) => e.preventDefault()}
      onDrop={(e) => void dropped(e)}
    >
      <Bar />
      <Band />
      {keys ? <Keys /> : null}
      {screen === 'start' ? (
        <Start />
      ) : screen === 'gallery' ? (
        <Suspense fallback={<main className="gallery-list" />}>
          <Gallery entry={entry} />
        </Suspense>
      ) : (
        <>
          <SaidColumn />
          <Sheet />
          <Stick />
          <Bench />
          <DockWords />
        </>
      )}
    </div>
  );
}
async function dropped(e: DragEvent): Promise<void> {
  const file = e.dataTransfer.files[0];
  if (!file) return;
  e.preventDefault();
  const read = await readFile(file);
  if (read.ok) openText(read.text, undefined, read.name);
  else look({ band: { words: read.words, verbs: [{ words: 'Understood', run: () => look({ band: null }) }] } });
}
const DOCK: readonly { readonly dock: Dock; readonly words: string }[] = [
  { dock: 'verdict', words: 'Verdict' },
  { dock: 'sizes', words: 'Sizes' },
  { dock: 'boards', words: 'Boards' },
  { dock: 'bench', words: 'Order' },
  { dock: 'more', words: 'More' },
];
function DockWords(): ReactNode {
  const dock = useView((v) => v.dock);
  return (
    <nav className="dock" aria-label="Pages">
      {DOCK.map((d) => (
        <button
          key={d.dock}
          aria-current={dock === d.dock ? 'page' : undefined}
          onClick={() =>
            look({
              dock: d.dock,
              ...(d.dock === 'boards' ? { page: 'boards' as const } : d.dock === 'bench' ? { page: 'order' as const } : {}),
            })
          }
        >
          {d.words}
        </button>
      ))}
    </nav>
  );
}
