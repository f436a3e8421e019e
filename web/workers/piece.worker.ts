/** The worker with the geometry kernel: a thin shell over `serve-piece.ts`. */
import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { openStore } from '../../src/build/store.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import type { ToPiece } from './protocol.ts';
import { servePiece } from './serve-piece.ts';

type Scope = { postMessage: (message: unknown, transfer?: Transferable[]) => void; onmessage: ((e: MessageEvent<ToPiece>) => void) | null };
const scope = self as unknown as Scope;
// A message channel gives the event loop a turn at once, where a timer would wait 4 ms after a few turns.
const channel = new MessageChannel();
const turns: (() => void)[] = [];
channel.port1.addEventListener('message', () => turns.shift()?.());
channel.port1.start();
const pause = (): Promise<void> =>
  new Promise((done) => {
    turns.push(done);
    channel.port2.postMessage(null);
  });

const early: ToPiece[] = [];
scope.onmessage = (e) => {
  // Loading the kernel is no silence: pings are answered from the start.
  if (e.data.kind === 'ping') scope.postMessage({ kind: 'pong', n: e.data.n });
  else early.push(e.data);
};
await loadKernel({ locateFile: () => wasmUrl });
const serve = servePiece((m, transfer) => scope.postMessage(m, transfer ?? []), openStore(), pause);
scope.onmessage = (e) => serve(e.data);
for (const m of early) serve(m);
