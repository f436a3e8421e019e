/** What a page says of the example on the sheet: how it goes together, its sizes and why, how tight it is, and the work at the bench. */
import { useState, type ReactNode } from 'react';
import { type PageSize, type PageTask, type PageText, isShown } from '../../src/papers/page.ts';
import { Said, capital } from '../look/Figures.tsx';

type Example = PageText['examples'][number];

export function Told({ page, example }: { page: PageText; example: Example }): ReactNode {
  const worked = example.fits.length + example.hand.length + example.machine.length > 0;
  const sizes = <Sizes sizes={example.sizes} given={example.given} title={page.sort === 'joint' ? 'Sizes, and why' : 'What is set'} />;
  return (
    <div className="entry-told">
      {example.steps.length || worked ? (
        <div>
          <Steps steps={example.steps} />
          {worked ? sizes : null}
        </div>
      ) : null}
      <div>
        {worked ? null : sizes}
        <Fits fits={example.fits} />
        <Work hand={example.hand} machine={example.machine} />
      </div>
    </div>
  );
}
function Steps({ steps }: { steps: readonly string[] }): ReactNode {
  if (steps.length === 0) return null;
  return (
    <section aria-label="How it goes together">
      <h2>How it goes together</h2>
      <ol className="numbered">
        {steps.map((s, i) => (
          <li key={i}>
            <Said text={capital(s)} />
          </li>
        ))}
      </ol>
    </section>
  );
}
function Fits({ fits }: { fits: Example['fits'] }): ReactNode {
  if (fits.length === 0) return null;
  return (
    <section aria-label="How tight, and where glue goes">
      <h2>How tight, and where glue goes</h2>
      <dl className="entry-fits">
        {fits.map((f) => (
          <div key={f.how}>
            <dt>{f.how}</dt>
            <dd>{f.where.map(capital).join('; ')}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
function Sizes({ sizes, given, title }: { sizes: readonly PageSize[]; given: readonly PageSize[]; title: string }): ReactNode {
  if (sizes.length === 0) return null;
  const own = new Map(given.map((g) => [g.id, g.value]));
  const more = sizes.filter((s) => !isShown(s) && !own.has(s.id));
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <table className="entry-sizes">
        <thead className="hidden">
          <tr>
            <th>Size</th>
            <th>As proposed</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {sizes
            .filter((s) => isShown(s) || own.has(s.id))
            .map((s) => (
              <tr key={s.id}>
                <th scope="row">{capital(s.words)}</th>
                <td>
                  <Said text={capital(s.value ?? '')} strong={s.value?.startsWith('{') ?? false} />
                  {own.has(s.id) ? (
                    <span className="aside">
                      here <Said text={own.get(s.id) ?? ''} />
                    </span>
                  ) : null}
                </td>
                <td>
                  {s.rule === undefined ? null : <Said text={capital(s.rule)} />}
                  {s.range ? (
                    <span className="aside">
                      from <Said text={s.range[0]} strong={false} /> to <Said text={s.range[1]} strong={false} />
                    </span>
                  ) : null}
                  {s.source && s.source.basis !== 'derived' ? <span className="aside">{s.source.name}</span> : null}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      {more.length ? <p className="quiet">May be set too: {more.map((s) => s.words).join('; ')}.</p> : null}
    </section>
  );
}
function Work({ hand, machine }: { hand: readonly PageTask[]; machine: readonly PageTask[] }): ReactNode {
  const [byHand, set] = useState(true);
  if (hand.length === 0 && machine.length === 0) return null;
  const alike = JSON.stringify(hand) === JSON.stringify(machine);
  const word = (is: boolean, words: string): ReactNode => (
    <button aria-pressed={byHand === is} onClick={() => set(is)}>
      {words}
    </button>
  );
  return (
    <section aria-label="At the bench">
      <div className="entry-work">
        <h2>At the bench</h2>
        {alike ? null : (
          <div className="words" role="group" aria-label="How it is worked">
            {word(true, 'by hand')}
            {word(false, 'by machine')}
          </div>
        )}
      </div>
      <ol className="numbered">
        {(byHand ? hand : machine).map((t, i) => (
          <li key={i}>
            <b>{capital(t.role)}</b> <Said text={t.words} />
            <span className="aside">{capital(t.tool)}</span>
            {t.caution ? <span className="caution">{t.caution}</span> : null}
          </li>
        ))}
      </ol>
      <p className="quiet">Manuals of machines, local rules and taught practice come first.</p>
    </section>
  );
}
