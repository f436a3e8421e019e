/** The order of work as numbered sentences; the sheet shows the step that is chosen. */
import { useEffect, useRef, type ReactNode } from 'react';
import type { OrderView } from '../../src/piece/view.ts';
import { capital } from '../look/Figures.tsx';
import { hover, look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';

export function Order(): ReactNode {
  const order = useResults((r) => r.order);
  const piece = useResults((r) => r.piece);
  const together = useView((v) => v.together);
  if (!order)
    return <p className="quiet">{piece?.parts.length ? 'Finding an order…' : 'Steps appear here when there are parts to join.'}</p>;
  if (!order.possible) return <Stuck order={order} />;
  const at = Math.round(together * order.steps.length);
  const stages = order.stages.length ? order.stages : [{ name: '', steps: order.steps.map((_, i) => i) }];
  return (
    <div className="order">
      {stages.map((s) => (
        <section key={s.name + String(s.steps[0])}>
          {s.name ? <h3>{s.name}</h3> : null}
          <ol start={(s.steps[0] ?? 0) + 1}>
            {s.steps.map((i) => (
              <Step key={i} number={i} order={order} now={at === i + 1 && at < order.steps.length} done={i < at} />
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}
function Step({ number, order, now, done }: { number: number; order: OrderView; now: boolean; done: boolean }): ReactNode {
  const step = order.steps[number];
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (now) row.current?.scrollIntoView({ block: 'nearest' });
  }, [now]);
  if (!step) return null;
  return (
    <li ref={row} value={number + 1} className={now ? 'now' : done ? 'done' : ''}>
      <button
        aria-current={now ? 'step' : undefined}
        onClick={() => look({ together: (number + 1) / order.steps.length })}
        onPointerEnter={() => hover(step.move)}
        onPointerLeave={() => hover([])}
      >
        <span className="square">{number + 1}</span>
        {capital(step.words)}.
      </button>
    </li>
  );
}
function Stuck({ order }: { order: OrderView }): ReactNode {
  const piece = useResults((r) => r.piece);
  const labels = new Map(piece?.parts.map((p) => [p.path, p.label]));
  return (
    <div className="order">
      <p className="quiet">No order brings these together; each waits for another:</p>
      <ul className="lines">
        {order.stuck?.map((path) => (
          <li key={path}>
            <button className="inline" onClick={() => look({ part: path })}>
              {labels.get(path) ?? path}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
