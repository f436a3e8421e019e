/** A worker under watch: pinged each second while the page is seen; silent for too many of them, it is ended and its owner told. */

/** What this module needs of a Worker, so that tests and the dev source can stand in for one. */
export type Port = {
  postMessage(message: unknown, transfer?: Transferable[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  addEventListener(type: 'error', listener: (event: ErrorEvent) => void): void;
  terminate(): void;
};
type Told<From> = { readonly message: (message: From) => void; readonly silent: (why: string) => void };

/** Seconds of silence after which a worker counts as hung. */
const SILENCE = 5;
const BEAT = 1000;

export type Watched<To> = { readonly send: (message: To, transfer?: Transferable[]) => void; readonly end: () => void };

/** Starts a worker and calls `told.silent` at most once, after which the worker is gone. */
export function watch<To, From extends { readonly kind: string }>(start: () => Port, told: Told<From>, silence = SILENCE): Watched<To> {
  const port = start();
  // Beats are counted, not time: when this page itself was held up, the worker's answers wait unread beside one late beat.
  let unheard = 0;
  let ended = false;
  let n = 0;
  const end = (): void => {
    ended = true;
    clearInterval(timer);
    port.terminate();
  };
  const lost = (why: string): void => {
    if (ended) return;
    end();
    told.silent(why);
  };
  const timer = setInterval(() => {
    // A hidden page is throttled by the browser: its silence says nothing about the worker.
    if (document.hidden) unheard = 0;
    else if (unheard++ >= silence) return lost(`no answer for ${silence} seconds`);
    port.postMessage({ kind: 'ping', n: n++ });
  }, BEAT);
  port.addEventListener('message', (event: MessageEvent) => {
    if (ended) return;
    unheard = 0;
    const message = event.data as From;
    if (message.kind !== 'pong') told.message(message);
  });
  port.addEventListener('error', (event: ErrorEvent) => lost(event.message || 'the worker could not start'));
  return { send: (message, transfer) => !ended && port.postMessage(message, transfer ?? []), end };
}
