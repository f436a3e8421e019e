import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import type { Source } from '../../model/finding.ts';
import { drawn, pinSpans } from './make.ts';
import type { Dovetail } from './params.ts';

const SURVEY: Source = { name: 'slopes surveyed at blog.lostartpress.com 2008 and 2023', basis: 'read' };
const DEG = 180 / Math.PI;
/** What a dovetail saw takes, mm: from memory, 0.5 to 1. */
const KERF = 1;
/** A tail narrower than this at its base breaks off, and no chisel goes between its neighbours, mm. */
const NARROW = 3;
const warn = (w: Omit<Warning, 'roles' | 'at'> & Partial<Pick<Warning, 'roles' | 'at'>>): Warning[] => [
  { roles: ['tails', 'pins'], at: [0, 0, 0], ...w },
];

const slope: Rule<Dovetail> = {
  id: 'dovetail slope',
  words: 'slopes between 1:4 and 1:8 hold alike; steeper tails have weak corners, flatter ones hold less by their form',
  run: (_p, s) => {
    const steep = s.slope > 1 / 4 + 1e-4;
    if (!steep && s.slope >= 1 / 8 - 1e-4) return [];
    return warn({
      rule: 'dovetail slope',
      grade: 'note',
      title: steep ? 'The tails flare more than is usual' : 'The tails flare less than is usual',
      why: steep
        ? 'Beyond 1:4 the fibres at a tail’s corner are short and may split off when it is driven in.'
        : 'Flatter than 1:8 the tails come nearer to straight fingers: glue does more of the holding.',
      measured: Math.atan(s.slope) * DEG,
      limit: Math.atan(steep ? 1 / 4 : 1 / 8) * DEG,
      unit: 'deg',
      source: SURVEY,
      cures: [{ label: 'let the slope follow the wood', set: { slope: null, angle: null } }],
    });
  },
};
const throughNeighbour: Rule<Dovetail> = {
  id: 'dovetail slope through its neighbour',
  words: 'two slopes leave wood between them: more than the saw takes at a pin’s narrow end, 3 mm at a tail’s base',
  run: (p, s) => {
    const { l } = drawn(p, s);
    const pin = Math.min(...pinSpans(l).map(([a, b]) => b - a));
    const tail = Math.min(...l.tails.map((t) => t.high - t.low - 2 * l.rise));
    const ofPin = pin < KERF - 1e-6;
    if (!ofPin && tail >= NARROW - 1e-6) return [];
    const fewer = s.tails > 1 ? [{ label: 'lay one tail fewer', set: { tails: String(s.tails - 1) } }] : [];
    return warn({
      rule: 'dovetail slope through its neighbour',
      grade: 'trouble',
      title: ofPin ? 'The slopes on both sides of a pin run into each other' : 'The slopes of a tail nearly meet at its base',
      why: ofPin
        ? `At its narrow end {mm:${pin}} of the pin would be left, less than the saw takes: both cuts run into one.`
        : `The tail is {mm:${tail}} wide at its base and breaks off there.`,
      measured: ofPin ? pin : tail,
      limit: ofPin ? KERF : NARROW,
      unit: 'mm',
      source: HABIT,
      roles: [ofPin ? 'pins' : 'tails'],
      cures: [
        ...(ofPin ? [{ label: 'let the pins follow the tails', set: { pin: null } }] : fewer),
        { label: 'let number, pins and slope follow the boards', set: { tails: null, pin: null, pitch: null, slope: null, angle: null } },
      ],
    });
  },
};
const thinHalf: Rule<Dovetail> = {
  id: 'half pin thin',
  words: 'a half pin is at least 3 mm wide on the outer face',
  run: (p, s) => {
    const { c, l } = drawn(p, s);
    const spans = pinSpans(l);
    const thin = [spans[0], spans.at(-1)].map((x) => (x ? x[1] - x[0] : 0)).reduce((a, b) => Math.min(a, b));
    if (thin >= 3 - 1e-6) return [];
    return warn({
      rule: 'half pin thin',
      grade: 'trouble',
      title: 'The half pin at the edge is thin',
      why: `It is {mm:${thin}} wide on the outer face and splits off when the joint is driven home.`,
      measured: thin,
      limit: 3,
      unit: 'mm',
      source: HABIT,
      at: [c.x[0], c.y[0], c.z[1]],
      roles: ['pins'],
      cures: [
        { label: 'let the half pins follow the pins', set: { half_pin: null, pitch: null } },
        ...(s.tail_over === null && p.set.pitch === undefined
          ? []
          : [{ label: 'lay one tail fewer', set: { tails: String(Math.max(1, s.tails - 1)) } }]),
      ],
    });
  },
};
const thinPin: Rule<Dovetail> = {
  id: 'pin thin',
  words: 'a pin narrower than 3 mm on the outer face takes a special chisel and great care',
  run: (_p, s) => {
    if (s.pin >= 3 - 1e-6 || s.pin < KERF - 1e-6 || s.tails < 2) return [];
    return warn({
      rule: 'pin thin',
      grade: 'note',
      title: 'The pins are narrow',
      why: `Between the tails {mm:${s.pin}} is left on the outer face: hardly wider than a saw and hard to clear with a chisel.`,
      measured: s.pin,
      limit: 3,
      unit: 'mm',
      source: HABIT,
      roles: ['pins'],
      cures: [{ label: 'let the pins follow the tails', set: { pin: null } }],
    });
  },
};
const lap: Rule<Dovetail> = {
  id: 'lap of a dovetail',
  words: 'the lap of a half-blind dovetail is a quarter to a third of the front',
  run: (p, s) => {
    if (s.lap === 0) return [];
    const { c } = drawn(p, s);
    const thick = c.pins.box.max[2] - c.z[0];
    const thin = s.lap < thick / 4 - 0.05;
    if (!thin && s.lap <= thick / 3 + 0.05) return [];
    const weak = s.lap < 3 - 1e-6;
    const to = thin ? thick / 4 : thick / 3;
    const short = Math.max(0, c.short);
    return warn({
      rule: 'lap of a dovetail',
      grade: weak ? 'trouble' : 'note',
      title: thin ? 'The lap before the tails is thin' : 'The lap takes much of the tails',
      why: thin
        ? `{mm:${s.lap}} of a board {mm:${thick}} thick hides the tails; the chisel comes through it, or the tails show later.`
        : `The lap takes {mm:${s.lap}} of a board {mm:${thick}} thick; the tails that hold are only {mm:${thick - s.lap}} long.`,
      measured: s.lap,
      limit: to,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, c.z[1]],
      // The tails can be cut shorter here, but only the board itself can reach farther.
      cures: to >= short - 1e-6 ? [{ label: `make the lap ${typed(to)}`, set: { lap: typed(to) } }] : [],
    });
  },
};
const cutOff: Rule<Dovetail> = {
  id: 'tail board longer than its lap',
  words: 'a board for a lapped dovetail ends behind the lap',
  run: (p, s, made) => {
    if (!made.features['tails']?.some((f) => f.name === 'end')) return [];
    const { c } = drawn(p, s);
    const over = c.tails.box.max[2] - c.z[1];
    return warn({
      rule: 'tail board longer than its lap',
      grade: 'note',
      title: 'The tail board is drawn longer than it is',
      why: `{mm:${over}} of its end is cut off for the lap; the board may be drawn to end {mm:${s.lap}} behind the face.`,
      measured: over,
      limit: 0,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, c.z[1]],
      roles: ['tails'],
      cures: [],
    });
  },
};
export const rules: readonly Rule<Dovetail>[] = [slope, throughNeighbour, thinHalf, thinPin, lap, cutOff];
