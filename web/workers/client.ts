/**
 * The app's end of the workers: hands over the document and its changes, passes on only what answers the newest revision,
 * and starts a fresh worker from the document when one falls silent.
 */
import type { Json, Patch } from '../../src/model/finding.ts';
import type { FileKind, FromBoards, FromPiece, Rev, ToBoards, ToPiece } from './protocol.ts';
import { type Port, type Watched, watch } from './watched.ts';

export type Answer =
  | Exclude<FromPiece, { kind: 'pong' | 'whole' | 'blanks' | 'file' }>
  | Extract<FromBoards, { kind: 'layout' }>
  | { readonly kind: 'laying'; readonly words: string; readonly done: number; readonly of: number }
  | { readonly kind: 'unlaid'; readonly words: string };
export type MadeFile = { readonly name: string; readonly type: string; readonly bytes: Uint8Array<ArrayBuffer> };
export type Sources = { readonly piece: () => Port; readonly boards: () => Port };
export type Told = {
  readonly answer: (answer: Answer) => void;
  /** The document as text, asked for when a worker has to start over. */
  readonly document: () => string | null;
  /**
   * The piece worker hung or died. Called before the fresh one is given the document, so that the last edit can be set aside;
   * false when the fresh one shall wait for `open`.
   */
  readonly stuck: (why: string) => boolean;
};
export type Client = {
  readonly open: (text: string) => Rev;
  readonly change: (patches: readonly Patch[]) => Rev;
  readonly forget: (keys: readonly string[]) => void;
  readonly bite: (finding: string) => void;
  readonly lay: () => void;
  readonly stop: () => void;
  readonly make: (file: FileKind) => Promise<MadeFile>;
  readonly end: () => void;
};
type Waiting = { readonly done: (file: MadeFile) => void; readonly failed: (why: Error) => void };

/** A layout is one long search: its worker may be silent for this many seconds. */
const LAYING = 60;

export function startClient(sources: Sources, told: Told): Client {
  let count = 0;
  let held: Rev = '';
  let newest: Rev = '';
  let asks = 0;
  let job: Json = null;
  const waiting = new Map<number, Waiting>();
  let piece: Watched<ToPiece> = startPiece();
  let boards: Watched<ToBoards> | null = null;

  const next = (): Rev => (newest = `r${++count}`);
  const giveWhole = (text: string): Rev => {
    held = next();
    piece.send({ kind: 'open', rev: held, text });
    return held;
  };
  function startPiece(): Watched<ToPiece> {
    return watch<ToPiece, FromPiece>(sources.piece, { message: hear, silent: restart });
  }
  function restart(why: string): void {
    for (const w of waiting.values()) w.failed(new Error(why));
    waiting.clear();
    piece = startPiece();
    const text = told.stuck(why) ? told.document() : null;
    if (text !== null) giveWhole(text);
  }
  function hear(message: FromPiece): void {
    if (message.kind === 'pong') return;
    if (message.kind === 'file' || (message.kind === 'failed' && message.ask !== undefined)) return settle(message);
    if (message.rev !== newest) return;
    if (message.kind === 'whole') {
      const text = told.document();
      if (text !== null) giveWhole(text);
    } else if (message.kind === 'blanks') {
      job = message.job;
      lay();
    } else told.answer(message);
  }
  function settle(message: Extract<FromPiece, { kind: 'file' | 'failed' }>): void {
    const w = waiting.get(message.ask ?? -1);
    waiting.delete(message.ask ?? -1);
    if (message.kind === 'file') w?.done(message);
    else w?.failed(new Error(message.words));
  }
  function lay(): void {
    if (job === null) return;
    boards ??= watch<ToBoards, FromBoards>(sources.boards, { message: hearBoards, silent: unlaid }, LAYING);
    boards.send({ kind: 'lay', rev: newest, job });
  }
  /** The next job starts a fresh worker; this one is not tried again by itself. */
  function unlaid(why: string): void {
    boards = null;
    told.answer({ kind: 'unlaid', words: `The layout on boards stopped: ${why}.` });
  }
  function hearBoards(message: FromBoards): void {
    if (message.kind === 'pong' || message.rev !== newest) return;
    if (message.kind === 'layout') told.answer(message);
    else if (message.kind === 'failed') told.answer({ kind: 'unlaid', words: message.words });
    else told.answer({ kind: 'laying', words: message.words, done: message.done, of: message.of });
  }
  return {
    open: giveWhole,
    change(patches) {
      const base = held;
      held = next();
      piece.send({ kind: 'change', rev: held, base, patches });
      return held;
    },
    forget: (keys) => piece.send({ kind: 'forget', keys }),
    bite: (finding) => piece.send({ kind: 'bite', rev: newest, finding }),
    lay,
    stop() {
      piece.send({ kind: 'stop', rev: newest });
      boards?.send({ kind: 'stop', rev: newest });
    },
    make: (file) =>
      new Promise((done, failed) => {
        waiting.set(++asks, { done, failed });
        piece.send({ kind: 'make', rev: newest, ask: asks, file });
      }),
    end() {
      piece.end();
      boards?.end();
    },
  };
}
