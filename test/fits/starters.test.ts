/** The starters: clean where they should be, and in the spoiled one exactly what was planted. */
import { beforeAll, expect, test } from 'vitest';
import { readFileSync, readdirSync } from 'node:fs';
import { layPiece } from '../../src/piece/lay.ts';
import { orderOf } from '../../src/piece/order.ts';
import { judge, prove } from '../../src/piece/judge.ts';
import { drawerBox } from '../../src/makers/drawer/box.ts';
import { patchesOf } from '../../src/makers/kit/draft.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { withStore } from '../support/checks.ts';
import { builtOf, documentOf, starterText } from '../support/piece.ts';

beforeAll(() => loadKernel());

const CLEAN = ['writing-desk', 'hall-bench', 'wall-shelf', 'frame-door'];
test.each(CLEAN)('%s is clean, goes together and lies on boards', (name) => {
  const doc = documentOf(starterText(name));
  withStore((store) => {
    const j = judge(doc, store, 2);
    expect(j.findings.map((f) => f.key)).toEqual([]);
    expect(orderOf(j.built, store).possible).toBe(true);
  });
  const layout = layPiece(doc, builtOf(doc), undefined, { effort: 2000, seed: 1 });
  expect(layout.unplaced).toEqual([]);
  expect(layout.boardsUsed).toBeGreaterThan(0);
});

/** What was planted, what it is in, and how many findings tell of it: one for each leg and each drawer side that has it. */
const PLANTED: readonly (readonly [fault: string, rule: string, parts: string])[] = [
  ['apron tenons 1-3/16 long meet in the rear legs', 'tenons-meet', 'back_apron leg:left:rear side_apron:left'],
  ['', 'tenons-meet', 'back_apron leg:right:rear side_apron:right'],
  ['the lower rail is 1/4 too long', 'overlap', 'leg:right:front lower_rail'],
  ['the drawer bottom is glued into its grooves', 'must-not-glue', 'drawer_bottom drawer_side:left'],
  ['', 'must-not-glue', 'drawer_bottom drawer_side:right'],
  ['the grain of the back buttons runs across their tongues', 'grain-of-a-button', 'back_apron top'],
  ['a pen tray that nothing holds', 'held-by-nothing', 'pen_tray'],
  ['the tenons of the upper rail lie 1/8 off the middle', 'mortise-wall', 'leg:left:front leg:right:front'],
  ['a partition glued across 10 in of the drawer bottom', 'cross-grain', 'drawer_bottom partition'],
  ['the back apron came out 1/16 short', 'open-shoulder', 'back_apron leg:right:rear'],
  ['the drawer bottom was cut 1/8 too short', 'cut-already', 'drawer_bottom'],
  ['the left runner is to be tongued into a side that it does not touch', 'joint-apart', 'runner:left side_apron:left'],
];
test('the spoiled desk: each planted fault is found by exactly these findings, and none is invented', () => {
  const doc = documentOf(starterText('spoiled-desk'));
  withStore((store) => {
    const j = judge(doc, store, 2);
    expect(j.problems).toEqual([]);
    expect(j.findings.map((f) => `${f.rule}: ${f.parts.join(' ')}`).sort()).toEqual(
      PLANTED.map(([, rule, parts]) => `${rule}: ${parts}`).sort(),
    );
    const kinds = new Set(j.findings.map((f) => f.rule));
    expect(kinds.size).toBe(10);
    const cured = prove(doc, j.findings, store).filter((f) => f.remedies.length > 0);
    expect([...new Set(cured.map((f) => f.rule))].sort()).toEqual(
      [
        'cross-grain',
        'cut-already',
        'grain-of-a-button',
        'held-by-nothing',
        'mortise-wall',
        'must-not-glue',
        'overlap',
        'tenons-meet',
      ].sort(),
    );
  });
});

test('the desk’s drawer is what the maker writes', () => {
  const doc = documentOf(starterText('writing-desk'));
  const draft = drawerBox({
    id: 'drawer',
    space: 'drawer_opening',
    front: { wood: 'cherry', thick: '3/4 in' },
    sides: { wood: 'maple', thick: '1/2 in' },
    bottom: { wood: 'maple', thick: '3/8 in', widest: '5 in' },
    gaps: { side: '1/32 in', top: '1/16 in', behind: '1/4 in' },
    up: '3/8 in',
    lower: '1/8 in',
  });
  for (const p of patchesOf(draft)) {
    const [kind, id] = p.path.split('/') as ['groups' | 'parts' | 'joints', string];
    expect([id, doc[kind]?.[id]]).toEqual([id, p.value]);
  }
});

test('the list of starters names every file once, with words', () => {
  const folder = new URL('../../public/starters/', import.meta.url);
  const { starters } = JSON.parse(readFileSync(new URL('index.json', folder), 'utf8')) as {
    starters: { file: string; title: string; words: string }[];
  };
  expect(starters.map((s) => s.file).sort()).toEqual(
    readdirSync(folder)
      .filter((f) => f !== 'index.json')
      .sort(),
  );
  for (const s of starters) {
    expect(documentOf(readFileSync(new URL(s.file, folder), 'utf8')).title).toBe(s.title);
    expect(s.words.length).toBeGreaterThan(20);
  }
});
