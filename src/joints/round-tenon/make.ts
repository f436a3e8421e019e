import { type Frame, HOME, compose, seenFrom } from '../../geom/frame.ts';
import { circle, rectangle } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, beyond, cylinder, wedgeExtra, wedgeKerf } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Laid, layOut } from './lay.ts';
import type { RoundTenon } from './params.ts';

export function make(p: Place<RoundTenon>, sizes: RoundTenon): Made {
  const l = layOut(p.meeting, sizes);
  const enter: Feature[] = [cylinder('round tenon', 'add', HOME, sizes.diameter, l.root, l.tip, { round: 'round', to: 'end' })];
  if (l.back > 0) enter.push(setBack(l));
  if (l.flush) enter.push(beyond('flush cut', 'late', l.flush, 'flush end'));
  const into = [
    cylinder('hole', 'remove', HOME, sizes.diameter, l.start, l.floor, {
      round: 'round',
      ...(sizes.through === 'yes' ? {} : { to: 'bottom' }),
    }),
  ];
  const extras: ExtraPart[] = [];
  if (l.wedge) {
    enter.push(turned(l.wedge.at, wedgeKerf('kerf', l.wedge.spec)));
    extras.push(wedge(l, l.wedge));
  }
  return {
    features: { enter, into },
    extras,
    contacts: contacts(p.meeting, l),
    frees: [...extras.map((e) => ({ moves: [e.name], along: [0, 0, 1] as Vec3 })), { moves: ['enter'], along: [0, 0, -1] as Vec3 }],
    holds: sizes.glue === 'yes' ? 'glue' : 'dry',
  };
}
const turned = (by: Frame, f: Feature): Feature => ({ ...f, at: compose(by, f.at) });
/** The shoulder cut back all round the tenon, where the surface that it faces is not flat. */
function setBack(l: Laid): Feature {
  const b = l.g.enter.box;
  const m = CLEAR;
  return {
    name: 'shoulder set back',
    op: 'remove',
    at: HOME,
    why: 'joint',
    solid: {
      kind: 'prism',
      profile: [rectangle(b.min[0] - m, b.min[1] - m, b.max[0] + m, b.max[1] + m), circle(0, 0, l.r)],
      from: -l.back,
      to: Math.max(b.max[2], 0) + m,
    },
    faces: { shoulder: { of: 'from' } },
  };
}
/** The wedge takes the round of the hole, and the slant of a flush end. */
function wedge(l: Laid, w: NonNullable<Laid['wedge']>): ExtraPart {
  const wide = 2 * (l.r + CLEAR + w.spec.thick);
  const round: Feature = {
    // Chords of the round lie as those of the hole do, whichever way the wedge is turned.
    name: 'rounding',
    op: 'shape',
    at: seenFrom(w.at, HOME),
    why: 'shape',
    faces: { round: { of: 'side', loop: 1, corner: 0 } },
    solid: {
      kind: 'prism',
      profile: [rectangle(-wide, -wide, wide, wide), circle(0, 0, l.r)],
      from: w.spec.root - CLEAR,
      to: w.spec.tip + CLEAR,
    },
  };
  // The cut's plane is seen from the wedge's turned frame.
  const n = l.flush?.normal;
  const flush =
    l.flush && n
      ? [
          beyond(
            'flush cut',
            'late',
            { normal: [n[0] * w.at.x[0] + n[1] * w.at.x[1], n[0] * w.at.y[0] + n[1] * w.at.y[1], n[2]], off: l.flush.off },
            'flush end',
          ),
        ]
      : [];
  const e = wedgeExtra('wedge1', 'wedge', l.g.enter.wood, w.spec, [round, ...flush]);
  return { ...e, at: compose(w.at, e.at) };
}
