/** Input that cannot be used, or that means harm: what is said, the exit, and that nothing breaks or hangs. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, openSync, closeSync, ftruncateSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { printable } from '../../src/cli/verb.ts';
import { parseDocument } from '../../src/model/parse.ts';
import { type Problem, problemLine } from '../../src/model/problem.ts';
import { catalog } from '../../src/piece/catalog.ts';
import { judge } from '../../src/piece/judge.ts';
import { verdictOf } from '../../src/piece/judging.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { renderFigures } from '../../src/units/figures.ts';
import { withStore } from '../support/checks.ts';
import { dryfit } from '../support/cli.ts';

const cli = fileURLToPath(new URL('../../dist/cli.mjs', import.meta.url));
let here = '';
beforeAll(async () => {
  await loadKernel();
  here = mkdtempSync(join(tmpdir(), 'bad-'));
  // Builds the command line where it is stale.
  expect(dryfit(here, 'help').code).toBe(0);
});
afterAll(() => rmSync(here, { recursive: true }));

type Ran = { readonly code: number | null; readonly out: string; readonly err: string };
/** Killed after a minute: a hang is a failure. */
const run = (args: readonly string[]): Promise<Ran> =>
  new Promise((resolve) => {
    const p = spawn(process.execPath, [cli, ...args], { cwd: here, timeout: 60_000 });
    let [out, err] = ['', ''];
    p.stdout.on('data', (d: Buffer) => (out += d.toString()));
    p.stderr.on('data', (d: Buffer) => (err += d.toString()));
    p.on('close', (code) => resolve({ code, out, err }));
  });
/** No stack trace, no word of the language's own, nothing that steers a terminal. */
function expectCivil(r: Ran, args: readonly string[]): void {
  for (const text of [r.out, r.err]) {
    expect(text, args.join(' ')).not.toMatch(/\n\s+at .*:\d+|TypeError|RangeError|undefined|Dryfit itself broke|\[object Object\]/);
    // eslint-disable-next-line no-control-regex
    expect(text, args.join(' ')).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/);
  }
}
const put = (name: string, content: unknown): string => {
  writeFileSync(join(here, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
};

const board = (more: object = {}): object => ({
  wood: 'ash',
  grain: 'x',
  left: '0',
  width: '100',
  front: '0',
  depth: '50',
  bottom: '0',
  height: '20',
  ...more,
});
const piece = (parts: object, more: object = {}): object => ({ dryfit: 1, title: 'Bad', units: 'mm', parts, ...more });
const one = (more: object): object => piece({ a: board(more) });
const post = { wood: 'ash', grain: 'z', left: '300', width: '40', front: '0', depth: '50', bottom: '0', height: '400' };
const joined = (as: string, places: unknown, set?: object): object =>
  piece({ a: board(), post }, { joints: { j: { as, places, ...(set ? { set } : {}) } } });
const many = (n: number): object =>
  piece(
    Object.fromEntries(
      Array.from({ length: n }, (_, i) => [
        `p${i}`,
        board({ left: String((i % 100) * 200), front: String(Math.floor(i / 100) * 100), loose: true }),
      ]),
    ),
  );

type Case = readonly [name: string, content: unknown, exit: 0 | 1 | 2, said: RegExp];
const CASES: readonly Case[] = [
  ['empty', '', 2, /not readable JSON.*empty/],
  ['half a document', '{ "dryfit": 1, "title": ', 2, /not readable JSON: line 1/],
  ['two lines in', '{\n  "dryfit": 1,,\n}', 2, /line 2/],
  ['a list', '[1, 2, 3]', 2, /a document is a JSON object/],
  ['null', 'null', 2, /a document is a JSON object/],
  ['another kind of text', '\u0000\u0001PNG\u001b[2J', 2, /not readable JSON/],
  ['no version', { title: 'x', units: 'mm' }, 2, /dryfit/],
  ['a newer version', { dryfit: 99, title: 'x', units: 'mm' }, 2, /99/],
  ['wrong types', { dryfit: 1, title: 7, units: 'mm', parts: { a: 'wood' } }, 2, /title: a string is needed/],
  ['a unit that is none', { dryfit: 1, title: 'x', units: 'cubits' }, 2, /units: one of "mm", "in"/],
  ['an unknown key', { ...piece({}), prats: {} }, 2, /"prats" is not a word.*Did you mean "parts"/],
  ['an unknown key in a part', one({ widht: '5' }), 2, /Did you mean "width"/],
  ['an unknown size', one({ width: 'lng' }), 2, /lng/],
  ['three of four words', one({ right: '100' }), 2, /exactly two of left, right, width, midwidth/],
  ['a circle', piece({ a: board({ left: 'b.right' }), b: board({ left: 'a.right' }) }), 2, /circle: .*a\.right.*b\.right/],
  ['a size that reads itself', piece({}, { sizes: { long: 'long + 1' } }), 2, /circle/],
  ['groups in a circle', piece({}, { groups: { g: { in: 'h' }, h: { in: 'g' } } }), 2, /circle/],
  ['a size of nothing', one({ width: '0' }), 2, /width of "a" comes to 0/],
  ['a size below nothing', one({ width: '-5' }), 2, /width of "a"/],
  ['faces the wrong way round', piece({ a: { ...board(), left: '10', right: '4', width: undefined } }), 2, /width of "a"/],
  ['larger than a house', one({ width: '200 m' }), 2, /at most 100 m/],
  [
    'more than a number holds',
    '{ "dryfit": 1, "title": "x", "units": "mm", "parts": { "a": { "wood": "ash", "grain": "x", "left": 1e999, "width": 10, "front": 0, "depth": 1, "bottom": 0, "height": 1 } } }',
    2,
    /finite/,
  ],
  ['not a number', '{ "dryfit": 1, "title": "x", "units": "mm", "sizes": { "a": NaN } }', 2, /not readable JSON/],
  ['divided by nothing', one({ width: '5/0' }), 2, /0/],
  ['a number that only looks like one', one({ width: '1e5000' }), 2, /width/],
  ['an expression without end', one({ width: '('.repeat(300) }), 2, /width/],
  ['words for code', one({ width: 'constructor.prototype' }), 2, /width/],
  [
    'a name of the language',
    '{ "dryfit": 1, "title": "x", "units": "mm", "parts": { "__proto__": { "wood": "ash" } } }',
    2,
    /"__proto__" cannot be a name/,
  ],
  ['another', '{ "dryfit": 1, "title": "x", "units": "mm", "constructor": {} }', 2, /constructor/],
  ['nested without end', `${'{"a":'.repeat(3000)}1${'}'.repeat(3000)}`, 2, /nested more than/],
  ['an unknown joint', joined('mortice@1', [{ enter: 'a', into: 'post' }]), 2, /no joint is called "mortice"; there are .*mortise_tenon/],
  ['a joint spelt wrongly', joined('mortise_tennon@1', [{ enter: 'a', into: 'post' }]), 2, /Did you mean "mortise_tenon"/],
  ['an unknown role', joined('mortise_tenon@1', [{ enter: 'a', inot: 'post' }]), 2, /needs the part that is "into"|has no "inot"/],
  ['an unknown part in a joint', joined('mortise_tenon@1', [{ enter: 'a', into: 'pst' }]), 2, /Did you mean "post"/],
  ['an unknown setting', joined('mortise_tenon@1', [{ enter: 'a', into: 'post' }], { lenght: '5' }), 2, /Did you mean "length"/],
  ['a choice that is none', joined('mortise_tenon@1', [{ enter: 'a', into: 'post' }], { end: 'round' }), 2, /square, mitred/],
  ['a joint between parts that do not touch', joined('mortise_tenon@1', [{ enter: 'a', into: 'post' }]), 1, /stand 200(\.0)? mm apart/],
  ['a joint of a part with itself', joined('mortise_tenon@1', [{ enter: 'a', into: 'a' }]), 2, /"a" cannot be joined to itself/],
  ['a tenon of nothing', joined('mortise_tenon@1', [{ enter: 'a', into: 'post' }], { length: '0' }), 1, /./],
  ['10,000 parts', many(10_000), 2, /10000 parts.*at most 5000/],
  ['10,000 copies', one({ copies: [{ row: 'x', count: 10_000, step: '200' }] }), 2, /at most 5000/],
  [
    'copies of copies',
    one({
      copies: [
        { row: 'x', count: 4000, step: '1' },
        { row: 'y', count: 4000, step: '1' },
        { row: 'z', count: 4000, step: '1' },
      ],
    }),
    2,
    /at most 5000/,
  ],
  [
    'a cut part that is no record',
    piece({ a: board({ loose: true }) }, { bench: { cut: { a: { on: 'today', record: { stock: 1 } } } } }),
    2,
    /bench\/cut\/a\/record/,
  ],
  ['a measurement of nothing', piece({ a: board({ loose: true }) }, { bench: { measured: [{ of: 'a.width', is: '0' }] } }), 2, /above 0/],
  ['nothing at all in it', piece({}), 0, /together/],
];
/** The same that `check` does, without a process for each: what it would say, and its exit. */
function said(text: string): { code: number; words: string } {
  const parsed = parseDocument(text, catalog);
  const problems = (list: readonly Problem[]): { code: number; words: string } => ({ code: 2, words: list.map(problemLine).join('\n') });
  if (!parsed.ok) return problems(parsed.problems);
  return withStore((store) => {
    const j = judge(parsed.doc, store, 2);
    if (j.problems.length) return problems(j.problems);
    const verdict = verdictOf(j);
    return {
      code: verdict === 'not-yet' ? 1 : 0,
      words: [verdict, ...j.findings.map((f) => renderFigures(f.why, { system: 'mm', decimals: 1 }))].join('\n'),
    };
  });
}
const textOf = (content: unknown): string => (typeof content === 'string' ? content : JSON.stringify(content));
test.each(CASES)('%s', (name, content, exit, words) => {
  const r = said(textOf(content));
  expect(r.words).toMatch(words);
  expect(r.code).toBe(exit);
  expectCivil({ code: r.code, out: printable(r.words), err: '' }, [name]);
});
/** Every sixth of them through the command line itself. */
test('the command line says the same, and exits so', async () => {
  for (const [name, content, exit, words] of CASES.filter((_, i) => i % 6 === 0)) {
    const r = await run(['check', put('case.json', content)]);
    expect([name, r.code, r.err]).toEqual([name, exit, exit === 2 ? r.err : '']);
    expect((r.out + r.err).replace('It goes together', 'together'), name).toMatch(words);
    expectCivil(r, [name]);
  }
}, 120_000);

test('files that are none, and words that are no verbs', async () => {
  mkdirSync(join(here, 'folder'));
  // 50 MB of nothing, on paper: its size is looked at before it is read.
  const big = openSync(join(here, 'big.json'), 'w');
  ftruncateSync(big, 50 * 1024 * 1024);
  closeSync(big);
  const good = put('good.json', piece({ a: board({ loose: true }) }));
  const table: readonly (readonly [readonly string[], number, RegExp])[] = [
    [['check', 'missing.json'], 2, /missing\.json: there is no such file/],
    [['check', 'folder'], 2, /folder: this is not a file/],
    [['check', 'big.json'], 2, /52\.4 MB.*It was not read/],
    [['check'], 2, /name the file/],
    [['chekc', good], 2, /no verb "chekc".*check/],
    [['__proto__', good], 2, /no verb/],
    [['check', good, '--jsno'], 2, /--jsno: there is no such option.*Did you mean "--json"/],
    [['check', good, good], 2, /one piece at a time/],
    [['lay', good, '--effort'], 2, /--effort: a value must follow/],
    [['lay', good, '--effort', ''], 2, /--effort.*number/],
    [[], 2, /verbs:/],
    [['lay', good, '--effort', 'much'], 2, /--effort.*number/],
    [['lay', good, '--stock', 'missing.json'], 2, /no such file/],
    [['lay', good, '--stock', good], 2, /board/],
    [['order', good], 0, /Bad/],
    [['list', good, '--json'], 0, /"rows"/],
  ];
  for (const [args, exit, said] of table) {
    const r = await run(args);
    expect([args, r.code, r.err]).toEqual([args, exit, exit === 2 ? r.err : '']);
    expect(r.out + r.err, args.join(' ')).toMatch(said);
    expectCivil(r, args);
  }
}, 300_000);

test('hostile names come out harmless from every verb, and as they went in for a program', async () => {
  const hostile = fileURLToPath(new URL('../fixtures/hostile-names.json', import.meta.url));
  for (const args of [
    ['check', hostile],
    ['order', hostile],
    ['list', hostile],
    ['lay', hostile],
  ]) {
    const r = await run(args);
    expect(r.code, r.err).toBeLessThan(2);
    expectCivil(r, args);
  }
  const r = await run(['check', hostile, '--json']);
  expectCivil(r, ['--json']);
  expect((JSON.parse(r.out) as { title: string }).title).toContain("<script>alert('title')</script>");
}, 120_000);

test('unusable input is told in JSON too', async () => {
  const r = await run(['check', put('bad.json', one({ widht: '5' })), '--json']);
  expect(r.code).toBe(2);
  const {
    dryfit: version,
    title,
    problems,
  } = JSON.parse(r.out) as { dryfit: number; title: string; problems: { where: string; what: string; nearest?: string }[] };
  expect([version, title]).toEqual([1, 'Bad']);
  expect(problems.find((p) => p.nearest === 'width')?.where).toBe('parts/a');
});

test('every verb answers by its exit whether the piece goes together', async () => {
  const apart = put('apart.json', joined('mortise_tenon@1', [{ enter: 'a', into: 'post' }]));
  for (const verb of ['check', 'order', 'list', 'lay']) {
    const r = await run([verb, apart, '--json']);
    expect([verb, r.code, r.err]).toEqual([verb, 1, '']);
    expect(JSON.parse(r.out)).toMatchObject({ dryfit: 1, title: 'Bad' });
  }
}, 120_000);

test('thousands of parts in one place are told of without trying every pair', async () => {
  const crowd = put('crowd.json', piece({ a: board({ loose: true, copies: [{ row: 'x', count: 4900, step: '0' }] }) }));
  const r = await run(['check', crowd]);
  expect(r.code).toBe(1);
  expect(r.out).toMatch(/the rest were not looked at/);
  expectCivil(r, ['crowd']);
  const order = await run(['order', crowd]);
  expect(order.code).toBe(1);
  expect(order.out).toMatch(/Split the piece/);
}, 120_000);
