/** What is judged from the surfaces and solids of the piece as built: shoulders, parts in the same place, joints apart. */
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { misfitOf } from '../../src/fits/contact-gap.ts';
import { families } from '../../src/joints/families.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board, findingsOf, joint, piece, tryRule } from '../support/checks.ts';
import { jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());

/** Two posts 40 square and a rail between them, 400 apart; `reach` moves the rail's right end. */
const frame = (reach: number | string, more: object = {}): object =>
  piece(
    {
      left_post: board('z', [0, 40], [0, 40], [0, 500]),
      right_post: board('z', [440, 480], [0, 40], [0, 500]),
      rail: {
        ...board('x', [40, 440], [10, 30], [400, 460]),
        left: 'left_post.right',
        right: typeof reach === 'string' ? reach : `right_post.left + ${reach}`,
      },
    },
    {
      ends: joint('mortise_tenon', [
        { enter: 'rail', into: 'left_post' },
        { enter: 'rail', into: 'right_post' },
      ]),
    },
    more,
  );
const measured = (is: string): object => ({ bench: { measured: [{ of: 'rail.width', is, with: 'rule' }] } });

tryRule('open-shoulder', {
  quiet: {
    'shoulder closed': frame(0),
    'within half a knife line': frame(-0.04),
    'measured as drawn': frame(0, measured('400')),
    'too long instead': frame(0.5),
  },
  speaks: {
    'drawn 1 short': { in: frame(-1), parts: ['rail', 'right_post'], measured: 1, cure: 'Let the right of the rail reach {mm:1} farther' },
    'measured 1 short': { in: frame(0, measured('399')), parts: ['rail', 'right_post'], measured: 1 },
  },
});
tryRule('biting-shoulder', {
  quiet: { 'shoulder closed': frame(0), 'within half a knife line': frame(0.04), 'too short instead': frame(-0.5) },
  speaks: {
    'drawn 0.6 long': { in: frame(0.6), parts: ['rail', 'right_post'], measured: 0.6, cure: 'Take {mm:0.6} off the right of the rail' },
    'measured 0.8 long': { in: frame(0, measured('400.8')), parts: ['rail', 'right_post'], measured: 0.8 },
  },
});
tryRule('joint-apart', {
  quiet: { 'they touch': frame(0), 'an open shoulder is told as such': frame(-4) },
  speaks: {
    '6 apart': { in: frame(-6), parts: ['rail', 'right_post'], measured: 6, cure: 'Let the right of the rail reach {mm:6} farther' },
    'far apart': { in: frame(-120), parts: ['rail', 'right_post'], measured: 120 },
  },
});
tryRule('overlap', {
  quiet: {
    'they touch': frame(0),
    'a bite of the shoulder is told as such': frame(3),
    'two boards side by side': piece({
      a: board('x', [0, 300], [0, 90], [0, 20], { loose: true }),
      b: board('x', [0, 300], [90, 180], [0, 20], { loose: true }),
    }),
    'a tenon stands in its mortise': frame(0),
  },
  speaks: {
    'a rail 12 too long': { in: frame(12), parts: ['rail', 'right_post'], cure: 'Take {mm:12} off the right of the rail' },
    'two loose boards': {
      in: piece({
        a: board('x', [0, 300], [0, 90], [0, 20], { loose: true }),
        b: board('x', [0, 300], [87, 180], [0, 20], { loose: true }),
      }),
      parts: ['a', 'b'],
      measured: (2 * 300 * 3 * 20) / (2 * (300 * 3 + 300 * 20 + 3 * 20)),
      cure: 'Take {mm:3} off the back of the a',
    },
  },
});

describe('both waves tell the same of what both can see', () => {
  test.each([0, -1, 0.6, -6, 12])('right end at %s', (reach) => {
    const first = findingsOf(frame(reach), 1).map((f) => f.key);
    const second = findingsOf(frame(reach), 2).map((f) => f.key);
    expect(second).toEqual(first);
  });
});

test('the contacts of every example are as they are meant to be', () => {
  for (const family of Object.values(families))
    for (const ex of family.examples)
      for (const p of buildPiece(jsonDocument(ex.document), families).built.places)
        for (const c of p.made?.contacts ?? []) expect([ex.name, c.name, misfitOf(c)]).toEqual([ex.name, c.name, 0]);
});
