/** What is refused, and whether the refusal names the thing and the cure. */
import { expect, test } from 'vitest';
import type { Catalog } from '../../src/model/catalog.ts';
import { LIMITS } from '../../src/model/document.ts';
import { parseDocument } from '../../src/model/parse.ts';
import { problemLine } from '../../src/model/problem.ts';

const family = {
  version: 2,
  roles: { enter: { count: 'one' as const }, into: { count: 'one' as const } },
  params: { width: { kind: 'length' as const, words: 'width' } },
  upgrades: [{ to: 2, up: (p: Record<string, never>) => ({ width: p['size'] ?? '1' }) }],
};
const catalog: Catalog = {
  families: { tenon: family as never },
  shapes: { taper: { version: 1, params: { start: { kind: 'place', words: 'start' } }, required: ['start'] } },
};
const part = { wood: 'ash', grain: 'x', left: '0', width: '1', front: '0', depth: '1', bottom: '0', height: '1' };
const base = { dryfit: 1, title: 'T', units: 'mm' };
const lines = (json: unknown): string => {
  const r = parseDocument(typeof json === 'string' ? json : JSON.stringify(json), catalog);
  return r.ok ? 'ok' : r.problems.map(problemLine).join('\n');
};

test('sound documents, the smallest included', () => {
  expect(lines(base)).toBe('ok');
  expect(lines({ ...base, parts: { a: part } })).toBe('ok');
  expect(lines(`\ufeff${JSON.stringify(base)}`)).toBe('ok');
});
test.each([
  ['nothing', '', /empty/],
  ['half a file', '{"dryfit": 1,\n "title"', /not readable JSON/],
  ['a list', '[]', /JSON object/],
  ['no version', { title: 'T', units: 'mm' }, /"dryfit": 1/],
  ['a newer version', { ...base, dryfit: 99 }, /newer Dryfit/],
  ['an unknown key', { ...base, partz: {} }, /partz: |"partz".*Did you mean "parts"/],
  ['a key of a part', { ...base, parts: { a: { ...part, heigth: '1' } } }, /"heigth".*Did you mean "height"/],
  ['a wrong type', { ...base, title: 5 }, /title: a string is needed/],
  ['a wrong unit', { ...base, units: 'cm' }, /"mm", "in"/],
  ['a bad name', { ...base, parts: { 'A b': part } }, /not a name/],
  ['a taken name', { ...base, sizes: { a: '1' }, parts: { a: part } }, /already the name of one of the sizes/],
  ['a reading as a size', { ...base, sizes: { width: '1' } }, /take another word/],
  ['three words an axis', { ...base, parts: { a: { ...part, right: '3' } } }, /exactly two of left, right, width, midwidth/],
  ['half a line', { ...base, parts: { a: { ...part, from: ['0', '0', '0'] } } }, /"from" and "to" go together/],
  ['no such group', { ...base, groups: { drawer: {} }, parts: { a: { ...part, in: 'drawr' } } }, /Did you mean "drawer"/],
  ['groups in a circle', { ...base, groups: { a: { in: 'b' }, b: { in: 'a' } } }, /circle/],
  ['no such joint', { ...base, joints: { j: { as: 'tenn@1', places: [{ enter: 'a', into: 'b' }] } } }, /Did you mean "tenon"/],
  ['no such role', { ...base, joints: { j: { as: 'tenon@2', places: [{ enter: 'a', intu: 'b' }] } } }, /Did you mean "into"/],
  ['a newer joint', { ...base, joints: { j: { as: 'tenon@9', places: [{ enter: 'a', into: 'b' }] } } }, /newer Dryfit/],
  [
    'an unknown setting',
    { ...base, joints: { j: { as: 'tenon@2', places: [{ enter: 'a', into: 'b' }], set: { widht: '1' } } } },
    /Did you mean "width"/,
  ],
  ['no such shape', { ...base, parts: { a: { ...part, shape: [{ as: 'tapr@1' }] } } }, /Did you mean "taper"/],
  ['a shape that lacks', { ...base, parts: { a: { ...part, shape: [{ as: 'taper@1' }] } } }, /needs "start"/],
  [
    'a newer shape',
    { ...base, parts: { a: { ...part, shape: [{ as: 'taper@2', start: '1' }] } } },
    /taper@2 comes from a newer Dryfit.*"taper@1"/,
  ],
  [
    'a joint without its version',
    { ...base, joints: { j: { as: 'tenon', places: [{ enter: 'a', into: 'b' }] } } },
    /a name and its version are needed here, such as/,
  ],
  ['wood without grain', { ...base, parts: { a: { ...part, grain: undefined } } }, /say which way the grain of the ash runs/],
  ['a mark called like a face', { ...base, parts: { a: { ...part, marks: { left: 'right' } } } }, /"left" is a face already/],
  ['both faces for a datum', { ...base, parts: { a: { ...part, datum: ['left', 'right'] } } }, /from left and from right at once/],
  ['neither length nor face', { ...base, parts: { a: { ...part, left: null } } }, /parts\/a\/left: a length, an expression or \{ "meets"/],
  ['a copy that is none', { ...base, parts: { a: { ...part, copies: [7] } } }, /a mirror, a row or a ring is needed/],
  [
    'a mirror spelt wrongly',
    { ...base, parts: { a: { ...part, copies: [{ mirrror: 'x', names: ['l', 'r'] }] } } },
    /"mirrror".*Did you mean "mirror"/,
  ],
  ['an object for a list', { ...base, parts: { a: { ...part, shape: {} } } }, /a list is needed here/],
  [
    'too many copies',
    {
      ...base,
      parts: {
        a: {
          ...part,
          copies: [
            { row: 'x', count: 100, step: '1' },
            { row: 'y', count: 100, step: '1' },
          ],
        },
      },
    },
    /10000.*at most 5000/,
  ],
  [
    'names that do not match',
    { ...base, parts: { a: { ...part, copies: [{ row: 'x', count: 3, step: '1', names: ['p', 'q'] }] } } },
    /3 copies need 3 names/,
  ],
])('%s', (_, json, words) => {
  expect(lines(json)).toMatch(words);
});
test('glass has no grain to tell of', () => {
  expect(lines({ ...base, parts: { a: { ...part, wood: 'glass', grain: undefined } } })).toBe('ok');
});
test('names that reach into the language are refused before they are anything', () => {
  expect(lines('{"dryfit":1,"title":"T","units":"mm","parts":{"__proto__":{"x":1}}}')).toMatch(/cannot be a name/);
  expect(lines('{"dryfit":1,"title":"T","units":"mm","sizes":{"constructor":"1"}}')).toMatch(/cannot be a name/);
  expect(({} as { x?: number }).x).toBeUndefined();
});
test('too large, too deep, not finite', () => {
  expect(lines(' '.repeat(LIMITS.bytes + 1))).toMatch(/at most 4 MB/);
  expect(lines(`{"dryfit":1,"title":"T","units":"mm","note":${'['.repeat(100)}${']'.repeat(100)}}`)).toMatch(/deep/);
  expect(lines('{"dryfit":1,"title":"T","units":"mm","parts":{"a":{"wood":"ash","width":1e999}}}')).toMatch(/finite/);
});
test('control characters and long names are shown harmlessly', () => {
  const said = lines({ ...base, parts: { a: { ...part, [`bad\u0007\u202e${'x'.repeat(500)}`]: '1' } } });
  // oxlint-disable-next-line no-control-regex
  expect(said).not.toMatch(/[\u0000-\u001f\u202e]/);
  expect(said.length).toBeLessThan(300);
});
test('an older joint is upgraded by its own family, an older grammar by its steps', () => {
  const old = { ...base, joints: { j: { as: 'tenon@1', places: [{ enter: 'a', into: 'b' }], set: { size: '7' } } } };
  const r = parseDocument(JSON.stringify(old), catalog);
  expect(r.ok && r.doc.joints?.['j']).toMatchObject({ as: 'tenon@2', set: { width: '7' } });
  const step = {
    to: 1,
    up: ({ name, ...d }: Record<string, unknown>) => ({ ...d, title: name }),
    sample: { dryfit: 0, name: 'Old stool', units: 'mm' },
  };
  const up = parseDocument(JSON.stringify(step.sample), catalog, [step]);
  expect(up.ok && up.doc.title).toBe('Old stool');
  expect(lines({ dryfit: 0, title: 'T', units: 'mm' })).toMatch(/nothing leads from grammar 0/);
});
