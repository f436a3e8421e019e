import { type Axis, type Vec2, type Vec3, AXES, axisVec } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross, looking } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type Sharer, type Span, flatPoint, othersOf, patchAcross, spanOf } from '../shared-box.ts';
import { type Ground, type MitreLine, type Tongue, lostSpan, playOn } from './lay.ts';
import type { Lap } from './params.ts';

export type Drawn = {
  readonly g: Ground;
  readonly s: Lap;
  readonly cut: number;
  readonly mitre: MitreLine | null;
  readonly tongue: Tongue | null;
};
/** A wall of a part's notch: it stands across `axis`, at the end that `sign` tells. */
export type Wall = { readonly p: Sharer; readonly axis: Axis; readonly sign: 1 | -1 };
/** The walls of both notches against which the other part lies. */
export function walls({ g, mitre, tongue }: Drawn): Wall[] {
  const parts = [...(g.full ? [] : [g.over]), ...(mitre ? [] : [g.under])];
  return parts.flatMap((p) =>
    AXES.filter((k) => k !== g.c).flatMap((axis) =>
      ([-1, 1] as const)
        .filter((sign) => p.on[axis][sign > 0 ? 1 : 0])
        // Along the dovetailed tongue its flanks stand in place of walls.
        .filter(() => !(tongue && p === g.under && axis === tongue.across))
        .map((sign) => ({ p, axis, sign })),
    ),
  );
}
export function contacts(d: Drawn): Contact[] {
  const { mitre, tongue } = d;
  return [
    cheek(d),
    ...walls(d).map((w) => wall(d, w)),
    ...(mitre ? [mitreFace(d, mitre)] : []),
    ...(tongue ? [flank(d, tongue, true), flank(d, tongue, false)] : []),
  ];
}
/** The outline in which the two parts lie on each other. */
function lapped({ g, mitre, tongue }: Drawn): Vec2[] {
  const [u, v] = othersOf(g.c).map((k) => spanOf(g.s.box, k)) as [Span, Span];
  if (mitre) {
    const { inner, outer, out } = mitre;
    const own = (
      [
        [inner[0], outer[1]],
        [outer[0], inner[1]],
      ] as Vec2[]
    ).find((q) => (q[0] - inner[0]) * out[0] + (q[1] - inner[1]) * out[1] < 0);
    return [inner, outer, own ?? inner];
  }
  if (tongue) {
    const { run, shoulder, tip, width, inset } = tongue;
    const point = (along: number, across: number): Vec2 => flatPoint(g.c, run.axis, along, across);
    return [point(shoulder, width[0] + inset), point(tip, width[0]), point(tip, width[1]), point(shoulder, width[1] - inset)];
  }
  return [
    [u[0], v[0]],
    [u[1], v[0]],
    [u[1], v[1]],
    [u[0], v[1]],
  ];
}
function cheek(d: Drawn): Contact {
  const { g, s, cut } = d;
  const down: 1 | -1 = g.keep > 0 ? -1 : 1;
  const dir = axisVec(g.c, down);
  const over = g.full ? { feature: 'stock', face: faceToward(g.over.side, dir) } : { feature: 'notch', face: 'cheek' };
  return flatContact({
    name: 'cheeks of the lap',
    a: { role: 'over', ...over },
    b: { role: 'under', feature: 'notch', face: 'cheek' },
    on: patchAcross(g.c, down, cut, lapped(d)),
    fit: 'slip',
    hold: s.hold,
    glue: glueAcross(dir, g.over.side.grain, g.under.side.grain),
    grain: g.over.side.grain,
  });
}
/** The edge or end of the other part against a wall of this part's notch. */
function wall(d: Drawn, { p, axis, sign }: Wall): Contact {
  const { g, s, cut } = d;
  const other = p === g.over ? g.under : g.over;
  const dir: Vec3 = axisVec(axis, sign);
  const span = (k: Axis): Span => (k === g.c ? clip(lostSpan(g, p, cut), spanOf(g.s.box, k)) : spanOf(g.s.box, k));
  const [u, v] = othersOf(axis);
  const face = faceToward(other.side, dir);
  return flatContact({
    name: `${face} of the ${other.role === 'over' ? 'first' : 'second'} part in its notch`,
    a: { role: other.role, feature: 'stock', face },
    b: { role: p.role, feature: 'notch', face: `wall ${faceToward(p.side, dir)}` },
    on: flatAt(looking(axis, sign), spanOf(g.s.box, axis)[sign > 0 ? 1 : 0], span(u), span(v)),
    meant: s.form === 'plain' ? playOn(p, axis, s.play) : 0,
    fit: 'slip',
    hold: 'dry',
    glue: glueAcross(dir, g.over.side.grain, g.under.side.grain),
  });
}
const clip = (a: Span, b: Span): Span => [Math.max(a[0], b[0]), Math.min(a[1], b[1])];
/** What the first part keeps of the shared thickness. */
const keptShare = ({ g, cut }: Drawn): Span => {
  const [low, high] = spanOf(g.s.box, g.c);
  return g.keep > 0 ? [cut, high] : [low, cut];
};
/** A flat face across the lap's plane: from p to q in that plane, its normal out of the first part's wood. */
function upright(d: Drawn, p: Vec2, q: Vec2, n: Vec2) {
  const [u, v] = othersOf(d.g.c);
  const space = (w: Vec2, c: number): Vec3 => AXES.map((k) => (k === u ? w[0] : k === v ? w[1] : c)) as unknown as Vec3;
  const kept = keptShare(d);
  const long = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const patch: Vec2[] = [
    [0, 0],
    [long, 0],
    [long, kept[1] - kept[0]],
    [0, kept[1] - kept[0]],
  ];
  const along = space([(q[0] - p[0]) / long, (q[1] - p[1]) / long], 0);
  return { frame: { o: space(p, kept[0]), x: along, y: axisVec(d.g.c), z: space(n, 0) }, patch };
}
const mitreFace = (d: Drawn, m: MitreLine): Contact => {
  const on = upright(d, m.inner, m.outer, m.out);
  return flatContact({
    name: 'mitre on the face',
    a: { role: 'over', feature: 'mitre', face: 'mitre' },
    b: { role: 'under', feature: 'notch', face: 'mitre' },
    on,
    fit: 'slip',
    hold: 'dry',
    glue: glueAcross(on.frame.z, d.g.over.side.grain, d.g.under.side.grain),
  });
};
function flank(d: Drawn, t: Tongue, low: boolean): Contact {
  const { g } = d;
  const point = (along: number, across: number): Vec2 => flatPoint(g.c, t.run.axis, along, across);
  const [edge, inward] = low ? [t.width[0], 1] : [t.width[1], -1];
  const [p, q] = [point(t.shoulder, edge + inward * t.inset), point(t.tip, edge)];
  const long = Math.hypot(t.tip - t.shoulder, t.inset);
  const way = Math.sign(t.tip - t.shoulder);
  const n = point((-way * t.inset) / long, (-inward * Math.abs(t.tip - t.shoulder)) / long);
  const on = upright(d, p, q, n);
  const name = `flank ${faceToward(g.over.side, axisVec(t.across, low ? -1 : 1))}`;
  return flatContact({
    name: `${name} of the dovetailed tongue`,
    a: { role: 'over', feature: name, face: 'flank' },
    b: { role: 'under', feature: 'notch', face: name },
    on,
    fit: 'tap',
    hold: d.s.hold,
    glue: glueAcross(on.frame.z, g.over.side.grain, g.under.side.grain),
    grain: g.over.side.grain,
  });
}
