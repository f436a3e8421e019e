/** A plain rule with ticks and one pin; arrows go from tick to tick. */
import { useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useWidth } from '../look/useWidth.ts';

export type Tick = { readonly at: number; readonly long: boolean };
type Props = {
  readonly name: string;
  readonly value: number;
  readonly ticks: readonly Tick[];
  readonly words: string;
  /** Names under the rule, each with the share of it that is its own; one that does not fit is left out. */
  readonly marks?: readonly { readonly at: number; readonly share: number; readonly words: string }[];
  readonly change: (value: number) => void;
};

export function Slider({ name, value, ticks, words, marks = [], change }: Props): ReactNode {
  const track = useRef<HTMLDivElement>(null);
  const width = useWidth(track);
  const drag = (e: PointerEvent): void => {
    const box = track.current?.getBoundingClientRect();
    if (!box) return;
    const share = Math.min(1, Math.max(0, (e.clientX - box.left) / box.width));
    // Within a few px of a tick the pin falls onto it.
    const close = ticks.find((t) => Math.abs(t.at - share) * box.width < 5);
    change(close ? close.at : share);
  };
  const onKey = (e: KeyboardEvent): void => {
    const up = ticks.filter((t) => t.at > value + 1e-6);
    const down = ticks.filter((t) => t.at < value - 1e-6);
    const to = {
      ArrowRight: up[0],
      ArrowUp: up[0],
      ArrowLeft: down.at(-1),
      ArrowDown: down.at(-1),
      Home: ticks[0],
      End: ticks.at(-1),
      PageUp: up.find((t) => t.long) ?? ticks.at(-1),
      PageDown: down.findLast((t) => t.long) ?? ticks[0],
    }[e.key];
    if (!(e.key in { ArrowRight: 1, ArrowUp: 1, ArrowLeft: 1, ArrowDown: 1, Home: 1, End: 1, PageUp: 1, PageDown: 1 })) return;
    e.preventDefault();
    if (to) change(to.at);
  };
  return (
    <div className="rule">
      <header>
        <b>{name}</b>
        <span className="q">{words}</span>
      </header>
      <div
        className="track"
        ref={track}
        onPointerDown={(e) => {
          e.currentTarget.setPointerCapture(e.pointerId);
          drag(e);
        }}
        onPointerMove={(e) => e.currentTarget.hasPointerCapture(e.pointerId) && drag(e)}
      >
        {ticks.map((t) => (
          <i key={t.at} className={t.long ? 'long' : ''} style={{ left: `${t.at * 100}%` }} />
        ))}
        {marks
          .filter((m) => m.words.length * 6.3 < m.share * width)
          .map((m) => (
            <span key={m.words + String(m.at)} style={{ left: `${m.at * 100}%` }}>
              {m.words}
            </span>
          ))}
        <div
          className="pin"
          role="slider"
          tabIndex={0}
          aria-label={name}
          aria-valuemin={0}
          aria-valuemax={100}
          aria-valuenow={Math.round(value * 100)}
          aria-valuetext={words}
          style={{ left: `${value * 100}%` }}
          onKeyDown={onKey}
        >
          <svg width="18" height="23" aria-hidden="true">
            <path d="M0 0h18v14l-9 9-9-9z" />
          </svg>
        </div>
      </div>
    </div>
  );
}
