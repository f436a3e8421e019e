/** The column turned to one part: its finished sizes, wood, joints, and the board that it comes from. */
import type { ReactNode } from 'react';
import { pageName } from '../../src/papers/page.ts';
import { Length } from '../look/Figures.tsx';
import { look, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';

export function PartPanel({ path, leave }: { path: string; leave: () => void }): ReactNode {
  const piece = useResults((r) => r.piece);
  const layout = useResults((r) => r.layout);
  const findings = useResults((r) => r.verdict?.findings) ?? [];
  const alone = useView((v) => v.alone);
  const part = piece?.parts.find((p) => p.path === path);
  if (!piece || !part) return null;
  const like = piece.parts.filter((p) => p.letter === part.letter);
  const labels = new Map(piece.parts.map((p) => [p.path, p.label]));
  const joints = piece.joints.filter((j) => j.parts.includes(path));
  const board = layout?.boards.find((b) => b.placements.some((p) => p.paths.includes(path))) ?? null;
  const sizes = piece.sizes.filter((s) => s.usedBy.includes(path) && s.kind === 'length' && s.axis && s.span);
  const about = findings.filter((f) => f.parts.includes(path));
  return (
    <section className="part" aria-label={part.label}>
      <header>
        <span className="disc" aria-hidden="true">
          {part.letter}
        </span>
        <h2>{part.label}</h2>
        <button className="inline" onClick={leave}>
          whole piece
        </button>
      </header>
      <dl>
        <dt>length</dt>
        <dd>
          <Length mm={part.finished.length} />
        </dd>
        <dt>width</dt>
        <dd>
          <Length mm={part.finished.width} />
        </dd>
        <dt>thickness</dt>
        <dd>
          <Length mm={part.finished.thickness} />
        </dd>
        <dt>wood</dt>
        <dd className="plain">
          {part.wood.replaceAll('_', ' ')}
          {part.pieces.length > 1 ? `, glued up of ${part.pieces.length}` : ''}
        </dd>
        {like.length > 1 ? (
          <>
            <dt>like it</dt>
            <dd className="plain">{like.length} in all</dd>
          </>
        ) : null}
        {board ? (
          <>
            <dt>board</dt>
            <dd className="plain">
              <button className="inline" onClick={() => look({ page: 'boards', dock: 'boards' })}>
                number {layout ? layout.boards.indexOf(board) + 1 : ''}
              </button>
            </dd>
          </>
        ) : null}
      </dl>
      {joints.length ? (
        <>
          <h3>Joints</h3>
          <ul className="lines">
            {joints.map((j) => (
              <li key={`${j.id}/${j.place}`}>
                <a className="inline" href={`#joints/${pageName('joint', j.family)}`}>
                  {j.title}
                </a>
                {j.parts
                  .filter((p) => p !== path)
                  .slice(0, 3)
                  .map((p) => (
                    <button key={p} className="inline" onClick={() => look({ part: p })}>
                      {labels.get(p) ?? p}
                    </button>
                  ))}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {sizes.length ? (
        <>
          <h3>Sizes that shape it</h3>
          <ul className="lines">
            {sizes.slice(0, 12).map((s) => (
              <li key={s.id}>
                <button className="inline" onClick={() => look({ size: s.id, face: s.axis ?? 'x', dock: 'sizes' })}>
                  {s.words}
                </button>
                <Length mm={s.value} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {about.length ? (
        <>
          <h3>What is said about it</h3>
          <ul className="lines">
            {about.map((f) => (
              <li key={f.key}>
                <button className="inline" onClick={() => look({ finding: f.key, part: null, alone: false, focus: true })}>
                  {f.title}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <p>
        <button className="press" aria-pressed={alone} onClick={() => look({ alone: !alone })}>
          {alone ? 'Show the rest' : 'Look at it alone'}
        </button>
      </p>
    </section>
  );
}
