/** The story stick: the named sizes of one direction as spans on a lath; the chosen one is a window with two pointers. */
import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type ReactNode, type RefObject } from 'react';
import type { PieceView, SizeView } from '../../src/piece/view.ts';
import { change, closeStep } from '../document/piece.ts';
import { useDocument } from '../document/store.ts';
import { Length, useUnits } from '../look/Figures.tsx';
import { exactText, lengthText, notched, stepped } from '../look/lengths.ts';
import { useWidth } from '../look/useWidth.ts';
import { type Face, hover, look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import { type Slot, lathOf, othersOf } from './lanes.ts';
import { SizeField } from './SizeField.tsx';
import { isPlain, placeOfSize, sizePatch } from './sizes.ts';

const FACES: readonly { readonly face: Face; readonly words: string }[] = [
  { face: 'x', words: 'Widths' },
  { face: 'y', words: 'Depths' },
  { face: 'z', words: 'Heights' },
];

export function Stick(): ReactNode {
  const piece = useResults((r) => r.piece);
  const face = useView((v) => v.face);
  const chosen = useView((v) => v.size);
  const pulled = useView((v) => v.pulled);
  const others = piece ? othersOf(piece, chosen) : [];
  const faces = others.length ? [...FACES, { face: 'others' as const, words: 'Others' }] : FACES;
  const size = piece?.sizes.find((s) => s.id === chosen) ?? null;
  return (
    <section className="stick" aria-label="The stick: named sizes">
      <div className="head">
        <div className="words" role="group" aria-label="Face of the stick">
          {faces.map((f) => (
            <button key={f.face} aria-pressed={face === f.face} onClick={() => look({ face: f.face })}>
              {f.words}
            </button>
          ))}
        </div>
        <button
          className="grip"
          aria-pressed={pulled}
          aria-label={pulled ? 'Pull the stick down: more piece' : 'Pull the stick up: more boards'}
          onClick={() => look({ pulled: !pulled })}
        >
          <i />
          <i />
        </button>
        {size ? <SizeField size={size} /> : <p className="hint">{piece?.sizes.length ? 'Choose a size to change it.' : ''}</p>}
      </div>
      <div className="lath-scroll">
        <div className="lath" key={face}>
          <Grain />
          {piece ? (
            face === 'others' ? (
              <Others sizes={others} chosen={chosen} />
            ) : (
              <Spans piece={piece} face={face} chosen={chosen} />
            )
          ) : null}
          <b className="hole" aria-hidden="true" />
        </div>
      </div>
    </section>
  );
}
const GRAIN = Array.from({ length: 9 }, (_, i) => {
  const y = 4 + i * 6.4;
  const bend = (k: number): string => (y + 2.6 * Math.sin(i * 2.1 + k)).toFixed(1);
  return { d: `M0 ${y}C300 ${bend(1)} 640 ${bend(3)} 1000 ${bend(5)}`, w: [0.6, 1.1, 1.6][i % 3] };
});
const Grain = (): ReactNode => (
  <svg className="grain" viewBox="0 0 1000 60" preserveAspectRatio="none" aria-hidden="true">
    {GRAIN.map((g) => (
      <path key={g.d} d={g.d} strokeWidth={g.w} />
    ))}
  </svg>
);
const choose = (id: string): void => look({ size: id });

/** Room that a label needs, px; what does not fit loses its words, then its figure, never its size. */
function labelOf(s: SizeView, share: number, width: number, units: 'in' | 'mm'): 'all' | 'figure' | 'none' {
  const figure = lengthText(s.value, units, false).length;
  const room = share * width;
  return room > (s.words.length + figure) * 7 + 24 ? 'all' : room > figure * 4.8 + 4 ? 'figure' : 'none';
}

function Spans({ piece, face, chosen }: { piece: PieceView; face: 'x' | 'y' | 'z'; chosen: string | null }): ReactNode {
  const units = useUnits();
  const box = useRef<HTMLDivElement>(null);
  const lath = lathOf(piece, face, chosen);
  const width = useWidth(box);
  const ends = [...new Set(lath.slots.flatMap((s) => [s.from, s.to]).map((n) => n.toFixed(5)))];
  const isFull = (at: string): boolean => at === (0).toFixed(5) || at === (1).toFixed(5);
  const mine = lath.slots.find((s) => s.size.id === chosen);
  const middle = mine ? (mine.from + mine.to) / 2 : null;
  useEffect(() => {
    // On a narrow page the lath scrolls; the chosen span is brought to the middle.
    const scroller = box.current?.closest('.lath-scroll');
    if (scroller && middle !== null && scroller.scrollWidth > scroller.clientWidth)
      scroller.scrollTo({ left: middle * scroller.scrollWidth - scroller.clientWidth / 2 });
  }, [middle, face, width]);
  return (
    <div className="lanes" ref={box}>
      {ends.map((at) => (
        <i key={at} className={isFull(at) ? 'tick full' : 'tick'} style={{ left: `${Number(at) * 100}%` }} />
      ))}
      {lath.slots.map((slot) => (
        <SpanButton
          key={slot.size.id}
          slot={slot}
          on={slot.size.id === chosen}
          label={slot === mine ? 'all' : labelOf(slot.size, roomOf(slot, lath.slots), width, units)}
        />
      ))}
      {mine ? <Pointers slot={mine} min={lath.min} max={lath.max} box={box} /> : null}
      {lath.slots.length === 0 ? <p className="blank">No named size runs this way.</p> : null}
    </div>
  );
}
/** A span that lies beneath others of its lane has room for its label as far as the first of them. */
function roomOf(slot: Slot, slots: readonly Slot[]): number {
  const over = slots.filter(
    (o) => o !== slot && o.lane === slot.lane && o.from < slot.to && o.to > slot.from && o.to - o.from < slot.to - slot.from,
  );
  return Math.min(slot.to, ...over.map((o) => o.from)) - slot.from;
}

function SpanButton({ slot, on, label }: { slot: Slot; on: boolean; label: 'all' | 'figure' | 'none' }): ReactNode {
  const units = useUnits();
  const { size, lane, from, to } = slot;
  return (
    <button
      className={`span ${lane}${on ? ' on' : ''} ${label}`}
      style={{ left: `${from * 100}%`, width: `${(to - from) * 100}%` }}
      aria-pressed={on}
      aria-label={`${size.words}, ${lengthText(size.value, units)}`}
      title={`${size.words} ${lengthText(size.value, units)}`}
      onClick={() => choose(size.id)}
      onPointerEnter={() => hover(size.usedBy)}
      onPointerLeave={() => hover([])}
    >
      <span>
        {label === 'all' ? `${size.words}\u2002` : ''}
        {label === 'none' ? '' : <b>{<Length mm={size.value} unit={false} />}</b>}
      </span>
    </button>
  );
}
/** The two pointers of the chosen window: dragging one changes the size by whole ticks, undone as one step. */
function Pointers({ slot, min, max, box }: { slot: Slot; min: number; max: number; box: RefObject<HTMLDivElement | null> }): ReactNode {
  const units = useUnits();
  const json = useDocument((d) => d.json);
  const grabbed = useRef<{ x: number; value: number; side: 1 | -1; share: number } | null>(null);
  const picture = useResults((r) => r.scene?.piece.rev);
  const waiting = useRef<number | null>(null);
  const sentOn = useRef<string | undefined>(undefined);
  const give = (mm: number, tag: string | null): void => {
    if (mm <= 0 || Math.abs(mm - slot.size.value) < 1e-6) return;
    const patch = sizePatch(useDocument.getState().json, slot.size.id, exactText(mm, units));
    if (patch) change(`${slot.size.words} to ${lengthText(mm, units)}`, [patch], tag);
  };
  // While a pointer is dragged the next size is given when the last one is drawn: the piece follows as fast as it can.
  const send = (mm: number): void => {
    waiting.current = null;
    sentOn.current = picture;
    give(mm, `drag ${slot.size.id}`);
  };
  const latest = useRef(send);
  useEffect(() => {
    latest.current = send;
  });
  useEffect(() => {
    if (grabbed.current && waiting.current !== null) latest.current(waiting.current);
  }, [picture]);
  if (!isPlain(slot.size) || placeOfSize(json, slot.size.id) === null) return null;
  const down = (side: 1 | -1) => (e: PointerEvent<HTMLElement>) => {
    e.currentTarget.setPointerCapture(e.pointerId);
    const width = box.current?.getBoundingClientRect().width ?? 1;
    // A span that ends at the middle of a mirrored piece grows at both ends: half the way of the pointer each.
    const centred = Math.abs((slot.from + slot.to) / 2 - 0.5) < 0.002;
    grabbed.current = { x: e.clientX, value: slot.size.value, side, share: ((max - min) / width) * (centred ? 2 : 1) };
  };
  const move = (e: PointerEvent): void => {
    const g = grabbed.current;
    if (!g) return;
    const mm = notched(g.value + g.side * (e.clientX - g.x) * g.share, units);
    if (sentOn.current === picture && picture !== undefined) waiting.current = mm;
    else send(mm);
  };
  const up = (): void => {
    if (waiting.current !== null) send(waiting.current);
    sentOn.current = undefined;
    grabbed.current = null;
    closeStep();
  };
  const onKey = (e: KeyboardEvent): void => {
    const by = e.key === 'ArrowRight' || e.key === 'ArrowUp' ? 1 : e.key === 'ArrowLeft' || e.key === 'ArrowDown' ? -1 : 0;
    if (!by) return;
    e.preventDefault();
    e.stopPropagation();
    give(stepped(slot.size.value, units, by * (e.shiftKey ? 8 : 1)), null);
  };
  return ([-1, 1] as const).map((side) => (
    <span
      key={side}
      className="pointer"
      role="slider"
      tabIndex={0}
      aria-label={`${slot.size.words}, ${side < 0 ? 'near' : 'far'} end`}
      aria-valuenow={slot.size.value}
      aria-valuetext={lengthText(slot.size.value, units)}
      style={{ left: `${(side < 0 ? slot.from : slot.to) * 100}%` }}
      onPointerDown={down(side)}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
      onKeyDown={onKey}
    />
  ));
}
function Others({ sizes, chosen }: { sizes: readonly SizeView[]; chosen: string | null }): ReactNode {
  return (
    <div className="others">
      {sizes.map((s) => (
        <button
          key={s.id}
          aria-pressed={s.id === chosen}
          onClick={() => choose(s.id)}
          onPointerEnter={() => hover(s.usedBy)}
          onPointerLeave={() => hover([])}
        >
          {s.words}{' '}
          <b className="q">
            {s.kind === 'length' ? (
              <Length mm={s.value} unit={false} />
            ) : s.kind === 'angle' ? (
              `${Number(((s.value * 180) / Math.PI).toFixed(2))}°`
            ) : (
              String(Number(s.value.toFixed(3)))
            )}
          </b>
        </button>
      ))}
    </div>
  );
}
