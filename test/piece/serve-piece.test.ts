/** What the piece worker says to the app, and when: driven here without a worker, with a post and a pause of our own. */
import fc from 'fast-check';
import { beforeAll, expect, test, vi } from 'vitest';
import { openStore } from '../../src/build/store.ts';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { type Known, nothingKnown } from '../../src/piece/known.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { liveSolids } from '../../src/solids/scope.ts';
import type { FromPiece, ToPiece } from '../../web/workers/protocol.ts';
import { servePiece } from '../../web/workers/serve-piece.ts';
import { law } from '../support/law.ts';
import { changes, patchOf } from '../support/mutate.ts';
import { documentOf, fixtureText, starterText } from '../support/piece.ts';

// Files for a client need the viewer's script from beside the app; here none is asked for.
vi.mock('../../web/workers/files.ts', () => ({
  makeFile: async (kind: string) => {
    if (kind === 'glb') throw new Error('no such file');
    return { name: 'rows.csv', type: 'text/csv', bytes: new Uint8Array([1, 2, 3]) };
  },
}));
const known = nothingKnown();
beforeAll(async () => {
  await loadKernel();
  await known.need({ joints: { any: { as: 'no such joint@1' } } });
});

type Driven = {
  readonly said: FromPiece[];
  readonly tell: (m: ToPiece) => void;
  /** Lets the worker take one turn; false when it does not wait for one. */
  readonly turn: () => Promise<boolean>;
  /** Turns until it waits for none, or `until` holds. */
  readonly run: (until?: () => boolean) => Promise<void>;
  readonly close: () => void;
};
function drive(joints = known): Driven {
  const store = openStore();
  const said: FromPiece[] = [];
  const waiting: (() => void)[] = [];
  const tell = servePiece(
    (m) => said.push(m),
    store,
    () => new Promise((done) => waiting.push(done)),
    joints,
  );
  const settle = (): Promise<void> => new Promise((done) => setImmediate(done));
  const turn = async (): Promise<boolean> => {
    const next = waiting.shift();
    next?.();
    await settle();
    return next !== undefined;
  };
  const run = async (until: () => boolean = () => false): Promise<void> => {
    await settle();
    while (!until() && (await turn()));
  };
  return { said, tell, turn, run, close: store.close };
}
async function driven(work: (d: Driven) => Promise<void>, joints = known): Promise<void> {
  const d = drive(joints);
  try {
    await work(d);
  } finally {
    d.close();
  }
  expect(liveSolids()).toBe(0);
}

const of = <K extends FromPiece['kind']>(said: readonly FromPiece[], kind: K): Extract<FromPiece, { kind: K }>[] =>
  said.filter((m): m is Extract<FromPiece, { kind: K }> => m.kind === kind);
const kinds = (said: readonly FromPiece[]): string[] =>
  said.filter((m) => m.kind !== 'pong' && m.kind !== 'progress').map((m) => (m.kind === 'verdict' ? `verdict ${m.verdict.wave}` : m.kind));
/** One after the other as often as it comes. */
const inOrder = (said: readonly FromPiece[]): string[] => kinds(said).filter((k, i, all) => k !== all[i - 1]);
/** The last word on a revision. */
const verdictOn = (said: readonly FromPiece[], rev: string): string | undefined => {
  const last = of(said, 'verdict').findLast((m) => m.rev === rev && m.verdict.wave === 2)?.verdict;
  return last && JSON.stringify({ ...last, rev: '' });
};
/** Has the second wave of a revision been told? What comes after it are cures and the order. */
const judged = (d: Driven, rev: string) => (): boolean => of(d.said, 'verdict').some((m) => m.rev === rev && m.verdict.wave === 2);
const size = (id: string, value: string): Patch => ({ op: 'replace', path: `sizes/${id}`, value });
const desk = starterText('writing-desk');
const table = fixtureText('window-table');

test('a piece that is opened is answered in waves, in this order', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: desk });
    expect(d.said).toEqual([]);
    await d.run();
    expect(inOrder(d.said)).toEqual(['piece', 'verdict 1', 'meshes', 'verdict 2', 'rows', 'blanks', 'verdict 2', 'order', 'settled']);
    expect(d.said.every((m) => !('rev' in m) || m.rev === 'a')).toBe(true);
    const piece = of(d.said, 'piece')[0]?.piece;
    const keys = of(d.said, 'meshes').flatMap((m) => m.meshes.map((x) => x.key));
    expect(new Set(keys)).toEqual(new Set(piece?.parts.map((p) => p.key)));
    expect(keys.length).toBe(new Set(keys).size);
    expect(of(d.said, 'verdict').at(-1)?.verdict.verdict).toBe('together');
    expect(of(d.said, 'order')[0]?.order.possible).toBe(true);
    expect(of(d.said, 'rows')[0]?.rows.length).toBeGreaterThan(3);
  }));

test('what is posted is plain data that a worker can send, and solids keep what they need', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: desk });
    await d.run();
    for (const m of d.said) expect(() => structuredClone(m)).not.toThrow();
    // The app now owns these arrays; the worker must not look at them again.
    for (const m of of(d.said, 'meshes')) for (const x of m.meshes) x.positions.fill(Number.NaN);
    d.said.length = 0;
    d.tell({ kind: 'forget', keys: of(d.said, 'meshes').flatMap((m) => m.meshes.map((x) => x.key)) });
    d.tell({ kind: 'open', rev: 'b', text: starterText('wall-shelf') });
    d.tell({ kind: 'open', rev: 'c', text: desk });
    await d.run();
    expect(of(d.said, 'settled').map((m) => m.rev)).toEqual(['c']);
  }));

test('an edit comes as patches and is answered with the meshes of what it changed alone', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: table });
    await d.run();
    const before = new Set(of(d.said, 'meshes').flatMap((m) => m.meshes.map((x) => x.key)));
    d.said.length = 0;
    d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [size('thick', '24')] });
    await d.run();
    const fresh = of(d.said, 'meshes').flatMap((m) => m.meshes.map((x) => x.key));
    const piece = of(d.said, 'piece')[0]?.piece;
    expect(piece?.parts.find((p) => p.path === 'top')?.finished.thickness).toBeCloseTo(24, 6);
    expect(fresh.length).toBeGreaterThan(0);
    expect(fresh.some((k) => before.has(k))).toBe(false);
    expect(new Set([...before, ...fresh]).size).toBe(before.size + fresh.length);
    expect(of(d.said, 'settled').map((m) => m.rev)).toEqual(['b']);
    // Back again: nothing is sent that the app holds.
    d.said.length = 0;
    d.tell({ kind: 'change', rev: 'c', base: 'b', patches: [size('thick', '22')] });
    await d.run();
    expect(of(d.said, 'meshes')).toEqual([]);
    expect(inOrder(d.said).slice(0, 2)).toEqual(['piece', 'verdict 1']);
  }));

test('meshes that the app has let go of are sent again when they are needed', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: table });
    await d.run();
    const all = of(d.said, 'meshes').flatMap((m) => m.meshes);
    const gone = all[0]?.key ?? '';
    d.said.length = 0;
    d.tell({ kind: 'forget', keys: [gone, 'never heard of'] });
    d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [{ op: 'replace', path: 'title', value: 'Another' }] });
    await d.run();
    const again = of(d.said, 'meshes').flatMap((m) => m.meshes);
    expect(again.map((m) => m.key)).toEqual([gone]);
    expect(again[0]?.positions).toEqual(all[0]?.positions);
  }));

test('a base that the worker does not hold, and patches that do not fit, are answered by asking for the whole', () =>
  driven(async (d) => {
    d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [] });
    expect(d.said).toEqual([{ kind: 'whole', rev: 'b' }]);
    d.tell({ kind: 'open', rev: 'c', text: table });
    d.tell({ kind: 'change', rev: 'd', base: 'b', patches: [size('thick', '24')] });
    d.tell({ kind: 'change', rev: 'e', base: 'c', patches: [{ ...size('thick', '24'), was: 'not what it was' }] });
    d.tell({ kind: 'change', rev: 'f', base: 'c', patches: [{ op: 'remove', path: 'parts/nobody/left' }] });
    expect(of(d.said, 'whole').map((m) => m.rev)).toEqual(['b', 'd', 'e', 'f']);
    await d.run();
    expect(of(d.said, 'settled').map((m) => m.rev)).toEqual(['c']);
  }));

test('of two changes in a row only the second is answered, and nothing of the first once the second is taken', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: table });
    d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [size('thick', '24')] });
    d.tell({ kind: 'change', rev: 'c', base: 'b', patches: [size('thick', '26')] });
    await d.run();
    expect(new Set(d.said.flatMap((m) => ('rev' in m ? [m.rev] : [])))).toEqual(new Set(['c']));
    expect(of(d.said, 'settled').length).toBe(1);
  }));

test('a change that comes between any two waves ends the older work there', async () => {
  for (const at of ['piece', 'meshes', 'rows', 'progress'] as const)
    await driven(async (d) => {
      d.tell({ kind: 'open', rev: 'a', text: at === 'progress' ? starterText('spoiled-desk') : table });
      await d.run(() => d.said.some((m) => m.kind === at));
      const told = d.said.length;
      d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [{ op: 'replace', path: 'title', value: 'Newer' }] });
      await d.run(judged(d, 'b'));
      const later = d.said.slice(told).flatMap((m) => ('rev' in m ? [m.rev] : []));
      expect(new Set(later)).toEqual(new Set(['b']));
      // What was sent for the older revision need not be sent for the newer one.
      const keys = of(d.said, 'meshes').flatMap((m) => m.meshes.map((x) => x.key));
      expect(keys.length).toBe(new Set(keys).size);
      expect(new Set(keys)).toEqual(
        new Set(
          of(d.said, 'piece')
            .at(-1)
            ?.piece.parts.map((p) => p.key),
        ),
      );
      // Whatever was left of the older work finds itself overtaken.
      await d.run(() => d.said.some((m) => m.kind === 'order') || of(d.said, 'verdict').length > 3);
      expect(d.said.slice(told).some((m) => 'rev' in m && m.rev === 'a')).toBe(false);
    });
});

test('a ping is answered at once, also in the middle of work', () =>
  driven(async (d) => {
    d.tell({ kind: 'ping', n: 1 });
    expect(d.said).toEqual([{ kind: 'pong', n: 1 }]);
    d.tell({ kind: 'open', rev: 'a', text: starterText('spoiled-desk') });
    let n = 1;
    do {
      d.tell({ kind: 'ping', n: ++n });
      expect(d.said.at(-1)).toEqual({ kind: 'pong', n });
    } while (of(d.said, 'progress').length < 3 && (await d.turn()));
    expect(n).toBeGreaterThan(5);
  }));

test('a search that is told to stop ends with what it has, and the piece is settled', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: starterText('spoiled-desk') });
    await d.run(() => d.said.some((m) => m.kind === 'blanks'));
    d.tell({ kind: 'stop', rev: 'a' });
    await d.run();
    expect(of(d.said, 'settled').map((m) => m.rev)).toEqual(['a']);
    expect(
      of(d.said, 'verdict')
        .at(-1)
        ?.verdict.findings.every((f) => f.remedies.length === 0),
    ).toBe(true);
  }));

test('the wood that two parts share is handed out on request, and nothing where there is none', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: starterText('spoiled-desk') });
    await d.run(judged(d, 'a'));
    const findings = of(d.said, 'verdict').at(-1)?.verdict.findings ?? [];
    const overlap = findings.find((f) => f.rule === 'overlap' || f.rule === 'joints-collide');
    expect(overlap).toBeDefined();
    d.said.length = 0;
    d.tell({ kind: 'bite', rev: 'a', finding: overlap?.key ?? '' });
    const found = of(d.said, 'bite')[0];
    expect(found?.positions.length).toBeGreaterThanOrEqual(36);
    expect(found?.indices.length).toBe((found?.positions.length ?? 0) / 3);
    d.said.length = 0;
    d.tell({ kind: 'bite', rev: 'a', finding: 'no such finding' });
    d.tell({ kind: 'bite', rev: 'older', finding: overlap?.key ?? '' });
    expect(d.said).toEqual([]);
  }));

test('a file is made on request; what goes wrong with it is said with the number of the request', () =>
  driven(async (d) => {
    d.tell({ kind: 'make', rev: 'a', ask: 1, file: 'cut-list' });
    await d.run();
    expect(of(d.said, 'failed')[0]).toMatchObject({ ask: 1, words: expect.stringContaining('no piece') });
    d.tell({ kind: 'open', rev: 'a', text: table });
    d.tell({ kind: 'make', rev: 'a', ask: 2, file: 'cut-list' });
    d.tell({ kind: 'make', rev: 'a', ask: 3, file: 'glb' });
    await d.run(judged(d, 'a'));
    expect(of(d.said, 'file').map((m) => m.ask)).toEqual([2]);
    expect(of(d.said, 'failed').map((m) => m.ask)).toEqual([1, 3]);
  }));

const HOSTILE: Readonly<Record<string, string>> = {
  'no text': '',
  'no JSON': '{"dryfit": 1, ',
  'a list': '[]',
  nothing: 'null',
  'a number without end': '{"dryfit":1,"title":"t","units":"mm","sizes":{"a":1e999}}',
  'a deep nest': `${'['.repeat(50_000)}${']'.repeat(50_000)}`,
  'a deep nest in a part': `{"dryfit":1,"title":"t","units":"mm","parts":{"a":${'{"a":'.repeat(2000)}1${'}'.repeat(2000)}}}`,
  'a name that reaches into the language': '{"dryfit":1,"title":"t","units":"mm","parts":{"__proto__":{"wood":"oak"}}}',
  'a newer grammar': '{"dryfit":99}',
  'unknown words': '{"dryfit":1,"title":"t","units":"mm","colour":"red"}',
  'a circle': '{"dryfit":1,"title":"t","units":"mm","sizes":{"a":"b + 1","b":"a + 1"}}',
  'a size of nothing':
    '{"dryfit":1,"title":"t","units":"mm","parts":{"a":{"wood":"oak","grain":"x","left":"0","width":"0","front":"0","depth":"1","bottom":"0","height":"1"}}}',
  'too many copies':
    '{"dryfit":1,"title":"t","units":"mm","parts":{"a":{"wood":"oak","grain":"x","left":"0","width":"1","front":"0","depth":"1","bottom":"0","height":"1","copies":[{"row":"x","count":5000,"step":"2"},{"row":"y","count":5000,"step":"2"}]}}}',
};
test.each(Object.entries(HOSTILE))('%s is trouble, told and nothing else, and the worker lives on', (_, text) =>
  driven(async (d) => {
    expect(() => d.tell({ kind: 'open', rev: 'a', text })).not.toThrow();
    await d.run();
    expect(kinds(d.said)).toEqual(['trouble']);
    const problems = of(d.said, 'trouble')[0]?.problems ?? [];
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.every((p) => p.what.length > 5 && p.what.length < 500)).toBe(true);
    d.tell({ kind: 'open', rev: 'b', text: table });
    await d.run(() => of(d.said, 'verdict').length > 0);
    expect(of(d.said, 'verdict').map((m) => m.rev)).toEqual(['b']);
  }),
);

test('an edit that breaks the document is trouble; the worker goes on from it by another patch, or from the whole', () =>
  driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: table });
    await d.run(judged(d, 'a'));
    const good = verdictOn(d.said, 'a');
    const breaks: readonly Patch[][] = [
      [size('thick', 'nonsense +')],
      [size('thick', '0')],
      [{ op: 'replace', path: 'parts/top/wood', value: 7 }],
    ];
    let base = 'a';
    for (const [i, patches] of breaks.entries()) {
      const undo = applyPatches(JSON.parse(table) as Json, patches);
      d.said.length = 0;
      d.tell({ kind: 'change', rev: `broken ${i}`, base, patches });
      await d.run();
      expect(kinds(d.said)).toEqual(['trouble']);
      d.tell({ kind: 'change', rev: `mended ${i}`, base: `broken ${i}`, patches: undo.ok ? undo.undo : [] });
      await d.run(judged(d, `mended ${i}`));
      expect(verdictOn(d.said, `mended ${i}`)).toBe(good);
      base = `mended ${i}`;
    }
    d.tell({ kind: 'open', rev: 'z', text: table });
    await d.run(judged(d, 'z'));
    expect(verdictOn(d.said, 'z')).toBe(good);
  }));

const EDITS = 200;
law(
  `after ${EDITS} edits and undos the verdict is that of a cold start`,
  fc.record({
    text: fc.constantFrom(table, fixtureText('hearth-stool')),
    // Mostly it is overtaken by the next edit, sometimes left to its work for a while.
    steps: fc.array(
      fc.record({ change: changes, undo: fc.boolean(), wait: fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, fc.nat(6)) }),
      {
        minLength: EDITS,
        maxLength: EDITS,
      },
    ),
  }),
  ({ text, steps }) =>
    driven(async (d) => {
      let json = JSON.parse(text) as Json;
      let rev = 0;
      const undos: (readonly Patch[])[] = [];
      d.tell({ kind: 'open', rev: '0', text });
      for (const s of steps) {
        const back = s.undo ? undos.pop() : undefined;
        const patch = patchOf(documentOf(JSON.stringify(json)), s.change);
        const patches = back ?? (patch ? [patch] : []);
        const next = applyPatches(json, patches);
        if (!next.ok) continue;
        json = next.json;
        if (!back) undos.push(next.undo);
        d.tell({ kind: 'change', rev: String(rev + 1), base: String(rev), patches });
        rev++;
        for (let i = 0; i < s.wait; i++) await d.turn();
      }
      const end = String(rev);
      const cold = drive();
      cold.tell({ kind: 'open', rev: end, text: JSON.stringify(json) });
      for (const each of [d, cold]) await each.run(() => judged(each, end)() || of(each.said, 'trouble').some((m) => m.rev === end));
      cold.close();
      expect(verdictOn(d.said, end)).toBe(verdictOn(cold.said, end));
      expect(of(d.said, 'trouble').filter((m) => m.rev === end)).toEqual(of(cold.said, 'trouble'));
    }),
  { runs: 2, timeout: 240_000 },
);

/** Joints that arrive when the test lets them, or never. */
function held(): { joints: Known; asked: () => number; arrive: () => void; fail: () => void } {
  const cold = nothingKnown();
  const waiting: { go: () => void; no: (e: Error) => void }[] = [];
  const gate = (): Promise<void> => new Promise((go, no) => waiting.push({ go, no }));
  return {
    joints: {
      ...cold,
      need: (json) => {
        const more = cold.need(json);
        return more && gate().then(() => more);
      },
    },
    asked: () => waiting.length,
    arrive: () => waiting.shift()?.go(),
    fail: () => waiting.shift()?.no(new Error('not served')),
  };
}
const settled =
  (d: Driven, rev: string): (() => boolean) =>
  () =>
    of(d.said, 'settled').some((m) => m.rev === rev);

test('while joints are loaded what follows waits in turn, a ping does not; a joint that a patch brings is loaded too', async () => {
  const { joints, asked, arrive } = held();
  await driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: starterText('wall-shelf') });
    d.tell({ kind: 'change', rev: 'b', base: 'a', patches: [{ op: 'replace', path: 'title', value: 'Another shelf' }] });
    d.tell({ kind: 'ping', n: 7 });
    await d.run();
    expect(d.said).toEqual([{ kind: 'pong', n: 7 }]);
    expect(asked()).toBe(1);
    arrive();
    for (let i = 0; i < 200 && !settled(d, 'b')(); i++) await d.run(settled(d, 'b'));
    expect(of(d.said, 'whole')).toEqual([]);
    expect(of(d.said, 'piece').at(-1)?.piece.title).toBe('Another shelf');
    expect(Object.keys(joints.families)).not.toContain('dovetail');
    expect(asked()).toBe(0);
    d.tell({ kind: 'open', rev: 'c', text: fixtureText('dovetailed-tray') });
    await d.run();
    expect(asked()).toBe(1);
    arrive();
    for (let i = 0; i < 200 && !settled(d, 'c')(); i++) await d.run(settled(d, 'c'));
    expect(Object.keys(joints.families)).toContain('dovetail');
  }, joints);
});

test('joints that cannot be loaded are told, and asked for again', async () => {
  const { joints, arrive, fail } = held();
  await driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: desk });
    fail();
    await d.run();
    expect(of(d.said, 'failed').map((m) => m.rev)).toEqual(['a']);
    expect(of(d.said, 'failed')[0]?.words).toMatch(/could not be loaded/);
    d.tell({ kind: 'open', rev: 'b', text: desk });
    arrive();
    for (let i = 0; i < 200 && !settled(d, 'b')(); i++) await d.run(settled(d, 'b'));
    expect(of(d.said, 'verdict').at(-1)?.verdict.verdict).toBe('together');
  }, joints);
});

test('a misspelt joint is told the nearest of all, though only its own were loaded', async () => {
  const joints = nothingKnown();
  await driven(async (d) => {
    d.tell({ kind: 'open', rev: 'a', text: desk.replaceAll('"mortise_tenon@1"', '"mortice_tenon@1"') });
    for (let i = 0; i < 200 && of(d.said, 'trouble').length === 0; i++) await d.run();
    const [problem] = of(d.said, 'trouble')[0]?.problems ?? [];
    expect(JSON.stringify(problem)).toMatch(/mortise_tenon/);
  }, joints);
});
