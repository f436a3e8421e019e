/** Where the tool speaks: the verdict in a sentence, the findings in reading order, or the part that was chosen. */
import { useEffect, useRef, type ReactNode } from 'react';
import { useCured } from '../document/cured.ts';
import { again, bringBack, stop } from '../document/piece.ts';
import { capital, inWords } from '../look/Figures.tsx';
import { look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { Finding, Folded } from './Finding.tsx';
import { paragraphs } from './paragraphs.ts';
import { PartPanel } from './PartPanel.tsx';
import { subLine, verdictSentence } from './sentence.ts';

function Verdict(): ReactNode {
  const piece = useResults((r) => r.piece);
  const verdict = useResults((r) => r.verdict);
  const order = useResults((r) => r.order);
  const busy = useResults((r) => r.busy);
  const failed = useResults((r) => r.failed);
  const progress = useResults((r) => r.progress);
  const sentence = failed
    ? 'The tool stopped. Your piece is safe.'
    : piece || !busy
      ? verdictSentence(verdict, piece?.parts.length ?? 0)
      : 'Opening your piece…';
  const sub = verdict ? subLine(verdict, order?.possible ? order.steps.length : null) : null;
  return (
    <div className={`verdict${busy ? ' waiting' : ''}`}>
      <h1 aria-live="polite">{sentence}</h1>
      {failed ? (
        <p className="deck">
          {failed}{' '}
          <button className="inline" onClick={again}>
            Draw again
          </button>
        </p>
      ) : sub && verdict?.counts.parts ? (
        <p className="deck">
          {sub.words}
          <span className="q">{sub.tried[0]}</span> {sub.tried[0] === 1 ? 'part' : 'parts'} and <span className="q">{sub.tried[1]}</span>{' '}
          {sub.tried[1] === 1 ? 'joint' : 'joints'} tried
          {sub.steps ? (
            <>
              , <span className="q">{sub.steps}</span> {sub.steps === 1 ? 'step' : 'steps'}
            </>
          ) : null}
          .
        </p>
      ) : verdict?.counts.parts === 0 ? (
        <p className="deck">
          Open a file, or{' '}
          <button className="inline" onClick={() => look({ screen: 'start' })}>
            start from a piece
          </button>
          .
        </p>
      ) : null}
      {progress ? (
        <div className="progress" role="status">
          <div className="fill" style={{ width: `${Math.min(100, (100 * progress.done) / Math.max(1, progress.of))}%` }} />
          <span>{progress.words}</span>
          <button className="inline" onClick={stop}>
            Stop
          </button>
        </div>
      ) : null}
    </div>
  );
}

function Findings(): ReactNode {
  const verdict = useResults((r) => r.verdict);
  const open = useView((v) => v.finding);
  const cured = useCured((c) => c.list);
  const list = useRef<HTMLOListElement>(null);
  const paras = paragraphs(verdict?.findings ?? []);
  const count = useRef(cured.length);
  useEffect(() => {
    // After a cure, once the core agrees that the finding is gone, the reader goes on with the next one.
    const last = cured.at(-1);
    if (last && cured.length > count.current) {
      if (verdict?.wave !== 2 || verdict.findings.some((f) => f.key === last.key)) return;
      list.current?.querySelector<HTMLElement>('.finding > button')?.focus();
    }
    count.current = cured.length;
  }, [cured, verdict]);
  const filled = paras.find((p) => p.first.remedies.length && p.all.some((f) => f.key === open));
  return (
    <div className="findings">
      <ol ref={list}>
        {paras.map((p) =>
          p.all.length > 1 ? (
            <Folded key={p.first.key} {...p} open={open} />
          ) : (
            <Finding
              key={p.first.key}
              finding={p.first}
              number={p.number}
              open={open === p.first.key}
              main={filled?.first.key === p.first.key}
            />
          ),
        )}
      </ol>
      <p className="hidden" role="status">
        {cured.length
          ? `Put right: ${cured.at(-1)?.title ?? ''}. ${paras.length === 1 ? 'One finding' : `${capital(inWords(paras.length))} findings`} left.`
          : ''}
      </p>
      {cured.map((c) => (
        <p className="cured" key={c.key}>
          <s>{c.title}</s>
          <button className="inline" onClick={() => bringBack(c)}>
            bring back
          </button>
        </p>
      ))}
    </div>
  );
}

export function SaidColumn(): ReactNode {
  const part = useView((v) => v.part);
  return (
    <aside className={`said${part === null ? '' : ' on-part'}`} aria-label="What the tool says">
      <Verdict />
      {part === null ? <Findings /> : <PartPanel path={part} leave={() => look({ part: null, alone: false })} />}
    </aside>
  );
}
