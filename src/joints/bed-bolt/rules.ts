import { outDir, outPoint } from '../../geom/frame.ts';
import { type Vec3, cross, dot, length, sub, unit } from '../../geom/vec3.ts';
import type { Place, Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { type Ground, boltYs, ground, middleOf, nutAcross, nutAlong, stubs, tipIn } from './lay.ts';
import type { BedBolt } from './params.ts';

const PLAY = 0.05;
type Said = Omit<Warning, 'rule' | 'unit' | 'source'>;
const rule = (
  id: string,
  words: string,
  say: (g: Ground, s: BedBolt, p: Place<BedBolt>) => Said | null,
  tells?: 'collision',
): Rule<BedBolt> => ({
  id,
  words,
  ...(tells ? { tells } : {}),
  run: (p, s) => {
    const g = ground(p.meeting);
    const said = g && say(g, s, p);
    return said ? [{ rule: id, unit: 'mm', source: HABIT, ...said }] : [];
  },
});
/** Wood between a bolt's hole and the nearer edge of the nearest stub tenon, mm; below 0 it runs into it. */
function clearOf(g: Ground, s: BedBolt): number {
  const r = s.hole / 2;
  return Math.min(...boltYs(g, s).flatMap((y) => stubs(g, s).map(([a, b]) => Math.max(a - y, y - b) - r)));
}
/** Distance of two straight lines, and of two parallel ones. */
function linesApart(p: Vec3, u: Vec3, q: Vec3, v: Vec3): number {
  const n = cross(u, v);
  const d = sub(q, p);
  return length(n) < 1e-6 ? length(cross(d, unit(u))) : Math.abs(dot(d, unit(n)));
}
/** How near the bolts of another rail in the same post come to these, axis to axis, mm. */
function nearestSibling(g: Ground, s: BedBolt, p: Place<BedBolt>): number {
  const mine = boltYs(g, s).map((y): Vec3 => [middleOf(g.x), y, 0]);
  return Math.min(
    ...p.siblings.flatMap((m) => {
      const other = ground(m);
      if (!other) return [];
      return boltYs(other, s).flatMap((y) => {
        const q = outPoint(m.frame, [middleOf(other.x), y, 0]);
        return mine.map((at) => linesApart(at, [0, 0, 1], q, outDir(m.frame, [0, 0, 1])));
      });
    }),
  );
}
const at = (g: Ground, s: BedBolt, z: number): Vec3 => [middleOf(g.x), boltYs(g, s)[0] ?? 0, z];

export const rules: readonly Rule<BedBolt>[] = [
  rule('bolt hole meets a tenon', 'at least 4 mm of wood lie between a bolt’s hole and a tenon', (g, s) => {
    const clear = clearOf(g, s);
    if (clear >= 4 - PLAY) return null;
    return {
      grade: 'trouble',
      title: clear < 0 ? 'A bolt hole runs into a tenon' : 'A bolt hole comes near a tenon',
      why:
        clear < 0
          ? `The hole takes {mm:${-clear}} of a stub tenon and of the wood beside its mortise.`
          : `Only {mm:${clear}} of wood is left between them; it breaks when the bolt is drawn up.`,
      measured: clear,
      limit: 4,
      at: at(g, s, 0),
      roles: ['rail', 'post'],
      cures: [{ label: 'let bolts and tenons follow the rail', set: { stub_off: null, stub_width: null, off: null, apart: null } }],
    };
  }),
  rule('nut near the end of the rail', 'at least 30 mm of wood lie between a nut and the end of the rail', (_g, s) => {
    const left = s.back - nutAlong(s) / 2;
    if (left >= 30 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The nut lies near the end of the rail',
      why: `{mm:${left}} of wood is left before it; drawn up hard, or when the bed is racked, that shears out along the grain.`,
      measured: left,
      limit: 30,
      at: [0, 0, -s.back],
      roles: ['rail'],
      cures: [{ label: 'let nut and bolt follow the parts', set: { back: null, length: null, depth: null } }],
    };
  }),
  rule('nut near the face', 'at least 3 mm of wood lie behind a nut’s pocket', (g, s): Said | null => {
    const left = g.thick / 2 - nutAcross(s) / 2 - (s.nut === 'square' ? 1 : 0);
    if (left >= 3 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The pocket of the nut nearly comes through the rail',
      why: `{mm:${left}} of the rail is left behind it.`,
      measured: left,
      limit: 3,
      at: [0, 0, -s.back],
      roles: ['rail'],
      cures: [
        { label: 'let the nut follow the bolt', set: { nut_size: null, nut_long: null } },
        { label: 'let bolt and nut follow the rail', set: { diameter: null, hole: null, bore: null, nut_size: null, nut_long: null } },
      ],
    };
  }),
  rule('bolt hole shallow', 'a bolt’s hole goes at least 3 mm past its tip', (g, s) => {
    const past = s.depth - tipIn(g, s);
    if (past >= 3 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The bolt comes to the bottom of its hole',
      why: `{mm:${past}} is left before its tip; when the wood shrinks it can be drawn no tighter.`,
      measured: past,
      limit: 3,
      at: at(g, s, -s.depth),
      roles: ['rail'],
      cures: [{ label: 'let the hole follow the bolt', set: { depth: null } }],
    };
  }),
  rule('little wood under the bolt head', 'at least 15 mm of the post lie under a bolt’s head', (g, s) => {
    const left = g.deep - s.sink;
    if (left >= 15 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'Little of the post is left under the head of the bolt',
      why: `{mm:${left}} of wood carries all that the bolt draws.`,
      measured: left,
      limit: 15,
      at: at(g, s, g.gap + left),
      roles: ['post'],
      cures: [{ label: 'let the counterbore follow the post', set: { sink: null, length: null, depth: null, back: null } }],
    };
  }),
  rule(
    'bolts meet in the post',
    'bolts of two rails pass each other in a post with at least 4 mm of wood between them',
    (g, s, p) => {
      const wall = nearestSibling(g, s, p) - s.hole;
      if (!(wall < 4 - PLAY)) return null;
      return {
        grade: wall < 0 ? 'stops' : 'trouble',
        title: wall < 0 ? 'Two bolts meet in the post' : 'Two bolts come near each other in the post',
        why: `Their holes ${wall < 0 ? `run {mm:${-wall}} into each other` : `leave {mm:${wall}} of wood between them`}. Give each rail a joint of its own, the bolts of one a little higher.`,
        measured: wall,
        limit: 4,
        at: at(g, s, g.gap + g.deep / 2),
        roles: ['post', 'rail'],
        cures: [],
      };
    },
    'collision',
  ),
];
