import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { type Ground, bite, ground, point, slides, slotDepth, spots } from './lay.ts';
import type { Button } from './params.ts';
import { SHARE } from './propose.ts';

const MOVES = { name: 'woodworkingtips.com: up to 1/8 in for each 12 in of width', basis: 'read' } as const;
const APART = { name: 'Woodcraft Magazine 2010, fastening table tops', basis: 'read' } as const;
/** Play in comparing with a limit, mm. */
const PLAY = 0.05;
const rule = (id: string, words: string, run: (g: Ground, s: Button) => readonly Omit<Warning, 'rule'>[]): Rule<Button> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    return g ? run(g, s).map((w) => ({ ...w, rule: id })) : [];
  },
});
/** Parameters handed back to the proposal. */
const clear = (...keys: string[]): Record<string, null> => Object.fromEntries(keys.map((k) => [k, null]));
const first = (g: Ground, s: Button, inward: number, down: number): Warning['at'] => point(g, spots(g, s)[0] ?? 0, inward, down);

const grain = rule('grain of a button', 'a button’s grain runs from the screw to the tongue', (g, s) =>
  s.grain === 'along'
    ? []
    : [
        {
          grade: 'trouble',
          title: 'The grain of the buttons runs across their tongues',
          why: 'The tongue is then short grain: it breaks off at the shoulder when the screw is drawn up or the top moves.',
          measured: 90,
          limit: 0,
          unit: 'deg',
          source: HABIT,
          at: first(g, s, s.room, s.lip),
          roles: ['under', 'rail'],
          cures: [{ label: 'let the grain run from the screw to the tongue', set: { grain: null } }],
        },
      ],
);
const moves = rule('top held fast', 'buttons leave the top room to move: about 1/8 in for each 12 in from its middle', (g, s) => {
  const along = g.movesAlong > 0;
  const need = (along ? g.movesAlong : g.movesAcross) * SHARE;
  const has = along ? slides(g, s) : s.room;
  if (need <= 0 || has >= need / 2 - PLAY) return [];
  return [
    {
      grade: 'trouble',
      title: 'The buttons hold the top fast',
      why: `From its middle to this rail the top moves about {mm:${need}} each way; the buttons leave it {mm:${has}}.`,
      measured: has,
      limit: need / 2,
      unit: 'mm',
      source: MOVES,
      at: first(g, s, s.room, s.lip),
      roles: ['under', 'rail'],
      cures: [{ label: 'let the room follow the top', set: along ? clear('allow', 'stop', 'inset') : clear('room', 'reach') }],
    },
  ];
});
const slips = rule('tongue slips out', 'at the top’s driest 3 mm of tongue stay in the slot', (g, s) => {
  const left = s.reach - 2 * s.room;
  if (left >= 3 - PLAY || g.movesAcross <= 0) return [];
  return [
    {
      grade: 'trouble',
      title: 'The tongues may slip out of their slots',
      why: `When the top shrinks by {mm:${s.room}} here, {mm:${Math.max(0, left)}} of tongue stays in the slot.`,
      measured: left,
      limit: 3,
      unit: 'mm',
      source: { name: 'tongue less movement', basis: 'derived' },
      at: first(g, s, 0, s.lip),
      roles: ['rail'],
      cures: [{ label: `make the tongues ${typed(2 * s.room + 6)} long`, set: { reach: typed(2 * s.room + 6) } }],
    },
  ];
});
const deepScrew = rule('screw near the face', 'a screw goes into a top by at most two thirds of its thickness', (g, s) => {
  const deep = bite(g, s);
  const limit = Math.max((g.topThick * 2) / 3, g.topThick - 12);
  if (deep <= limit + PLAY) return [];
  return [
    {
      grade: 'trouble',
      title: 'The screws nearly come through the top',
      why: `They go {mm:${deep}} into a top {mm:${g.topThick}} thick; the wood above them swells or splits.`,
      measured: deep,
      limit,
      unit: 'mm',
      source: HABIT,
      at: first(g, s, s.room + s.length / 2, -deep),
      roles: ['under'],
      cures: [{ label: 'let the screws follow the top', set: { screw_length: null } }],
    },
  ];
});
const wall = rule('slot wall', 'wood behind a button’s slot is at least 4 mm thick', (g, s) => {
  const left = g.railThick - (slotDepth(s) - s.room);
  if (left >= 4 - PLAY) return [];
  return [
    {
      grade: 'trouble',
      title: 'Thin wood behind the slots',
      why: `Only {mm:${left}} of the rail is left behind the slots.`,
      measured: left,
      limit: 4,
      unit: 'mm',
      source: HABIT,
      at: first(g, s, -slotDepth(s), s.lip),
      roles: ['rail'],
      cures: [{ label: 'let the tongues follow the room', set: { reach: null } }],
    },
  ];
});
const atTenon = rule('groove at the tenon', 'a groove deeper than a third of the rail stops about 20 mm before its tenons', (g, s) => {
  const deep = slotDepth(s) - s.room;
  if (s.slot !== 'groove' || s.stop >= 20 - PLAY || deep <= g.railThick / 3 + PLAY) return [];
  return [
    {
      grade: 'note',
      title: 'The groove may run into the tenons',
      why: `It is {mm:${deep}} deep in a rail {mm:${g.railThick}} thick and runs to {mm:${s.stop}} from the ends: where a tenon a third as thick stands in the middle, it cuts away the wood beside it and opens the shoulder.`,
      measured: s.stop,
      limit: 20,
      unit: 'mm',
      source: HABIT,
      at: first(g, s, 0, s.lip),
      roles: ['rail'],
      cures: [
        { label: 'let the groove stop before the tenons', set: clear('stop', 'inset') },
        { label: 'give each button a mortise of its own', set: clear('slot') },
      ],
    },
  ];
});
const few = rule('buttons far apart', 'buttons stand about 20 in apart', (g, s) => {
  const at = spots(g, s);
  const apart = at.length > 1 ? Math.abs((at[1] ?? 0) - (at[0] ?? 0)) : g.run[1] - g.run[0];
  if (apart <= 610) return [];
  return [
    {
      grade: 'note',
      title: 'The buttons stand far apart',
      why: `{mm:${apart}} between two buttons; about 20 in is usual.`,
      measured: apart,
      limit: 610,
      unit: 'mm',
      source: APART,
      at: first(g, s, s.room, s.lip),
      roles: ['rail'],
      cures: [{ label: 'let their number follow the rail', set: { count: null, inset: null } }],
    },
  ];
});
const noDraw = rule('button without draw', 'a slot a little low draws the top down', (g, s) =>
  s.draw >= 0.3
    ? []
    : [
        {
          grade: 'note',
          title: 'The buttons do not draw the top down',
          why: `The tongue stands off by {mm:${s.draw}}; 1/32 in is what pulls the top onto the rail.`,
          measured: s.draw,
          limit: 0.3,
          unit: 'mm',
          source: APART,
          at: first(g, s, 0, s.lip),
          roles: ['rail'],
          cures: [{ label: 'let the draw follow the rule', set: { draw: null } }],
        },
      ],
);
export const rules: readonly Rule<Button>[] = [grain, moves, slips, deepScrew, wall, atTenon, few, noDraw];
