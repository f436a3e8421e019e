/** The drawing of the piece: one scene, drawn only when something changed. No React in here. */
import { LinearSRGBColorSpace, Scene, Vector3, Vector4, WebGLRenderer } from 'three';
import { type Box, cornersOf, middleOf, outBox, unionBox } from '../../src/geom/box.ts';
import { moved, outPoint } from '../../src/geom/frame.ts';
import { type Axis, type Vec3, add, axisIndex, axisVec, dot, length, scale, sub, unit } from '../../src/geom/vec3.ts';
import type { Seen } from '../look/view.ts';
import type { Scene as PieceScene } from '../results/store.ts';
import { type Room, type Size, axesOf } from './camera.ts';
import { makeCaps } from './caps.ts';
import { isDark, themeColour } from './colours.ts';
import { type Shot, type ShotAsk, shoot } from './lensShot.ts';
import { type Looks, type Theme, applyLooks } from './looks.ts';
import { CUT, FILL, FRONT_FILL, FRONT_LINE, GROUND, LINE, type Thing, makeParts, matrixOf, wholeOf } from './parts.ts';
import { pickPart } from './pick.ts';
import { makeRig } from './rig.ts';
import type { Plane } from './section.ts';
import { makeShadow } from './shadow.ts';
import type { Shared } from './woodShader.ts';

type Cut = { readonly axis: Axis; readonly at: number };
export type Stage = {
  readonly setScene: (scene: PieceScene | null) => void;
  readonly setPose: (offsets: ReadonlyMap<string, Vec3>) => void;
  readonly setLooks: (looks: Looks) => void;
  readonly setCut: (cut: Cut | null) => void;
  readonly setSeen: (seen: Seen) => void;
  readonly setSize: (size: Size, room: Room) => void;
  readonly setTheme: () => void;
  readonly turnBy: (round: number, up: number) => void;
  readonly moveBy: (dx: number, dy: number) => void;
  readonly zoomBy: (by: number, x: number, y: number) => void;
  readonly home: () => void;
  readonly pick: (x: number, y: number) => string | null;
  /** Where a point of the piece falls on the sheet, px; whether something stands before it is not asked. */
  readonly place: (p: Vec3) => readonly [number, number];
  readonly pxPerMm: (p: Vec3) => number;
  /** Middle of a part as it stands now. */
  readonly middle: (path: string) => Vec3 | null;
  /** Two points well inside a part near the ends of its grain, as it stands now. */
  readonly ends: (path: string) => readonly Vec3[];
  /** Does the cut take this place away? */
  readonly isAway: (p: Vec3) => boolean;
  readonly seen: () => Seen;
  readonly shoot: (ask: ShotAsk) => Shot | null;
  readonly dispose: () => void;
};
/** A frame that takes longer than this, ms, makes turning jerky. */
const SLOW = 70;
const REST = 250;
const readTheme = (): Theme => ({ sheet: themeColour('--sheet'), ink: themeColour('--ink'), well: themeColour('--well'), dark: isDark() });

/** Throws where the browser gives no WebGL2. `drawn` is called after each frame. */
export function makeStage(canvas: HTMLCanvasElement, drawn: () => void): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true });
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
  const parts = makeParts(shared);
  const caps = makeCaps(shared, renderer);
  const shadow = makeShadow(GROUND);
  scene.add(shadow.mesh, parts.group, caps.group);
  caps.ink([0.1, 0.07, 0.05]);

  let size: Size = { width: 1, height: 1 };
  let piece: PieceScene | null = null;
  let offsets: ReadonlyMap<string, Vec3> = new Map();
  let looks: Looks = { wood: null, front: new Set(), heavy: new Set(), only: null };
  let cut: Cut | null = null;
  let plane: Plane | null = null;
  let theme = readTheme();
  const stale = { shadow: true, cut: true, looks: true };
  let frame = 0;

  const shown = (): Thing[] => [...parts.things.values()].filter((t) => looks.only === null || looks.only.has(t.part.path));
  const boxOf = (t: Thing): Box => outBox(t.frame, t.part.stock);
  const boxNow = (): Box | null => shown().reduce<Box | null>((box, t) => (box ? unionBox(box, boxOf(t)) : boxOf(t)), null);
  const rig = makeRig(() => shown().flatMap((t) => cornersOf(outBox(t.frame, wholeOf(t)))));

  function invalidate(): void {
    if (!frame) frame = requestAnimationFrame(draw);
  }
  // A machine without a graphics card draws at half the fineness while something moves, and fully once it rests.
  const pace = { rough: false, last: 0, took: 0 };
  let resting: ReturnType<typeof setTimeout> | undefined;
  const fineness = (): number => Math.min(2, devicePixelRatio || 1) * (pace.rough ? 0.5 : 1);
  function setRough(rough: boolean): void {
    pace.rough = rough;
    renderer.setPixelRatio(fineness());
    invalidate();
  }
  /** Something moves by hand or by itself: many frames may come in a row. */
  function moving(): void {
    if (pace.took > SLOW && !pace.rough) setRough(true);
    clearTimeout(resting);
    resting = setTimeout(() => {
      pace.last = 0;
      if (pace.rough) setRough(false);
    }, REST);
    invalidate();
  }
  function measure(now: number): void {
    // A rough frame would have taken some three times as long.
    const took = (now - pace.last) * (pace.rough ? 3 : 1);
    if (pace.last && now - pace.last < 3000) pace.took = pace.took ? pace.took * 0.6 + took * 0.4 : took;
    pace.last = now;
  }
  function aim(): void {
    const box = looks.only ? boxNow() : (piece?.piece.box ?? boxNow());
    if (box) rig.aim(middleOf(box));
  }
  function applyTheme(): void {
    theme = readTheme();
    shared.uSheet.value.set(...theme.sheet);
    shared.uExposure.value = theme.dark ? 0.86 : 1;
    shadow.darken(theme.dark ? 1.25 : 0.8);
    stale.looks = true;
    invalidate();
  }
  function applyPose(): void {
    for (const t of parts.things.values()) {
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
    const sign = dot(axisVec(cut.axis), axesOf(rig.turn()).toEye) >= -1e-9 ? 1 : -1;
    const share = Math.min(0.9999, Math.max(0.0001, cut.at));
    return { normal: axisVec(cut.axis, sign), at: sign * (box.min[i] + share * (box.max[i] - box.min[i])) };
  }
  function applyCut(): void {
    const next = planeNow();
    const same = plane === next || (plane && next && plane.at === next.at && dot(plane.normal, next.normal) > 0.5);
    if (!stale.cut && same) return;
    stale.cut = false;
    plane = next;
    shared.uClipped.value = plane ? 1 : 0;
    if (plane) shared.uClip.value.set(...plane.normal, plane.at);
    caps.set(shown(), plane);
  }
  function applyShadow(): void {
    const [now, whole] = [boxNow(), piece?.piece.box];
    shadow.mesh.visible = Boolean(now) && looks.only === null && rig.turn().up > 0.02 && !cut;
    if (!stale.shadow || !now || pace.rough) return;
    stale.shadow = false;
    shadow.draw(renderer, scene, { min: [now.min[0], now.min[1], Math.min(now.min[2], whole?.min[2] ?? Infinity)], max: now.max });
  }
  /** North light: from the upper left behind the viewer, so it turns with him. */
  function applyLight(): void {
    const { round } = rig.turn();
    const back: Vec3 = [Math.sin(round), -Math.cos(round), 0];
    shared.uKey.value.set(...unit(add(add(scale(axesOf(rig.turn()).right, -0.42), scale(back, 0.55)), [0, 0, 0.85])));
    shared.uSize.value = [renderer.domElement.width, renderer.domElement.height];
    shared.uPixel.value = renderer.getPixelRatio();
  }
  function camera() {
    const box = boxNow();
    const middle = piece?.piece.box ? middleOf(piece.piece.box) : ([0, 0, 0] as const);
    return rig.camera(box ? Math.max(...cornersOf(box).map((c) => length(sub(c, middle)))) + 400 : 1000);
  }
  function draw(now: number): void {
    frame = 0;
    if (renderer.getContext().isContextLost()) return;
    measure(now);
    const more = rig.run(now);
    if (stale.looks) applyLooks(parts.things.values(), looks, theme);
    stale.looks = false;
    applyCut();
    applyShadow();
    applyLight();
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
    if (more) moving();
  }
  applyTheme();

  return {
    setScene(next) {
      const other = piece?.piece.title !== next?.piece.title;
      piece = next;
      parts.set(next?.piece.parts ?? [], next?.meshes ?? new Map());
      applyPose();
      stale.looks = stale.cut = true;
      if (!looks.only) aim();
      if (other) rig.begin();
      rig.fit();
      invalidate();
    },
    setPose(next) {
      offsets = next;
      applyPose();
      rig.fit();
      moving();
    },
    setLooks(next) {
      const other = [...(next.only ?? [])].join() !== [...(looks.only ?? [])].join();
      looks = next;
      stale.looks = true;
      if (other) {
        stale.cut = stale.shadow = true;
        aim();
        rig.goTo(rig.turn());
      }
      invalidate();
    },
    setCut(next) {
      cut = next;
      stale.cut = true;
      moving();
    },
    setSeen(next) {
      rig.setSeen(next);
      invalidate();
    },
    setSize(next, room) {
      const grown = next.width !== size.width || next.height !== size.height;
      size = next;
      if (grown) {
        renderer.setPixelRatio(fineness());
        renderer.setSize(Math.max(1, size.width), Math.max(1, size.height), false);
      }
      rig.setSize(next, room);
      invalidate();
    },
    setTheme: applyTheme,
    turnBy: (round, up) => (rig.turnBy(round, up), moving()),
    moveBy: (dx, dy) => (rig.moveBy(dx, dy), moving()),
    zoomBy: (by, x, y) => (rig.zoomBy(by, x, y), moving()),
    home() {
      aim();
      rig.home();
      moving();
    },
    pick(x, y) {
      const c = camera();
      const at = new Vector3((x / size.width) * 2 - 1, 1 - (y / size.height) * 2, -1);
      const near = at.clone().unproject(c);
      const along = at.setZ(1).unproject(c).sub(near).normalize();
      return pickPart({ from: [near.x, near.y, near.z], along: [along.x, along.y, along.z] }, shown(), plane);
    },
    place: rig.place,
    pxPerMm: rig.pxPerMm,
    middle(path) {
      const t = parts.things.get(path);
      return t ? middleOf(boxOf(t)) : null;
    },
    ends(path) {
      const t = parts.things.get(path);
      if (!t) return [];
      const { min, max } = t.part.stock;
      const i = axisIndex(t.part.grain);
      const mid = middleOf(t.part.stock);
      const at = (share: number): Vec3 =>
        [0, 1, 2].map((j) => (j === i ? (min[i] ?? 0) + share * (max[i] - min[i]) : (mid[j] ?? 0))) as unknown as Vec3;
      return [0.16, 0.84].map((share) => outPoint(t.frame, at(share)));
    },
    isAway: (p) => plane !== null && dot(plane.normal, p) > plane.at + 1,
    seen: rig.seen,
    shoot(ask) {
      if (renderer.getContext().isContextLost()) return null;
      const shot = shoot({ renderer, scene, parts, shared, mainCaps: caps, shadow: shadow.mesh, well: theme.well }, ask);
      stale.cut = stale.looks = true;
      applyPose();
      invalidate();
      return shot;
    },
    dispose() {
      cancelAnimationFrame(frame);
      frame = -1;
      clearTimeout(resting);
      caps.dispose();
      parts.dispose();
      shadow.dispose();
      renderer.dispose();
    },
  };
}
