/** The rules at the foot of the sheet: apart and together, and, while it is cut open, where. */
import type { ReactNode } from 'react';
import type { OrderView } from '../../src/piece/view.ts';
import { Length, inWords } from '../look/Figures.tsx';
import { look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { Slider, type Tick } from './Slider.tsx';

export function Rules(): ReactNode {
  const order = useResults((r) => r.order);
  const cut = useView((v) => v.cut);
  return (
    <div className={`rules${cut ? ' two' : ''}`}>
      {order ? order.steps.length ? <Apart order={order} /> : null : null}
      {cut ? <Cut /> : null}
    </div>
  );
}
function ticksOf(order: OrderView): readonly Tick[] {
  const n = order.steps.length;
  const ends = new Set(runsOf(order).map((r) => r.to + 1));
  return Array.from({ length: n + 1 }, (_, i) => ({ at: i / n, long: i === 0 || i === n || ends.has(i) }));
}
/** Steps of one stage that follow each other: a stage that another interrupts has its name twice. */
function runsOf(order: OrderView): { readonly name: string; readonly from: number; to: number }[] {
  const nameAt = new Map(order.stages.flatMap((s) => s.steps.map((i) => [i, s.name] as const)));
  const out: { readonly name: string; readonly from: number; to: number }[] = [];
  for (let i = 0; i < order.steps.length; i++) {
    const name = nameAt.get(i) ?? '';
    const last = out.at(-1);
    if (last?.name === name) last.to = i;
    else out.push({ name, from: i, to: i });
  }
  return out;
}
/** In words: all apart, the step that is being made, or together. */
function wordsAt(order: OrderView, together: number): string {
  const n = order.steps.length;
  if (together >= 1)
    return order.possible
      ? `together, ${n === 1 ? 'one step' : `${n} steps`}${order.stages.length > 1 ? ` in ${inWords(order.stages.length)} glue-ups` : ''}`
      : 'together';
  if (together <= 0) return `all apart, ${n === 1 ? 'one step' : `${n} steps`} to go`;
  const i = Math.min(n - 1, Math.max(0, Math.ceil(together * n - 1e-6) - 1));
  return `step ${i + 1}: ${order.steps[i]?.words ?? ''}`;
}
function Apart({ order }: { order: OrderView }): ReactNode {
  const together = useView((v) => v.together);
  const n = order.steps.length;
  const marks =
    order.stages.length > 1
      ? runsOf(order).map((r) => ({ at: (r.from + r.to + 1) / 2 / n, share: (r.to + 1 - r.from) / n, words: r.name }))
      : [];
  return (
    <Slider
      name="Apart and together"
      value={together}
      ticks={ticksOf(order)}
      words={wordsAt(order, together)}
      marks={marks}
      change={(v) => look({ together: v })}
    />
  );
}
const AXES = [
  { axis: 'x', words: 'left–right' },
  { axis: 'y', words: 'front–back' },
  { axis: 'z', words: 'bottom–top' },
] as const;
const CUT_TICKS = Array.from({ length: 11 }, (_, i) => ({ at: i / 10, long: i % 5 === 0 }));

function Cut(): ReactNode {
  const cut = useView((v) => v.cut);
  const box = useResults((r) => r.piece?.box);
  if (!cut) return null;
  const i = cut.axis === 'x' ? 0 : cut.axis === 'y' ? 1 : 2;
  const size = box ? (box.max[i] ?? 0) - (box.min[i] ?? 0) : 0;
  const from = { x: 'from the left', y: 'from the front', z: 'from the floor' }[cut.axis];
  return (
    <div className="cut">
      <Slider name="Cut open" value={cut.at} ticks={CUT_TICKS} words="" change={(at) => look({ cut: { ...cut, at } })} />
      <div className="words" role="group" aria-label="Direction of the cut">
        <span className="q readout">
          <Length mm={size * cut.at} /> {from}
        </span>
        {AXES.map((a) => (
          <button key={a.axis} aria-pressed={cut.axis === a.axis} onClick={() => look({ cut: { ...cut, axis: a.axis } })}>
            {a.words}
          </button>
        ))}
      </div>
    </div>
  );
}
