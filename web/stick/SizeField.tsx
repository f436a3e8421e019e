/** The field in the stick's head: the chosen size as typed, and beside it what it was read as. */
import { useEffect, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import type { SizeView } from '../../src/piece/view.ts';
import { change } from '../document/piece.ts';
import { useDocument } from '../document/store.ts';
import { Length, useUnits } from '../look/Figures.tsx';
import { exactText, fieldText, lengthText, readTyped, stepped } from '../look/lengths.ts';
import { isPlain, sizePatch } from './sizes.ts';

export function SizeField({ size }: { size: SizeView }): ReactNode {
  const units = useUnits();
  const json = useDocument((d) => d.json);
  const shown = size.kind === 'length' && isPlain(size) ? fieldText(size.value, units) : size.text;
  const [text, setText] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const restoring = useRef(false);
  // The next size, a new unit or an answer of the core starts afresh; a refusal keeps what was typed.
  useEffect(() => (setText(null), setWrong(null)), [size.id, size.value, size.text, units]);
  const now = text ?? shown;
  const reading = size.kind === 'length' && text !== null ? readTyped(text, units) : null;

  const give = (value: string): void => {
    const patch = sizePatch(json, size.id, value);
    if (!patch) return setWrong('this size follows from others and is not written down');
    setWrong(null);
    change(`${size.words} to ${value}`, [patch], null, setWrong);
  };
  const apply = (): void => {
    if (text === null || text.trim() === shown) return setText(null);
    if (reading?.kind === 'length') give(exactText(reading.mm, units));
    else if (reading?.kind === 'wrong') setWrong(reading.words);
    else if (!reading || reading.kind === 'expression') give(text.trim());
  };
  const step = (by: number): void => {
    const mm = stepped(reading?.kind === 'length' ? reading.mm : size.value, units, by);
    if (mm > 0) give(exactText(mm, units));
  };
  const restore = (): void => {
    setText(null);
    setWrong(null);
    // Leaving the field applies what is typed; this time it does not.
    restoring.current = true;
    field.current?.blur();
    restoring.current = false;
  };
  const onKey = (e: KeyboardEvent): void => {
    if (e.key === 'Enter') apply();
    else if (e.key === 'Escape') restore();
    else if (size.kind === 'length' && isPlain(size) && (e.key === 'ArrowUp' || e.key === 'ArrowDown')) {
      e.preventDefault();
      step((e.key === 'ArrowUp' ? 1 : -1) * (e.shiftKey ? 8 : 1));
    } else return;
    e.stopPropagation();
  };
  return (
    <div className={`field${wrong ? ' wrong' : ''}`}>
      <label htmlFor="size">{size.words}</label>
      <input
        id="size"
        ref={field}
        value={now}
        size={Math.max(7, Math.min(26, now.length))}
        autoComplete="off"
        spellCheck={false}
        inputMode={units === 'mm' ? 'decimal' : 'text'}
        aria-invalid={wrong !== null}
        aria-describedby="read-as"
        onChange={(e) => (setText(e.target.value), setWrong(null))}
        onKeyDown={onKey}
        onBlur={() => wrong === null && !restoring.current && apply()}
      />
      <span id="read-as" className="read-as" role="status">
        {wrong ? (
          <span>
            {wrong}; still <Length mm={size.value} />
          </span>
        ) : reading?.kind === 'asked' ? (
          <>
            two readings:
            {reading.readings.map((r) => (
              <button key={r.text} className="press" onMouseDown={(e) => e.preventDefault()} onClick={() => give(exactText(r.mm, units))}>
                {r.text}
              </button>
            ))}
          </>
        ) : reading?.kind === 'wrong' ? (
          <>
            {reading.words}
            {reading.nearest.slice(0, 2).map((n) => (
              <button key={n} className="press" onMouseDown={(e) => e.preventDefault()} onClick={() => setText(n)}>
                {n}
              </button>
            ))}
          </>
        ) : reading?.kind === 'expression' ? (
          'made of other sizes'
        ) : size.kind === 'length' ? (
          <>
            <span>
              read as <Length mm={reading?.mm ?? size.value} /> (
              <span className="q">{lengthText(reading?.mm ?? size.value, units === 'in' ? 'mm' : 'in')}</span>)
            </span>
            {isPlain(size) ? null : (
              <button className="inline" onClick={() => give(exactText(size.value, units))}>
                fix it there
              </button>
            )}
          </>
        ) : null}
      </span>
    </div>
  );
}
