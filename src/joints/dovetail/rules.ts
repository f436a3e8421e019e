import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import type { Source } from '../../model/finding.ts';
import { drawn, pinSpans } from './make.ts';
import type { Dovetail } from './params.ts';

const SURVEY: Source = { name: 'slopes surveyed at blog.lostartpress.com 2008 and 2023', basis: 'read' };
const DEG = 180 / Math.PI;
const warn = (w: Omit<Warning, 'roles' | 'at'> & Partial<Pick<Warning, 'roles' | 'at'>>): Warning[] => [
  { roles: ['tails', 'pins'], at: [0, 0, 0], ...w },
];

const slope: Rule<Dovetail> = {
  id: 'dovetail slope',
  words: 'slopes between 1:4 and 1:10 hold alike; steeper corners break off, flatter ones draw out',
  run: (_p, s) => {
    const steep = s.slope > 1 / 4 + 1e-4;
    if (!steep && s.slope >= 1 / 10 - 1e-4) return [];
    return warn({
      rule: 'dovetail slope',
      grade: steep ? 'trouble' : 'note',
      title: steep ? 'The tails flare so much that their corners break off' : 'The tails hardly flare',
      why: steep
        ? 'Beyond 1:4 the fibres at a tail’s corner are short and split off when it is driven in.'
        : 'Flatter than 1:10 the tails hold little more than straight fingers.',
      measured: Math.atan(s.slope) * DEG,
      limit: Math.atan(steep ? 1 / 4 : 1 / 10) * DEG,
      unit: 'deg',
      source: steep ? SURVEY : HABIT,
      cures: [{ label: 'let the slope follow the wood', set: { slope: null, angle: null } }],
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
        { label: 'let the half pins follow the pins', set: { half_pin: null } },
        ...(s.tail_over === null ? [] : [{ label: 'lay one tail fewer', set: { tails: String(Math.max(1, s.tails - 1)) } }]),
      ],
    });
  },
};
const thinPin: Rule<Dovetail> = {
  id: 'pin thin',
  words: 'a pin narrower than 3 mm on the outer face takes a special chisel and great care',
  run: (_p, s) => {
    if (s.pin >= 3 - 1e-6 || s.tails < 2) return [];
    return warn({
      rule: 'pin thin',
      grade: 'note',
      title: 'The pins are narrow',
      why: `Between the tails {mm:${s.pin}} is left on the outer face: no wider than a saw and hard to clear with a chisel.`,
      measured: s.pin,
      limit: 3,
      unit: 'mm',
      source: HABIT,
      roles: ['pins'],
      cures: [{ label: 'let the pins follow the tails', set: { pin: null } }],
    });
  },
};
export const rules: readonly Rule<Dovetail>[] = [slope, thinHalf, thinPin];
