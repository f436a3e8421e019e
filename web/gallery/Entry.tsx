/** One page: its examples live on the sheet, what it is for, its sizes with reasons, and the work at the bench. */
import { useEffect, useState, type ReactNode } from 'react';
import { type PageText, SORTS } from '../../src/papers/page.ts';
import { endExample, openText, showExample } from '../document/piece.ts';
import { Said, capital } from '../look/Figures.tsx';
import { useResults } from '../results/store.ts';
import { Sheet } from '../viewer/Sheet.tsx';
import { pageText } from './pages.ts';
import { Told } from './Told.tsx';
import { useLoaded } from './useLoaded.ts';

type Example = PageText['examples'][number];

export function Entry({ id }: { id: string }): ReactNode {
  const page = useLoaded(id, () => pageText(id));
  // On the way out, whichever it is, the maker's own piece comes back.
  useEffect(() => endExample, []);
  if (page === null) return <main className="gallery-list" />;
  if (page === 'none')
    return (
      <main className="gallery-list">
        <h1>There is no such page.</h1>
        <p className="deck">
          <a className="inline" href="#joints">
            All joints, shapes and makers
          </a>
        </p>
      </main>
    );
  return <Loaded page={page} />;
}
function Loaded({ page }: { page: PageText }): ReactNode {
  const [chosen, choose] = useState(0);
  const example = page.examples[chosen] ?? page.examples[0];
  useEffect(() => {
    if (example) showExample(example.document, `“${page.title}”`);
  }, [example, page.title]);
  if (!example) return null;
  return (
    <>
      <div className="entry-said">
        <header className="entry-head">
          <p>
            <a className="inline" href="#joints">
              All joints, shapes and makers
            </a>
          </p>
          <h1>{page.title}</h1>
          <p className="deck">
            <Said text={page.words} />
          </p>
          <p className="verbs-row">
            <Take page={page} example={example} />
            <a className="inline" href={`gallery/${page.id}.html`}>
              as a plain page
            </a>
          </p>
        </header>
        <Examples page={page} chosen={chosen} choose={choose} example={example} />
      </div>
      <Sheet />
      <Told page={page} example={example} />
    </>
  );
}
function Examples({
  page,
  chosen,
  choose,
  example,
}: {
  page: PageText;
  chosen: number;
  choose: (i: number) => void;
  example: Example;
}): ReactNode {
  const several = page.examples.length > 1;
  return (
    <div className="entry-examples">
      <section aria-label={several ? 'Examples' : 'Example'}>
        <h2>{several ? 'Examples' : 'An example'}</h2>
        <ul className="choices">
          {page.examples.map((e, i) => (
            <li key={e.name}>
              <button aria-pressed={several ? i === chosen : undefined} onClick={() => choose(i)}>
                <b>{capital(e.name)}</b>
                <span>
                  <Said text={e.words} strong={false} />
                </span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <Parts example={example} />
      {page.rules.length ? (
        <section aria-label="What is looked at">
          <h2>What is looked at</h2>
          <ul className="plain">
            {page.rules.map((r) => (
              <li key={r}>
                <Said text={r} />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </div>
  );
}
/** A piece of the maker's own, kept from now on. */
function Take({ page, example }: { page: PageText; example: Example }): ReactNode {
  const failed = useResults((r) => r.failed);
  return (
    <button
      className="press filled"
      disabled={failed !== null}
      onClick={() => openText(JSON.stringify(example.document), undefined, `“${SORTS[page.sort].many}: ${example.name}”`)}
    >
      Take it as a new piece
    </button>
  );
}
function Parts({ example }: { example: Example }): ReactNode {
  return (
    <section aria-label="Parts">
      <h2>Its parts</h2>
      <ul className="entry-parts">
        {example.parts.map((p) => (
          <li key={`${p.letter} ${p.label}`}>
            {p.letter ? <span className="disc">{p.letter}</span> : <span />}
            <span>
              {capital(p.label)}, {p.wood}
              <br />
              <span className="size">
                <Said text={p.size} strong={false} />
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
