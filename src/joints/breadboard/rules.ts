import { isWood } from '../../wood/woods.ts';
import { alongGrain } from '../blocks.ts';
import type { Rule } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { ground, lay, pitchOf } from './lay.ts';
import type { Breadboard } from './params.ts';

/** Room counts as enough from this share of the rule's movement on: quartersawn tops move about half as much. */
const ENOUGH = 0.5;

const shortSlot: Rule<Breadboard> = {
  id: 'slot short',
  words: 'outer pegs stand in slots long enough for the top to move: about 1/8 in each way for each 12 in from the fast peg',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || !isWood(g.top.wood)) return [];
    const l = lay(g, s);
    const fast = l.tenons.find((t) => t.fast);
    const far = l.tenons.reduce((a, t) => Math.max(a, Math.abs(t.y - (fast?.y ?? 0))), 0);
    const need = far / 96;
    if (far < 1 || s.allow >= need * ENOUGH - 1e-6) return [];
    const at = l.tenons.find((t) => Math.abs(Math.abs(t.y - (fast?.y ?? 0)) - far) < 1e-6);
    return [
      {
        rule: 'slot short',
        grade: 'trouble',
        title: 'The slots of the outer pegs are short',
        why: `The farthest peg stands {mm:${far}} from the fast one; the top moves about {mm:${need}} there and may move {mm:${s.allow}}. It will split or bow the end.`,
        measured: s.allow,
        limit: need * ENOUGH,
        unit: 'mm',
        source: { name: 'woodworkingtips.com: up to 1/8 in for each 12 in of width', basis: 'read' },
        at: [0, at?.y ?? 0, s.peg_back],
        roles: ['top', 'end'],
        cures: [{ label: 'let the slots follow the width of the top', set: { allow: null, tenon_width: null } }],
      },
    ];
  },
};
const wideGlue: Rule<Breadboard> = {
  id: 'breadboard glued wide',
  words: 'the fast tenon is glued over at most 150 mm',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.tenon_width <= 150) return [];
    const width = Math.min(75, pitchOf(g, s.tenons) / 2);
    return [
      {
        rule: 'breadboard glued wide',
        grade: 'trouble',
        title: 'The fast tenon is glued across too much of the top',
        why: `{mm:${s.tenon_width}} of the top’s width would be held by glue across the grain; an inch to six inches is what makers glue.`,
        measured: s.tenon_width,
        limit: 150,
        unit: 'mm',
        source: { name: 'woodweb.com and finewoodworking.com, practitioners', basis: 'read' },
        at: [0, 0, s.tongue],
        roles: ['top', 'end'],
        cures: [{ label: `make the tenons ${typed(width)} wide`, set: { tenon_width: typed(width) } }],
      },
    ];
  },
};
const alongTop: Rule<Breadboard> = {
  id: 'breadboard grain',
  words: 'the end board’s grain runs across the top’s',
  run: (p) => {
    const g = ground(p.meeting);
    if (!g || !isWood(g.end.wood) || alongGrain(g.end, [0, 1, 0])) return [];
    return [
      {
        rule: 'breadboard grain',
        grade: 'trouble',
        title: 'The grain of the end board runs with the top’s',
        why: 'It neither keeps the top flat nor holds a tenon: its grain should run across the top.',
        measured: 90,
        limit: 0,
        unit: 'deg',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['end'],
        cures: [],
      },
    ];
  },
};
export const rules: readonly Rule<Breadboard>[] = [shortSlot, wideGlue, alongTop];
