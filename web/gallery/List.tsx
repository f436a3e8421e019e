/** All pages in three groups, each with its drawing and its one sentence; a field finds by any word of them. */
import { useState, type ReactNode } from 'react';
import { type Listed, type PageSort, SORTS, cardName } from '../../src/papers/page.ts';
import { Said } from '../look/Figures.tsx';
import { listedPages } from './pages.ts';
import { useLoaded } from './useLoaded.ts';

const lower = (p: Listed): string => `${p.title} ${p.words} ${p.find} ${SORTS[p.sort].many}`.toLowerCase();
/** Every word that was typed begins or is in a word of the page. */
const found = (pages: readonly Listed[], asked: string): readonly Listed[] => {
  const words = asked.toLowerCase().split(/\s+/).filter(Boolean);
  return pages.filter((p) => words.every((w) => lower(p).includes(w)));
};
/** What was looked for stays while one page is read. */
let last = '';

export function List(): ReactNode {
  const pages = useLoaded('all', listedPages);
  const [asked, ask] = useState(last);
  const shown = pages === null || pages === 'none' ? [] : found(pages, asked);
  return (
    <main className="gallery-list">
      <header>
        <h1>Joints, shapes and makers</h1>
        <label className="look-for">
          <span>Look for</span>
          <input
            type="search"
            value={asked}
            placeholder="tenon, shelf, drawer"
            autoComplete="off"
            onChange={(e) => {
              last = e.target.value;
              ask(last);
            }}
          />
        </label>
        <p className="quiet" role="status">
          {pages === null ? '' : pages === 'none' ? 'The pages could not be loaded.' : told(shown.length, pages.length, asked)}
        </p>
      </header>
      {(Object.keys(SORTS) as PageSort[]).map((sort) => (
        <Group key={sort} sort={sort} pages={shown.filter((p) => p.sort === sort)} />
      ))}
    </main>
  );
}
function told(shown: number, all: number, asked: string): string {
  if (asked.trim() === '') return `${all} in all`;
  return shown ? `${shown} of ${all}` : `None of the ${all} has these words.`;
}
function Group({ sort, pages }: { sort: PageSort; pages: readonly Listed[] }): ReactNode {
  if (pages.length === 0) return null;
  return (
    <section aria-label={SORTS[sort].many}>
      <h2>{SORTS[sort].many}</h2>
      <p className="deck">{SORTS[sort].words}</p>
      <ul className="cards">
        {pages.map((p) => (
          <li key={p.id}>
            <a href={`#joints/${p.id}`}>
              <span className="drawn">
                <img src={`gallery/${cardName(p.id)}`} alt="" loading="lazy" decoding="async" />
              </span>
              <b>{p.title}</b>
              <span className="for">
                <Said text={p.words} strong={false} />
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
