/** The eye: where it stands, what it aims at, and how it gets from one stand to the next. Moves end exactly. */
import { OrthographicCamera, PerspectiveCamera, Vector3, type Camera } from 'three';
import { type Vec3, add } from '../../src/geom/vec3.ts';
import type { Seen } from '../look/view.ts';
import {
  type Fit,
  type Room,
  type Size,
  type Turn,
  FIELD,
  HIGHEST,
  LOWEST,
  TURNS,
  axesOf,
  between,
  ease,
  eyeAt,
  fitTo,
  onSheet,
  seenAt,
} from './camera.ts';

const MOVE_MS = 320;
type Pan = readonly [number, number];
type Tween = {
  readonly from: Turn;
  readonly to: Turn;
  readonly fit0: Fit;
  readonly fit1: Fit;
  readonly zoom0: number;
  readonly pan0: Pan;
  readonly began: number;
};

export type Rig = {
  readonly turn: () => Turn;
  readonly seen: () => Seen;
  /** Moves on with a running change of stand; true while there is more to come. */
  readonly run: (now: number) => boolean;
  /** The camera as it stands; `radius` mm round the target holds all there is to see. */
  readonly camera: (radius: number) => Camera;
  readonly place: (p: Vec3) => Pan;
  readonly pxPerMm: (p: Vec3) => number;
  readonly aim: (target: Vec3) => void;
  /** Stands so that all of the piece is seen, at once. */
  readonly fit: () => void;
  readonly begin: () => void;
  readonly goTo: (turn: Turn) => void;
  readonly home: () => void;
  readonly setSeen: (seen: Seen) => void;
  readonly setSize: (size: Size, room: Room) => void;
  readonly turnBy: (round: number, up: number) => void;
  readonly moveBy: (dx: number, dy: number) => void;
  readonly zoomBy: (by: number, x: number, y: number) => void;
};
const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** `corners`: the corners of all that must be seen, as it stands now. */
export function makeRig(corners: () => readonly Vec3[]): Rig {
  const deep = new PerspectiveCamera((FIELD * 180) / Math.PI);
  const flat = new OrthographicCamera();
  for (const c of [deep, flat]) c.matrixAutoUpdate = false;
  let size: Size = { width: 1, height: 1 };
  let room: Room = { x: 0, y: 0, width: 1, height: 1 };
  let seen: Seen = 'freely';
  let turn: Turn = TURNS.freely;
  let free: Turn = TURNS.freely;
  let fit: Fit = { reach: 1000, shift: [0, 0] };
  let target: Vec3 = [0, 0, 0];
  let zoom = 1;
  let pan: Pan = [0, 0];
  let tween: Tween | null = null;

  const isFlat = (): boolean => seen !== 'freely';
  const aspect = (): number => size.width / Math.max(1, size.height);
  const shift = (): Pan => [fit.shift[0] + pan[0], fit.shift[1] + pan[1]];
  function fitFor(t: Turn): Fit {
    const axes = axesOf(t);
    const points = corners().map((c) => seenAt(c, target, axes));
    return points.length ? fitTo(points, room, size, isFlat()) : fit;
  }
  function centre(): void {
    zoom = 1;
    pan = [0, 0];
    tween = null;
  }
  const place = (p: Vec3): Pan => {
    const [x, y] = onSheet(seenAt(p, target, axesOf(turn)), fit.reach / zoom, aspect(), isFlat());
    const [sx, sy] = shift();
    return [((x + sx + 1) / 2) * size.width, ((1 - y - sy) / 2) * size.height];
  };
  function goTo(to: Turn): void {
    const fit1 = fitFor(to);
    if (!still()) {
      tween = { from: turn, to, fit0: fit, fit1, zoom0: zoom, pan0: pan, began: performance.now() };
      return;
    }
    centre();
    turn = to;
    fit = fit1;
  }
  return {
    turn: () => turn,
    seen: () => seen,
    run(now) {
      if (!tween) return false;
      const t = Math.min(1, Math.max(0, (now - tween.began) / MOVE_MS));
      const k = t >= 1 ? 1 : ease(t);
      const mixed = (a: number, b: number): number => a + (b - a) * k;
      const { from, to, fit0, fit1, zoom0, pan0 } = tween;
      turn = between(from, to, k);
      fit = {
        reach: Math.exp(mixed(Math.log(fit0.reach), Math.log(fit1.reach))),
        shift: [mixed(fit0.shift[0], fit1.shift[0]), mixed(fit0.shift[1], fit1.shift[1])],
      };
      zoom = mixed(zoom0, 1);
      pan = [mixed(pan0[0], 0), mixed(pan0[1], 0)];
      if (t >= 1) tween = null;
      return tween !== null;
    },
    camera(radius) {
      const axes = axesOf(turn);
      const reach = fit.reach / zoom;
      const c = isFlat() ? flat : deep;
      const eye = eyeAt(target, axes, isFlat() ? radius * 2 : reach);
      c.matrix.makeBasis(new Vector3(...axes.right), new Vector3(...axes.up), new Vector3(...axes.toEye)).setPosition(...eye);
      c.updateMatrixWorld(true);
      const e = c.projectionMatrix.elements;
      const [sx, sy] = shift();
      if (isFlat()) {
        flat.top = reach / 2;
        flat.bottom = -flat.top;
        flat.right = flat.top * aspect();
        flat.left = -flat.right;
        flat.near = 0;
        flat.far = radius * 4;
        flat.updateProjectionMatrix();
        [e[12], e[13]] = [sx, sy];
      } else {
        deep.aspect = aspect();
        deep.near = Math.max(10, reach - radius);
        deep.far = reach + radius;
        deep.updateProjectionMatrix();
        [e[8], e[9]] = [-sx, -sy];
      }
      c.projectionMatrixInverse.copy(c.projectionMatrix).invert();
      return c;
    },
    place,
    pxPerMm(p) {
      const [a, b] = [place(p), place(add(p, axesOf(turn).right))];
      return Math.hypot(a[0] - b[0], a[1] - b[1]);
    },
    aim: (next) => (target = next),
    fit() {
      if (!tween) fit = fitFor(turn);
    },
    begin() {
      turn = TURNS[seen];
      centre();
    },
    goTo,
    home: () => goTo(TURNS[seen]),
    setSeen(next) {
      if (next === seen) return;
      if (seen === 'freely') free = turn;
      seen = next;
      // Between the two kinds of eye there is no smooth way: it is a jump, and it lands exactly.
      turn = next === 'freely' ? free : TURNS[next];
      centre();
      fit = fitFor(turn);
    },
    setSize(next, nextRoom) {
      size = next;
      room = nextRoom;
      fit = fitFor(turn);
    },
    turnBy(round, up) {
      if (isFlat()) return;
      tween = null;
      turn = { round: turn.round + round, up: Math.min(HIGHEST, Math.max(LOWEST, turn.up + up)) };
    },
    moveBy(dx, dy) {
      tween = null;
      pan = [pan[0] + (2 * dx) / size.width, pan[1] - (2 * dy) / size.height];
    },
    zoomBy(by, x, y) {
      tween = null;
      const next = Math.min(12, Math.max(0.4, zoom * by));
      const k = next / zoom;
      const [sx, sy] = shift();
      const [px, py] = [(x / size.width) * 2 - 1, 1 - (y / size.height) * 2];
      zoom = next;
      pan = [pan[0] + (px - sx) * (1 - k), pan[1] + (py - sy) * (1 - k)];
    },
  };
}
