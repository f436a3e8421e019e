/** The list of keys, as a band under the bar. */
import type { ReactNode } from 'react';
import { look } from '../look/view.ts';
import { COMMANDS, SHEET_KEYS } from './commands.ts';

const shown = (key: string): string =>
  key
    .replace('Control+', 'Ctrl ')
    .replace('Shift+', 'Shift ')
    .replace('Escape', 'Esc')
    .replace(/([a-z])$/, (m) => m.toUpperCase());

export function Keys(): ReactNode {
  return (
    <section className="band keys" aria-label="Keys">
      <dl>
        {COMMANDS.map((c) => (
          <div key={c.words}>
            <dt>{c.keys[0] === 'Escape' ? 'Esc' : shown(c.keys[0] ?? '')}</dt>
            <dd>{c.words}</dd>
          </div>
        ))}
        {SHEET_KEYS.map(([key, words]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{words} (on the sheet)</dd>
          </div>
        ))}
      </dl>
      <button className="press" onClick={() => look({ keys: false })}>
        Close
      </button>
    </section>
  );
}
