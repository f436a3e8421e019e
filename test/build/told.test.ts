/** What a document says wrongly, or says in a way that is easily taken wrongly: told with its place and its cure, never as a break. */
import { expect, test } from 'vitest';
import { outPoint } from '../../src/geom/frame.ts';
import { boxesOf, builtOf, fixtureText, jsonDocument, sizes, troubles } from '../support/piece.ts';

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
const piece = (parts: object, more: object = {}): Record<string, unknown> => ({ dryfit: 1, title: 'T', units: 'mm', parts, ...more });
const post = { wood: 'ash', grain: 'z', left: '100', width: '40', front: '0', depth: '50', bottom: '0', height: '400' };
const joint = (place: object, as = 'mortise_tenon@1'): object => piece({ a: board(), post }, { joints: { j: { as, places: [place] } } });
const row = (count: number, names?: string[]): object => ({ copies: [{ row: 'y', count, step: '60', ...(names ? { names } : {}) }] });

test.each<readonly [string, unknown, RegExp]>([
  [
    'a face of a group',
    piece({ a: board({ in: 'g' }), b: board({ left: 'g.right' }) }, { groups: { g: {} } }),
    /parts\/b\/left: "g" is a group.*Did you mean "a"/,
  ],
  [
    'an end that meets a group',
    piece({ a: { ...board(), left: { meets: 'g.right' }, right: '5', width: undefined } }, { groups: { g: {} } }),
    /"g" is a group/,
  ],
  ['a spot on a group', piece({ a: board({ left: 'xon(g.left, 0, 1)' }) }, { groups: { g: {} } }), /"g" is a group/],
  ['a line on a group', piece({ a: board({ from: { on: 'g', z: '1' }, to: ['1', '2', '3'] }) }, { groups: { g: {} } }), /"g" is a group/],
  [
    'a group measured',
    piece({ a: board() }, { groups: { g: {} }, bench: { measured: [{ of: 'g.width', is: '5' }] } }),
    /"g.width" is a group.*measure one of its parts/,
  ],
  [
    'an end that meets no face',
    piece({ a: { ...board(), left: { meets: 'post.innr' }, width: undefined, right: '90' }, post: { ...post, marks: { inner: 'left' } } }),
    /no mark or face "innr".*Did you mean "inner"/,
  ],
  [
    'a star where nobody reads',
    piece({ a: board(row(2)) }, { bench: { measured: [{ of: 'a:*.width', is: '5' }] } }),
    /"\*" cannot stand here: name one copy of "a".*"a:1"/,
  ],
  [
    'a width of what leans',
    piece({ a: board({ turn: [['y', '10 deg']] }), b: board({ width: 'a.width' }) }),
    /leans as seen from here.*Write its width as a size with a name/,
  ],
  [
    'a face of what leans',
    piece({ a: board({ turn: [['y', '10 deg']] }), b: board({ left: 'a.right' }) }),
    /"meets": "a.right".*xon\(a.right, …\)/,
  ],
  [
    'a cut part that is not there',
    piece({ leg: board() }, { bench: { cut: { lag: { on: 'today', record: {} } } } }),
    /bench\/cut\/lag: no part "lag".*Did you mean "leg"/,
  ],
  [
    'an end that is no face',
    joint({ enter: 'a', into: 'post', end: 'rigth' }),
    /places\/0\/end: the end is one of left, right.*Did you mean "right"/,
  ],
  [
    'the same joint twice',
    piece(
      { a: board(), post },
      {
        joints: {
          j: {
            as: 'mortise_tenon@1',
            places: [
              { enter: 'a', into: 'post' },
              { enter: 'a', into: 'post' },
            ],
          },
        },
      },
    ),
    /places\/1: this joint is already told of: a and post/,
  ],
  [
    'stars that multiply',
    piece(
      {
        a: board(row(200)),
        b: board(
          row(
            200,
            Array.from({ length: 200 }, (_, i) => `n${i}`),
          ),
        ),
      },
      { joints: { j: { as: 'edge_joint@1', places: [{ enter: 'a:*', into: 'b:*' }] } } },
    ),
    /40000 places; at most 20000/,
  ],
  [
    'places over many entries',
    piece(
      {
        a: board(row(70)),
        ...Object.fromEntries(
          Array.from({ length: 5 }, (_, k) => [
            `b${k}`,
            board(
              row(
                70,
                Array.from({ length: 70 }, (_, i) => `n${i}`),
              ),
            ),
          ]),
        ),
      },
      { joints: { j: { as: 'edge_joint@1', places: Array.from({ length: 5 }, (_, k) => ({ enter: 'a:*', into: `b${k}:*` })) } } },
    ),
    /places\/4: with this the piece has more than 20000 places/,
  ],
  [
    'layers of the second step',
    piece({
      a: board({
        made: [
          { staves: { widest: '30' }, along: 'depth' },
          { layers: ['10', '11'], along: 'height' },
        ],
      }),
    }),
    /made\/1: the layers of "a" add up to 21.00 mm, but its height is 20.00 mm/,
  ],
  ['a layer of nothing', piece({ a: board({ made: [{ layers: ['0', '20'], along: 'height' }] }) }), /every layer must be above 0/],
  ['a stave of nothing', piece({ a: board({ made: [{ staves: { widest: '0' }, along: 'depth' }] }) }), /widest stave must be above 0/],
])('%s', (_, json, words) => {
  expect(troubles(json).join('\n')).toMatch(words);
});

test('what is wrong with an entry is told once, however many copies it has', () => {
  expect(troubles(piece({ a: board({ ...row(5), made: [{ layers: ['0', '20'], along: 'height' }] }) }))).toHaveLength(1);
});

test('an end named by its face, and the end board of a breadboard, which is a role', () => {
  expect(troubles(joint({ enter: 'a', into: 'post', end: 'right' }))).toEqual([]);
  expect(troubles(JSON.parse(fixtureText('breadboard-top')))).toEqual([]);
});

test('an end meets a mark as it meets the face that the mark stands for', () => {
  const leaning = { ...post, left: '0', turn: [['y', '10 deg']], marks: { inner: 'right' } };
  const rail = (face: string): object => ({
    wood: 'ash',
    grain: 'x',
    left: { meets: `leg.${face}` },
    right: '400',
    middepth: '25',
    depth: '20',
    bottom: '200',
    height: '60',
  });
  const by = (face: string): unknown => {
    const { box, trims } = boxesOf(jsonDocument(piece({ leg: leaning, rail: rail(face) })))('rail');
    return { box, trims };
  };
  // The plane of the leg's face at x = 40 in its own frame, leaning 10°: the rail's lower long edge is met last, at 40/cos 10° + 200 tan 10°.
  const a = Math.PI / 18;
  expect((by('inner') as { box: { min: number[] } }).box.min[0]).toBeCloseTo(40 / Math.cos(a) + 200 * Math.tan(a), 9);
  expect(by('inner')).toEqual(by('right'));
});

test('all copies of a line are of one run, which others may read', () => {
  const leg = { ...post, left: '-200', copies: [{ mirror: 'x', names: ['l', 'r'] }] };
  const rung = {
    wood: 'ash',
    grain: 'x',
    from: { on: 'leg:l', z: '200' },
    to: { on: 'leg:r', z: '200' },
    copies: [{ row: 'z', count: 2, step: '100' }],
    left: '20',
    right: 'rung.run - 20',
    midheight: '0',
    height: '20',
    middepth: '0',
    depth: '20',
  };
  const of = boxesOf(jsonDocument(piece({ leg, rung, cap: board({ width: 'rung.run' }) })));
  // The legs' middles stand at -180 and 180.
  expect(sizes(of('cap'))[0]).toBeCloseTo(360, 9);
  expect(outPoint(of('rung:2').frame, [0, 0, 0])[2]).toBeCloseTo(300, 9);
});

test('a part that is glued up and then measured: its layers share what is lost', () => {
  const leg = { ...post, left: '0', width: '45', made: [{ layers: ['22.5', '22.5'], along: 'width' }] };
  const { drawn, built } = builtOf(jsonDocument(piece({ leg }, { bench: { measured: [{ of: 'leg.width', is: '44.2' }] } })));
  const widths = (b: typeof built): (number | undefined)[] =>
    b.parts.get('leg')?.pieces.map((p) => Number((p.max[0] - p.min[0]).toFixed(9))) ?? [];
  expect(widths(drawn)).toEqual([22.5, 22.5]);
  expect(widths(built)).toEqual([22.1, 22.1]);
});
