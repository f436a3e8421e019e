import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Answer, type Client, startClient } from '../../web/workers/client.ts';
import type { FromPiece, ToPiece } from '../../web/workers/protocol.ts';
import type { Port } from '../../web/workers/watched.ts';

/** A worker that does as it is told: `heard` is what it was sent, `say` what it answers. */
function puppet() {
  const heard: ToPiece[] = [];
  const listeners: ((e: MessageEvent) => void)[] = [];
  let ended = false;
  const port: Port = {
    postMessage: (m) => void heard.push(m as ToPiece),
    addEventListener: (type: string, l: unknown) => void (type === 'message' && listeners.push(l as (e: MessageEvent) => void)),
    terminate: () => (ended = true),
  };
  return { port, heard, say: (m: FromPiece) => listeners.forEach((l) => l({ data: m } as MessageEvent)), ended: () => ended };
}
type Puppet = ReturnType<typeof puppet>;
let workers: Puppet[];
let answers: Answer[];
let stuck: string[];
let retry: boolean;
let client: Client;
const worker = (i = workers.length - 1): Puppet => workers[i] as Puppet;
const asked = (i?: number): ToPiece[] => worker(i).heard.filter((m) => m.kind !== 'ping');

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('document', { hidden: false });
  [workers, answers, stuck, retry] = [[], [], [], true];
  const piece = (): Port => {
    workers.push(puppet());
    return worker().port;
  };
  client = startClient(
    { piece, boards: () => puppet().port },
    { answer: (a) => answers.push(a), document: () => '{"now":1}', stuck: (why) => (stuck.push(why), retry) },
  );
});
afterEach(() => {
  client.end();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});
const patch = [{ op: 'replace', path: 'sizes/high', value: '700' }] as const;

test('a change is sent on the revision that the worker holds', () => {
  const first = client.open('{}');
  const second = client.change(patch);
  expect(asked()).toEqual([
    { kind: 'open', rev: first, text: '{}' },
    { kind: 'change', rev: second, base: first, patches: patch },
  ]);
});
test('answers to an older revision are dropped', () => {
  const first = client.open('{}');
  const second = client.change(patch);
  worker().say({ kind: 'settled', rev: first });
  expect(answers).toEqual([]);
  worker().say({ kind: 'settled', rev: second });
  expect(answers).toEqual([{ kind: 'settled', rev: second }]);
});
test('a worker that has lost its base is given the whole document as it now is', () => {
  client.open('{}');
  const rev = client.change(patch);
  worker().say({ kind: 'whole', rev });
  const last = asked().at(-1);
  expect(last).toMatchObject({ kind: 'open', text: '{"now":1}' });
  expect(last && 'rev' in last && last.rev).not.toBe(rev);
});
test('a silent worker is ended and a fresh one opens the document', () => {
  client.open('{}');
  vi.advanceTimersByTime(8000);
  expect(stuck).toEqual(['no answer for 5 seconds']);
  expect(worker(0).ended()).toBe(true);
  expect(workers).toHaveLength(2);
  expect(asked()).toMatchObject([{ kind: 'open', text: '{"now":1}' }]);
});
test('a worker that answers is left alone, and so is one whose page nobody sees', () => {
  client.open('{}');
  for (let i = 0; i < 30; i++) {
    vi.advanceTimersByTime(1000);
    worker().say({ kind: 'pong', n: i });
  }
  vi.stubGlobal('document', { hidden: true });
  vi.advanceTimersByTime(60_000);
  expect(workers).toHaveLength(1);
});
test('when the document itself is what hangs it, it is not given to the fresh worker again', () => {
  client.open('{}');
  retry = false;
  vi.advanceTimersByTime(8000);
  expect(workers).toHaveLength(2);
  expect(asked()).toEqual([]);
});
test('a file that was asked for fails when the worker dies, and comes through when it is made', async () => {
  client.open('{}');
  const made = client.make('glb');
  const ask = asked().at(-1);
  if (ask?.kind !== 'make') throw new Error('no file was asked for');
  worker().say({ kind: 'file', ask: ask.ask, name: 'x.glb', type: 'model/gltf-binary', bytes: new Uint8Array(3) });
  expect((await made).name).toBe('x.glb');
  const lost = client.make('glb').catch((e: Error) => e.message);
  vi.advanceTimersByTime(8000);
  expect(await lost).toContain('no answer');
});
