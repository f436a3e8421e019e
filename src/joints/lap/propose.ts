import { isSoftwood } from '../../wood/woods.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { type Reasons, byBook, byHabit, settle } from '../reasons.ts';
import { withNearest } from '../nearest.ts';
import { sharedBox } from '../shared-box.ts';
import { type Ground, WHOLE, ground, mitreLine, tongueOf } from './lay.ts';
import type { Lap } from './params.ts';

const SLOPES = 'woodworking magazines and teachers, as surveyed at blog.lostartpress.com 2008 and 2023';
/** What a part must keep at least, and the narrowest neck of a dovetailed tongue, mm. */
const LEAST = 1;
type Proposed = { readonly sizes: Lap; readonly because: Readonly<Record<keyof Lap, Reason>> };

/** Each part gives half of the thickness that both share. */
export function propose(p: Place<Lap>, _shop: Cutting): Proposed | Refusal<Lap> {
  if (!sharedBox(p.meeting, 'over', 'under'))
    return { cannot: 'a lap needs two parts that are drawn square across each other and share wood', limit: 0, asked: 0 };
  return withNearest<Lap>(p.set, (set) => {
    const out = settle<Lap>(set, proposals(p));
    return refuse(p, out.sizes) ?? out;
  });
}
function proposals(p: Place<Lap>): Reasons<Lap> {
  const soft = isSoftwood(p.meeting.sides['over']?.[0]?.wood ?? '');
  return {
    form: ['plain', byHabit('plain shoulders are the strongest and the quickest')],
    share: [0.5, byHabit('each part gives half: the joint is then no weaker in one than in the other', [1 / 3, 2 / 3])],
    notch: ['auto', byHabit('the first part lies over the second')],
    slope: [soft ? 1 / 6 : 1 / 8, byBook('1:6 in softwood, 1:8 in hardwood', SLOPES, [1 / 8, 1 / 4])],
    play: [0, byHabit('cut to the line; a divider that is to slide in by hand takes 0.1 to 0.2 mm', [0, 0.2])],
    hold: ['glued', byHabit('the cheeks glue well, and nothing else holds them together')],
  };
}
function refuse(p: Place<Lap>, s: Lap): Refusal<Lap> | null {
  if (!(s.share > 0) || s.share > 1)
    return {
      cannot: 'the first part keeps a share between none and all',
      limit: s.share > 1 ? 1 : 0,
      asked: s.share,
      nearest: { share: 0.5 },
    };
  if (!(s.play >= 0 && s.play <= 2))
    return { cannot: 'the play in a trench is between nothing and 2 mm', limit: s.play > 2 ? 2 : 0, asked: s.play, nearest: { play: 0 } };
  const g = ground(p.meeting, s);
  if (!g) return refuseGround(p, s);
  const kept = Math.min(s.share, 1 - s.share) * g.thick;
  if (s.share < WHOLE && kept < LEAST)
    return {
      cannot: 'both parts must keep wood in the lap',
      limit: LEAST,
      asked: kept,
      ...(g.thick >= 2 * LEAST ? { nearest: { share: 0.5 } } : {}),
    };
  return refuseForm(g, s);
}
/** A notch in the face asked for may not open, or the first part may not stay whole. */
function refuseGround(p: Place<Lap>, s: Lap): Refusal<Lap> {
  const tries: Partial<Lap>[] = [{ notch: 'auto' }, { share: 0.5 }, { notch: 'auto', share: 0.5 }];
  const nearest = tries.find((t) => ground(p.meeting, { ...s, ...t }));
  const cannot = !nearest
    ? 'one part runs on round the other on every side, so no notch can open'
    : nearest.share === undefined
      ? `a notch in the ${s.notch} of the first part cannot open there`
      : 'the second part would be cut in two if the first stayed whole';
  return { cannot, limit: 0, asked: 0, ...(nearest ? { nearest } : {}) };
}
function refuseForm(g: Ground, s: Lap): Refusal<Lap> | null {
  if (s.form === 'mitred' && !mitreLine(g))
    return { cannot: 'a mitred lap needs a corner: one end of each part', limit: 0, asked: 0, nearest: { form: 'plain' } };
  if (s.form !== 'dovetailed') return null;
  const t = tongueOf(g, s.slope);
  if (!t)
    return {
      cannot: 'a dovetailed lap needs the end of the first part on the run of the second',
      limit: 0,
      asked: 0,
      nearest: { form: 'plain' },
    };
  if (!(s.slope >= 0.02 && s.slope <= 0.5))
    return {
      cannot: 'a tongue leans between 1 in 50 and 1 in 2',
      limit: s.slope < 0.02 ? 0.02 : 0.5,
      asked: s.slope,
      nearest: steepest(g),
    };
  const neck = t.width[1] - t.width[0] - 2 * t.inset;
  if (neck < LEAST) return { cannot: 'the tongue has no neck left at its shoulder', limit: LEAST, asked: neck, nearest: steepest(g) };
  return null;
}
/** 1 in 8, or what leaves half of the width at the neck. */
function steepest(g: Ground): Partial<Lap> {
  const t = tongueOf(g, 1);
  const most = t ? (t.width[1] - t.width[0]) / 4 / t.inset : 0;
  return most >= 0.02 ? { slope: Math.min(1 / 8, most) } : { form: 'plain' };
}
