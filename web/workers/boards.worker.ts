/** The worker that lays parts on boards; it carries no geometry kernel. */
import { layOut } from '../../src/boards/lay-out.ts';
import type { BlankJob } from '../../src/boards/blank.ts';
import type { Layout } from '../../src/boards/layout.ts';
import type { FromBoards, LayoutView, ToBoards } from './protocol.ts';

type Job = { readonly units: 'mm' | 'in'; readonly jobs: readonly BlankJob[]; readonly labels: Readonly<Record<string, string>> };
type Scope = { postMessage: (message: FromBoards) => void; onmessage: ((e: MessageEvent<ToBoards>) => void) | null };
const scope = self as unknown as Scope;
let newest: string | null = null;

scope.onmessage = ({ data }) => {
  if (data.kind === 'ping') scope.postMessage({ kind: 'pong', n: data.n });
  else if (data.kind === 'lay') {
    newest = data.rev;
    // Let a newer job that already waits overtake this one.
    setTimeout(() => newest === data.rev && lay(data.rev, data.job as unknown as Job), 0);
  }
};

function lay(rev: string, job: Job): void {
  try {
    const layout = layOut(
      { jobs: job.jobs, system: job.units },
      {
        report: ({ done, of, boards }) =>
          scope.postMessage({ kind: 'progress', rev, words: `Laying on boards, ${boards} so far`, done, of }),
      },
    );
    scope.postMessage({ kind: 'layout', rev, layout: viewOf(layout, job.labels), final: true });
  } catch (e) {
    scope.postMessage({ kind: 'failed', rev, words: e instanceof Error ? e.message : String(e) });
  }
}

export function viewOf(l: Layout, labels: Readonly<Record<string, string>>): LayoutView {
  const label = (part: string): string => labels[part] ?? part;
  return {
    boards: l.boards.map((b) => ({
      id: b.id,
      wood: b.wood,
      words: b.nominal,
      length: b.length,
      width: b.width,
      thickness: b.thickness,
      placements: b.placements.map((p) => ({
        x: p.x,
        y: p.y,
        length: p.length,
        width: p.width,
        letter: p.part,
        label: p.of > 1 ? `${label(p.part)}, piece ${p.piece}` : label(p.part),
        paths: p.path === null ? [] : [p.path],
      })),
      kept: b.offcuts.filter((k) => k.keep),
      defects: [],
      pith: b.pith,
    })),
    unplaced: l.unplaced.map((u) => ({ letter: u.part, label: label(u.part), why: `${u.words} ${u.cure.words}` })),
    yield: l.yield,
    bound: { boards: l.bound.boards, proved: l.bound.proved },
    buy: l.buy.map(
      (r) =>
        `${r.wood} ${r.nominal}, ${r.count} ${r.count === 1 ? 'board' : 'boards'}${r.boardFeet === null ? '' : `, ${Math.round(r.boardFeet * 10) / 10} board feet`}`,
    ),
  };
}
