/** All pieces: what to start from, a file, and the pieces kept on this machine. */
import { useEffect, useState, type ReactNode } from 'react';
import { pickFile, readFile } from '../document/files.ts';
import { openText } from '../document/piece.ts';
import { type Kept, keptPieces, letGo } from '../document/storage.ts';
import { useDocument } from '../document/store.ts';
import { look } from '../look/view.ts';
import { type Starter, openStarter, starterList } from './starters.ts';

const VERDICTS: Readonly<Record<string, string>> = {
  together: 'goes together',
  'not-yet': 'does not go together yet',
  'cannot-say': 'cannot tell yet',
};

export function Start(): ReactNode {
  const starters = useStarters();
  const [kept, setKept] = useState<readonly Kept[]>([]);
  const own = useDocument((d) => d.id);
  useEffect(() => void keptPieces().then(setKept, () => setKept([])), [own]);
  return (
    <main className="start">
      <div className="lead">
        <h1>What will you build?</h1>
        <p className="deck">Dryfit puts every joint together without glue, before any wood is cut, and says what does not go.</p>
        <p>
          <button className="press filled" onClick={() => void openFile()}>
            Open a file
          </button>
          <span className="hint">or drop one anywhere on the page</span>
        </p>
      </div>
      <section aria-label="Starters">
        <h2>Start from a piece</h2>
        {starters === 'none' ? <p className="quiet">The starters could not be loaded.</p> : null}
        <ul className="choices">
          {(starters === 'none' || starters === null ? [] : starters).map((s) => (
            <li key={s.file}>
              <button onClick={() => void openStarter(s)}>
                <b>{s.title}</b>
                <span>{s.words}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section aria-label="How it is done">
        <h2>See how it is done</h2>
        <ul className="choices">
          <li>
            <a href="#joints">
              <b>Joints, shapes and makers</b>
              <span>Each drawn apart, with its sizes and why, and the work at the bench.</span>
            </a>
          </li>
        </ul>
      </section>
      {kept.length ? (
        <section aria-label="Kept on this machine">
          <h2>Kept on this machine</h2>
          <ul className="choices">
            {kept.map((k) => (
              <li key={k.id}>
                <button onClick={() => (k.id === own ? look({ screen: 'piece' }) : openText(k.text, k.id, `“${k.title}”`))}>
                  <b>{k.title}</b>
                  <span>
                    {k.verdict ? `${VERDICTS[k.verdict] ?? ''}, ` : ''}
                    {new Date(k.at).toLocaleDateString(undefined, { day: 'numeric', month: 'long' })}
                  </span>
                </button>
                {k.id === own ? null : (
                  <button
                    className="inline"
                    aria-label={`Let go of ${k.title}`}
                    onClick={() => void letGo(k.id).then(keptPieces).then(setKept)}
                  >
                    let go
                  </button>
                )}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </main>
  );
}
const refuse = (words: string): void => look({ band: { words, verbs: [{ words: 'Understood', run: () => look({ band: null }) }] } });

async function openFile(): Promise<void> {
  const file = await pickFile();
  if (!file) return;
  const read = await readFile(file);
  if (read.ok) openText(read.text, undefined, read.name);
  else refuse(read.words);
}
function useStarters(): readonly Starter[] | 'none' | null {
  const [list, set] = useState<readonly Starter[] | 'none' | null>(null);
  useEffect(() => {
    starterList().then(set, () => set('none'));
  }, []);
  return list;
}
