/** The rule under the drawing that takes the piece apart and puts it together again. */
import type { OrderView } from '../../src/piece/view.ts';
import { tag } from './tag.ts';

/** Steps of the slider between two steps of the work, so that parts glide. */
const FINE = 24;

/** `told` gets 0 (all apart) … 1 (together). */
export function makeRule(order: OrderView, told: (together: number) => void): HTMLElement {
  const n = order.steps.length;
  const slider = tag('input', { type: 'range', id: 'apart', min: '0', max: String(n * FINE), value: String(n * FINE) });
  const words = tag('span', { className: 'q' });
  const say = (): void => {
    const together = slider.valueAsNumber / (n * FINE);
    words.textContent = wordsAt(order, together);
    slider.setAttribute('aria-valuetext', words.textContent);
    told(together);
  };
  slider.addEventListener('input', say);
  // Arrows go from step to step, not by the fine ticks of a drag.
  slider.addEventListener('keydown', (e) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[e.key];
    if (by === undefined) return;
    e.preventDefault();
    slider.valueAsNumber = (Math.round(slider.valueAsNumber / FINE) + by) * FINE;
    say();
  });
  say();
  return tag(
    'div',
    { className: 'rule' },
    tag('div', {}, tag('label', { htmlFor: 'apart' }, 'Apart and together'), words),
    slider,
    ticks(n, order),
  );
}
function ticks(n: number, order: OrderView): HTMLElement {
  const ends = new Set([0, n, ...order.stages.map((s) => (s.steps.at(-1) ?? -1) + 1)]);
  const marks = Array.from({ length: n + 1 }, (_, i) => {
    const mark = tag('i', { className: ends.has(i) ? 'long' : '' });
    mark.style.left = `${(i / n) * 100}%`;
    return mark;
  });
  const row = tag('div', { className: 'ticks' }, ...marks);
  row.setAttribute('aria-hidden', 'true');
  return row;
}
function wordsAt(order: OrderView, together: number): string {
  const n = order.steps.length;
  if (together >= 1) return 'together';
  if (together <= 0) return 'all apart';
  const i = Math.min(n - 1, Math.max(0, Math.ceil(together * n - 1e-6) - 1));
  return `step ${i + 1} of ${n}: ${order.steps[i]?.words ?? ''}`;
}
