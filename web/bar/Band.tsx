/** A band under the bar: what happened, its consequence, at most two verbs. Nothing opens on top of the piece. */
import { useEffect, useRef, type ReactNode } from 'react';
import { useView } from '../look/view.ts';

export function Band(): ReactNode {
  const band = useView((v) => v.band);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (band) box.current?.focus();
  }, [band]);
  if (!band) return null;
  return (
    <div className="band" role="alert" tabIndex={-1} ref={box}>
      <div>
        <p>{band.words}</p>
        {band.lines?.length ? (
          <ul>
            {band.lines.map((l) => (
              <li key={l}>{l}</li>
            ))}
          </ul>
        ) : null}
      </div>
      {band.verbs.map((v) => (
        <button key={v.words} className="press" onClick={v.run}>
          {v.words}
        </button>
      ))}
    </div>
  );
}
