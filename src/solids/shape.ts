/** A feature's shape as a body in the part's record frame: one cutter, or one added tongue. */
import { type Box, cornersOf, outBox } from '../geom/box.ts';
import { type Frame, quarterTurn } from '../geom/frame.ts';
import { type Vec2, type Vec3, add, cross, dot, scale, sub, unit } from '../geom/vec3.ts';
import type { Cutter } from './cutter.ts';
import { type Body, extrude, kernel, revolve, warped } from './kernel.ts';
import type { Outline } from './outline.ts';
import { readBody } from './read.ts';
import { own } from './scope.ts';

/** A body in the record frame, and the kernel's id of the original whose faces it carries. */
export type Made = { readonly body: Body; readonly original: number };

/**
 * The cutter as a body owned by the open scope; null for a half-space that misses `room` (a box round all the wood), a text
 * when the loft folds over itself.
 */
export function bodyOf(cutter: Cutter, room: Box): Made | null | string {
  if (cutter.kind === 'half') return slab(cutter.normal, cutter.off, room);
  if (cutter.kind === 'turned') return stood(snapped({ body: own(revolve(cutter.outline.map((r) => r.points))) }, 1e6), cutter.at);
  const { at, outline, to, from, end } = cutter;
  const base = { ...at, o: add(at.o, scale(at.z, from)) };
  if (to) return loft(outline, to, end - from, base);
  const r = rectangleOf(outline);
  if (!r)
    return stood(
      {
        body: own(
          extrude(
            outline.map((ring) => ring.points),
            end - from,
          ),
        ),
      },
      base,
    );
  const low = add(base.o, add(scale(base.x, r[0]), scale(base.y, r[1])));
  return blockAt([r[2] - r[0], r[3] - r[1], end - from], { ...base, o: low });
}

/** A box of this size with its low corner at the origin of `f`. */
function blockAt(size: Vec3, f: Frame): Made {
  const box = quarterTurn(f) && outBox(f, { min: [0, 0, 0], max: size });
  return box ? blockOf({ min: to9(box.min), max: to9(box.max) }) : stood({ body: own(kernel().Manifold.cube([...size])) }, f);
}
/** A box along the axes, its six planes where they are said to be to the last bit. */
export function blockOf({ min, max }: Box): Made {
  const size = sub(max, min);
  const cube = own(kernel().Manifold.cube([...size]));
  const there = own(cube.translate([...min]));
  const exact = ([0, 1, 2] as const).every((k) => min[k] + size[k] === max[k]);
  return { body: exact ? there : snapped({ body: there }, 1e9).body, original: cube.originalID() };
}
const to9 = (v: Vec3): Vec3 => [round(v[0], 1e9), round(v[1], 1e9), round(v[2], 1e9)];
const round = (n: number, grain: number): number => Math.round(n * grain) / grain;

type Loose = { readonly body: Body; readonly original?: number };
function stood({ body, original = body.originalID() }: Loose, f: Frame): Made {
  return { body: snapped({ body: placed(body, f) }, 1e9).body, original };
}
/**
 * Corners on a grid of 1/grain mm. A size added to a place misses the far face by a last bit, and two faces that should lie on
 * each other with that bit between them come out as a sheet of air or of wood: found by trial, about once in a hundred.
 */
function snapped({ body, original = body.originalID() }: Loose, grain: number): Made {
  const snap = (corners: Float64Array): void => corners.forEach((n, i) => (corners[i] = round(n, grain)));
  return { body: own(warped(body, snap)), original };
}
/** A body moved from frame `f` to the frame that f is given in. */
export function placed(body: Body, f: Frame): Body {
  const { x, y, z, o } = f;
  return own(body.transform([...x, 0, ...y, 0, ...z, 0, ...o, 1]));
}
/** The rectangle along the axes that an outline is, which the kernel makes six times faster; null for any other. */
function rectangleOf(outline: Outline): readonly [number, number, number, number] | null {
  const points = outline[0]?.points ?? [];
  if (outline.length !== 1 || points.length !== 4) return null;
  const xs = new Set(points.map((p) => p[0]));
  const ys = new Set(points.map((p) => p[1]));
  if (xs.size !== 2 || ys.size !== 2) return null;
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** All of `room` with normal·p >= off, and a little more round it; null where there is nothing. */
function slab(normal: Vec3, off: number, room: Box): Made | null {
  const z = normal;
  const k = z.map(Math.abs).indexOf(Math.min(...z.map(Math.abs)));
  const x = unit(sub(axes[k as 0 | 1 | 2], scale(z, dot(axes[k as 0 | 1 | 2], z))));
  const y = cross(z, x);
  const corners = cornersOf(room);
  const span = (a: Vec3): [number, number] => {
    const all = corners.map((c) => dot(a, c));
    return [Math.min(...all) - 10, Math.max(...all) + 10];
  };
  const [x0, x1] = span(x);
  const [y0, y1] = span(y);
  const top = span(z)[1];
  if (top - 10 - off <= 1e-9) return null;
  const o = add(add(scale(x, x0), scale(y, y0)), scale(z, off));
  return blockAt([x1 - x0, y1 - y0, top - off], { o, x, y, z });
}
const axes: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Straight over from one outline to another with as many points: extruded, then the far end's points moved, in double precision. */
function loft(outline: Outline, to: Outline, height: number, base: Frame): Made | string {
  const straight = own(
    extrude(
      outline.map((r) => r.points),
      height,
    ),
  );
  const goal = new Map<string, Vec2>();
  outline.forEach((ring, i) => ring.points.forEach((p, k) => goal.set(p.join(), to[i]?.points[k] ?? p)));
  const body = own(
    warped(straight, (v) => {
      for (let i = 0; i < v.length / 3; i++) {
        if (v[3 * i + 2] !== height) continue;
        const p = goal.get(`${v[3 * i]},${v[3 * i + 1]}`);
        if (!p) throw new Error(`the kernel moved a corner of a profile to (${v[3 * i]}, ${v[3 * i + 1]})`);
        v[3 * i] = p[0];
        v[3 * i + 1] = p[1];
      }
    }),
  );
  return folded(body, height)
    ? 'goes over to a profile of too different a form: its far end folds over itself'
    : stood({ body, original: straight.originalID() }, base);
}
/** Does a triangle of the far end, which was cut up to suit the near one, turn over there? */
function folded(body: Body, height: number): boolean {
  const { positions: p, triangles: t } = readBody(body);
  const at = (i: number): readonly [number, number, number] => [p[3 * i] ?? 0, p[3 * i + 1] ?? 0, p[3 * i + 2] ?? 0];
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [at(t[i] ?? 0), at(t[i + 1] ?? 0), at(t[i + 2] ?? 0)];
    if (a[2] === height && b[2] === height && c[2] === height && (b[0] - a[0]) * (c[1] - a[1]) <= (b[1] - a[1]) * (c[0] - a[0]))
      return true;
  }
  return false;
}
