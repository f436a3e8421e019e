/** The drawing of the piece: one scene, drawn only when something changed. No React in here. */
import { LinearSRGBColorSpace, OrthographicCamera, PerspectiveCamera, Scene, Vector3, Vector4, WebGLRenderer, type Camera } from 'three';
import { type Box, cornersOf, outBox, unionBox } from '../../src/geom/box.ts';
import { moved, outPoint } from '../../src/geom/frame.ts';
import { type Axis, type Vec3, add, axisIndex, axisVec, dot, scale, unit } from '../../src/geom/vec3.ts';
import type { Seen } from '../look/view.ts';
import type { Scene as PieceScene } from '../results/store.ts';
import { type Fit, type Room, type Size, type Turn, FIELD, HIGHEST, LOWEST, TURNS, axesOf, between, ease, eyeAt, fitTo, onSheet, seenAt } from './camera.ts';
import { makeCaps } from './caps.ts';
import { isDark, themeColour } from './colours.ts';
import { type Shot, type ShotAsk, shoot } from './lensShot.ts';
import { CUT, FILL, FRONT_FILL, FRONT_LINE, GROUND, LINE, type Thing, makeParts, matrixOf } from './parts.ts';
import { pickPart } from './pick.ts';
import type { Plane } from './section.ts';
import { makeShadow } from './shadow.ts';
import { lightness, toneOf } from './species.ts';
import type { Shared } from './woodShader.ts';

export type Looks = {
  /** Parts that keep their wood; null: all do. */
  readonly wood: ReadonlySet<string> | null;
  /** Parts drawn in front of all others. */
  readonly front: ReadonlySet<string>;
  /** Parts with a heavier outline. */
  readonly heavy: ReadonlySet<string>;
  /** Parts that are shown at all; null: all. */
  readonly only: ReadonlySet<string> | null;
};
export type Stage = {
  readonly setScene: (scene: PieceScene | null) => void;
  readonly setPose: (offsets: ReadonlyMap<string, Vec3>) => void;
  readonly setLooks: (looks: Looks) => void;
  readonly setCut: (cut: { readonly axis: Axis; readonly at: number } | null) => void;
  readonly setSeen: (seen: Seen) => void;
  readonly setSize: (size: Size, room: Room) => void;
  readonly setTheme: () => void;
  readonly turnBy: (round: number, up: number) => void;
  readonly moveBy: (dx: number, dy: number) => void;
  readonly zoomBy: (by: number, x: number, y: number) => void;
  readonly home: () => void;
  readonly pick: (x: number, y: number) => string | null;
  /** Where a point of the piece falls on the sheet, px; whether it is turned away is not asked. */
  readonly place: (p: Vec3) => readonly [number, number];
  /** Middle of a part as it stands now, and where that falls. */
  readonly middle: (path: string) => Vec3 | null;
  /** Two points well inside a part near the ends of its grain, as it stands now. */
  readonly ends: (path: string) => readonly Vec3[];
  /** Does the cut take this place away? */
  readonly isAway: (p: Vec3) => boolean;
  readonly pxPerMm: (p: Vec3) => number;
  readonly seen: () => Seen;
  readonly shoot: (ask: ShotAsk) => Shot | null;
  readonly redraw: () => void;
  readonly memory: () => { readonly geometries: number; readonly textures: number; readonly programs: number };
  readonly dispose: () => void;
};
const MOVE_MS = 320;
/** A frame that takes longer than this makes turning jerky. */
const SLOW_MS = 70;
const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Throws where the browser gives no WebGL2. `drawn` is called after each frame. */
export function makeStage(canvas: HTMLCanvasElement, drawn: () => void): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true, premultipliedAlpha: true, powerPreference: 'default' });
  renderer.autoClear = false;
  // Our programs write screen colours themselves; with one answer for canvas and targets each is compiled once, not twice.
  renderer.outputColorSpace = LinearSRGBColorSpace;
  // Asking for errors waits for the compiler, seconds on a machine without a graphics card.
  renderer.debug.checkShaderErrors = false;
  renderer.setClearColor(0x000000, 0);
  const shared: Shared = {
    uClip: { value: new Vector4(0, 0, 1, 1e9) },
    uClipped: { value: 0 },
    uKey: { value: new Vector3(0, 0, 1) },
    uSheet: { value: new Vector3(1, 1, 1) },
    uExposure: { value: 1 },
    uSize: { value: [1, 1] },
    uPixel: { value: 1 },
  };
  const scene = new Scene();
  scene.matrixWorldAutoUpdate = true;
  const parts = makeParts(shared);
  const caps = makeCaps(shared, renderer);
  const shadow = makeShadow(GROUND);
  scene.add(shadow.mesh, parts.group, caps.group);
  const deep = new PerspectiveCamera((FIELD * 180) / Math.PI);
  const flat = new OrthographicCamera();

  let size: Size = { width: 1, height: 1 };
  let room: Room = { x: 0, y: 0, width: 1, height: 1 };
  let seen: Seen = 'freely';
  let turn: Turn = TURNS.freely;
  let free: Turn = TURNS.freely;
  let fit: Fit = { reach: 1000, shift: [0, 0] };
  let target: Vec3 = [0, 0, 0];
  let zoom = 1;
  let pan: readonly [number, number] = [0, 0];
  let piece: PieceScene | null = null;
  let offsets: ReadonlyMap<string, Vec3> = new Map();
  let looks: Looks = { wood: null, front: new Set(), heavy: new Set(), only: null };
  let cut: { readonly axis: Axis; readonly at: number } | null = null;
  let plane: Plane | null = null;
  let colours = readColours();
  let stale = { shadow: true, cut: true, looks: true };
  let frame = 0;
  let tween: { from: Turn; to: Turn; fit0: Fit; fit1: Fit; zoom0: number; pan0: readonly [number, number]; began: number } | null = null;

  const isFlat = (): boolean => seen !== 'freely';
  const things = (): Iterable<Thing> => parts.things.values();
  const shown = (t: Thing): boolean => looks.only === null || looks.only.has(t.part.path);

  function invalidate(): void {
    if (!frame) frame = requestAnimationFrame(draw);
  }
  /** Box of what is shown as it stands now. */
  function boxNow(): Box | null {
    let box: Box | null = null;
    for (const t of things()) {
      if (!shown(t)) continue;
      const own = outBox(t.frame, t.part.stock);
      box = box ? unionBox(box, own) : own;
    }
    return box;
  }
  function fitFor(t: Turn): Fit {
    const corners: Vec3[] = [];
    const axes = axesOf(t);
    for (const thing of things()) if (shown(thing)) for (const c of cornersOf(outBox(thing.frame, thing.part.stock))) corners.push(seenAt(c, target, axes));
    return corners.length ? fitTo(corners, room, size, isFlat()) : fit;
  }
  function aim(): void {
    const box = looks.only ? boxNow() : (piece?.piece.box ?? boxNow());
    if (box) target = scale(add(box.min, box.max), 0.5);
  }
  function readColours() {
    return { sheet: themeColour('--sheet'), ink: themeColour('--ink'), well: themeColour('--well'), dark: isDark() };
  }
  function applyTheme(): void {
    colours = readColours();
    shared.uSheet.value.set(...colours.sheet);
    shared.uExposure.value = colours.dark ? 0.86 : 1;
    shadow.darken(colours.dark ? 1.25 : 0.8);
    caps.ink([0.1, 0.07, 0.05]);
    stale.looks = true;
    invalidate();
  }
  /** Wood, heat and line weights of each part by how it is looked at. */
  function applyLooks(): void {
    stale.looks = false;
    for (const t of things()) {
      const path = t.part.path;
      const wood = looks.wood === null || looks.wood.has(path);
      const heavy = looks.heavy.has(path);
      const front = looks.front.has(path);
      const visible = shown(t);
      t.fill.visible = t.line.visible = visible;
      set(t.fill, 'uWood', wood ? 1 : 0);
      set(t.fill, 'uHeat', heavy && wood ? 1 : 0);
      t.fill.layers.set(FILL);
      t.line.layers.set(LINE);
      if (front) {
        t.fill.layers.enable(FRONT_FILL);
        t.line.layers.enable(FRONT_LINE);
      }
      // A dark wood on a dark sheet gets its outline in chalk.
      const chalk = colours.dark && wood && lightness(toneOf(t.part.wood).mean) < 0.55;
      const ink = wood ? (chalk ? [0.97, 0.98, 0.98] : [0.11, 0.07, 0.045]) : colours.ink;
      (t.line.material.uniforms['uInk']?.value as Vector3).set(ink[0] ?? 0, ink[1] ?? 0, ink[2] ?? 0);
      set(t.line, 'uHeavy', heavy ? 2.5 : wood ? 1.15 : 1);
      set(t.line, 'uHeavyAlpha', heavy ? 1 : wood ? (chalk ? 0.45 : 0.8) : 0.55);
      set(t.line, 'uFineAlpha', wood ? (chalk ? 0.28 : 0.5) : 0.3);
      t.line.renderOrder = heavy ? 7 : wood ? 6 : 5;
    }
  }
  const set = (o: Thing['fill'] | Thing['line'], name: string, value: unknown): void => {
    const u = o.material.uniforms[name];
    if (u) u.value = value;
  };
  function applyPose(): void {
    for (const t of things()) {
      const by = offsets.get(t.part.path);
      t.frame = by ? moved(t.part.frame, by) : t.part.frame;
      for (const o of [t.fill, t.line]) {
        matrixOf(t.frame, o.matrix);
        o.matrixWorldNeedsUpdate = true;
      }
    }
    stale.shadow = stale.cut = true;
  }
  /** The cut takes away what stands towards the eye. */
  function planeNow(): Plane | null {
    const box = boxNow();
    if (!cut || !box) return null;
    const i = axisIndex(cut.axis);
    const sign = dot(axisVec(cut.axis), axesOf(turn).toEye) >= -1e-9 ? 1 : -1;
    const share = Math.min(0.9999, Math.max(0.0001, cut.at));
    const at = box.min[i] + share * (box.max[i] - box.min[i]);
    return { normal: axisVec(cut.axis, sign), at: sign * at };
  }
  function applyCut(): void {
    const next = planeNow();
    const same = plane && next && plane.at === next.at && dot(plane.normal, next.normal) > 0.5;
    if (!stale.cut && (same || (!plane && !next))) return;
    stale.cut = false;
    plane = next;
    shared.uClipped.value = plane ? 1 : 0;
    if (plane) shared.uClip.value.set(...plane.normal, plane.at);
    caps.set([...things()].filter(shown), plane);
  }
  function camera(): Camera {
    const aspect = size.width / Math.max(1, size.height);
    const axes = axesOf(turn);
    const reach = fit.reach / zoom;
    const box = boxNow();
    const radius = box ? Math.hypot(...[0, 1, 2].map((i) => Math.max(Math.abs((box.max[i] ?? 0) - (target[i] ?? 0)), Math.abs((box.min[i] ?? 0) - (target[i] ?? 0))))) + 400 : 1000;
    const [sx, sy] = shiftNow();
    const c = isFlat() ? flat : deep;
    const eye = eyeAt(target, axes, isFlat() ? radius * 2 : reach);
    c.position.set(...eye);
    c.matrixAutoUpdate = false;
    c.matrix.makeBasis(new Vector3(...axes.right), new Vector3(...axes.up), new Vector3(...axes.toEye)).setPosition(c.position);
    c.updateMatrixWorld(true);
    if (c === deep) {
      deep.aspect = aspect;
      deep.near = Math.max(10, reach - radius);
      deep.far = reach + radius;
      deep.updateProjectionMatrix();
      const e = deep.projectionMatrix.elements;
      e[8] = -sx;
      e[9] = -sy;
    } else {
      flat.top = reach / 2;
      flat.bottom = -reach / 2;
      flat.right = (reach / 2) * aspect;
      flat.left = -flat.right;
      flat.near = 0;
      flat.far = radius * 4;
      flat.updateProjectionMatrix();
      const e = flat.projectionMatrix.elements;
      e[12] = sx;
      e[13] = sy;
    }
    c.projectionMatrixInverse.copy(c.projectionMatrix).invert();
    return c;
  }
  const shiftNow = (): readonly [number, number] => [fit.shift[0] * (isFlat() ? 1 : 1) + pan[0], fit.shift[1] + pan[1]];

  // A machine without a graphics card draws at half the fineness while something moves, and fully once it rests.
  let rough = false;
  let last = 0;
  let slow = 0;
  let resting: ReturnType<typeof setTimeout> | undefined;
  /** Something moves by hand or by itself: `draw` may be called many times in a row. */
  function moving(): void {
    if (slow > SLOW_MS && !rough) setRough(true);
    clearTimeout(resting);
    resting = setTimeout(() => {
      last = 0;
      if (rough) setRough(false);
    }, 250);
    invalidate();
  }
  function setRough(next: boolean): void {
    rough = next;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio || 1) * (rough ? 0.5 : 1));
    invalidate();
  }
  function measure(now: number): void {
    // Frames one after the other while moving tell how long one takes; a rough one would have taken four times that.
    const took = (now - last) * (rough ? 3 : 1);
    if (last && now - last < 3000) slow = slow ? slow * 0.6 + took * 0.4 : took;
    last = now;
  }
  function draw(now: number): void {
    frame = 0;
    if (renderer.getContext().isContextLost()) return;
    measure(now);
    if (tween) runTween(now);
    if (stale.looks) applyLooks();
    applyCut();
    const box = piece?.piece.box;
    if (stale.shadow && box && !rough) {
      stale.shadow = false;
      const ground = boxNow();
      if (ground) shadow.draw(renderer, scene, { min: [ground.min[0], ground.min[1], Math.min(box.min[2], ground.min[2])], max: ground.max });
    }
    const axes = axesOf(turn);
    // North light: from the upper left behind the viewer, so it turns with him.
    const side: Vec3 = [Math.sin(turn.round), -Math.cos(turn.round), 0];
    shared.uKey.value.set(...unit(add(add(scale(axes.right, -0.42), scale(side, 0.55)), [0, 0, 0.85])));
    shared.uSize.value = [renderer.domElement.width, renderer.domElement.height];
    shared.uPixel.value = renderer.getPixelRatio();
    shadow.mesh.visible = box !== undefined && box !== null && !looks.only && turn.up > 0.02 && !cut;
    const c = camera();
    renderer.setRenderTarget(null);
    renderer.clear();
    c.layers.set(FILL);
    for (const l of [LINE, GROUND, CUT]) c.layers.enable(l);
    renderer.render(scene, c);
    if (looks.front.size && !plane) {
      renderer.clearDepth();
      c.layers.set(FRONT_FILL);
      c.layers.enable(FRONT_LINE);
      renderer.render(scene, c);
    }
    drawn();
    if (tween) moving();
  }
  function runTween(now: number): void {
    if (!tween) return;
    const t = Math.min(1, (now - tween.began) / MOVE_MS);
    const k = t >= 1 ? 1 : ease(t);
    turn = between(tween.from, tween.to, k);
    const mixed = (a: number, b: number): number => a + (b - a) * k;
    fit = { reach: Math.exp(mixed(Math.log(tween.fit0.reach), Math.log(tween.fit1.reach))), shift: [mixed(tween.fit0.shift[0], tween.fit1.shift[0]), mixed(tween.fit0.shift[1], tween.fit1.shift[1])] };
    zoom = mixed(tween.zoom0, 1);
    pan = [mixed(tween.pan0[0], 0), mixed(tween.pan0[1], 0)];
    if (t >= 1) tween = null;
  }
  function goTo(to: Turn): void {
    const fit1 = fitFor(to);
    if (still() || !piece) {
      turn = to;
      fit = fit1;
      zoom = 1;
      pan = [0, 0];
      tween = null;
    } else tween = { from: turn, to, fit0: fit, fit1, zoom0: zoom, pan0: pan, began: performance.now() };
    invalidate();
  }
  const placed = (p: Vec3): readonly [number, number] => {
    const [x, y] = onSheet(seenAt(p, target, axesOf(turn)), fit.reach / zoom, size.width / Math.max(1, size.height), isFlat());
    const [sx, sy] = shiftNow();
    return [((x + sx + 1) / 2) * size.width, ((1 - y - sy) / 2) * size.height];
  };
  applyTheme();

  return {
    setScene(next) {
      const first = piece === null || (next !== null && piece.piece.title !== next.piece.title);
      piece = next;
      parts.set(next?.piece.parts ?? [], next?.meshes ?? new Map());
      applyPose();
      stale.looks = stale.cut = true;
      if (next && !looks.only) aim();
      if (first) {
        turn = TURNS[seen];
        zoom = 1;
        pan = [0, 0];
      }
      if (next) fit = fitFor(turn);
      invalidate();
    },
    setPose(next) {
      offsets = next;
      applyPose();
      if (piece && !tween) fit = fitFor(turn);
      moving();
    },
    setLooks(next) {
      const other = (next.only === null) !== (looks.only === null) || (next.only && looks.only && [...next.only].join() !== [...looks.only].join());
      looks = next;
      stale.looks = true;
      if (other) {
        stale.cut = true;
        aim();
        goTo(turn);
      }
      invalidate();
    },
    setCut(next) {
      cut = next;
      stale.cut = true;
      invalidate();
    },
    setSeen(next) {
      if (next === seen) return;
      if (seen === 'freely') free = turn;
      seen = next;
      const to = next === 'freely' ? free : TURNS[next];
      // Between the two kinds of eye there is no smooth way: the last step of it is a jump, and it lands exactly.
      turn = to;
      zoom = 1;
      pan = [0, 0];
      tween = null;
      fit = fitFor(to);
      invalidate();
    },
    setSize(next, nextRoom) {
      const grown = next.width !== size.width || next.height !== size.height;
      size = next;
      room = nextRoom;
      if (grown) {
        renderer.setPixelRatio(Math.min(2, devicePixelRatio || 1) * (rough ? 0.5 : 1));
        renderer.setSize(Math.max(1, size.width), Math.max(1, size.height), false);
      }
      if (piece) fit = fitFor(turn);
      invalidate();
    },
    setTheme: applyTheme,
    turnBy(round, up) {
      if (isFlat()) {
        // A flat view that is turned becomes a free one.
        return;
      }
      tween = null;
      turn = { round: turn.round + round, up: Math.min(HIGHEST, Math.max(LOWEST, turn.up + up)) };
      moving();
    },
    moveBy(dx, dy) {
      tween = null;
      pan = [pan[0] + (2 * dx) / size.width, pan[1] - (2 * dy) / size.height];
      moving();
    },
    zoomBy(by, x, y) {
      tween = null;
      const next = Math.min(12, Math.max(0.4, zoom * by));
      const k = next / zoom;
      const [sx, sy] = shiftNow();
      const [px, py] = [(x / size.width) * 2 - 1, 1 - (y / size.height) * 2];
      zoom = next;
      pan = [pan[0] + (px - sx) * (1 - k), pan[1] + (py - sy) * (1 - k)];
      moving();
    },
    home() {
      aim();
      goTo(TURNS[seen]);
    },
    pick(x, y) {
      const c = camera();
      const ndc = new Vector3((x / size.width) * 2 - 1, 1 - (y / size.height) * 2, -1);
      const near = ndc.clone().unproject(c);
      const far = ndc.setZ(1).unproject(c);
      const along = far.sub(near).normalize();
      const ray = { from: near.toArray() as unknown as Vec3, along: along.toArray() as unknown as Vec3 };
      return pickPart(ray, [...things()].filter(shown), plane);
    },
    place: placed,
    middle(path) {
      const t = parts.things.get(path);
      if (!t) return null;
      const b = outBox(t.frame, t.part.stock);
      return scale(add(b.min, b.max), 0.5);
    },
    ends(path) {
      const t = parts.things.get(path);
      if (!t) return [];
      const { min, max } = t.part.stock;
      const i = axisIndex(t.part.grain);
      const mid: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
      return [0.16, 0.84].map((k) => outPoint(t.frame, mid.map((m, j) => (j === i ? (min[i] ?? 0) + k * ((max[i] ?? 0) - (min[i] ?? 0)) : m)) as unknown as Vec3));
    },
    isAway: (p) => plane !== null && dot(plane.normal, p) > plane.at + 1,
    pxPerMm(p) {
      const q = add(p, axesOf(turn).right);
      const [a, b] = [placed(p), placed(q)];
      return Math.hypot(a[0] - b[0], a[1] - b[1]);
    },
    seen: () => seen,
    shoot: (ask) => (renderer.getContext().isContextLost() ? null : shoot({ renderer, scene, parts, shared, mainCaps: caps, shadow: shadow.mesh, well: colours.well, restore: () => ((stale.cut = stale.looks = true), applyPose(), invalidate()) }, ask)),
    redraw: invalidate,
    memory: () => ({ ...renderer.info.memory, programs: renderer.info.programs?.length ?? 0 }),
    dispose() {
      cancelAnimationFrame(frame);
      clearTimeout(resting);
      frame = -1;
      caps.dispose();
      parts.dispose();
      shadow.dispose();
      renderer.dispose();
    },
  };
}
