/**
 * The one door to the geometry kernel. It is loaded once for each process or worker and then used without waiting; the caller
 * says where the WASM lies, so that nothing here knows of files or of addresses.
 */
import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Vec2 } from '../geom/vec3.ts';

export type Body = Manifold;
/** Chords to a whole circle, wherever one is cut. Round fits are judged from parameters, never from these. */
export const CHORDS_PER_CIRCLE = 64;

/** Where the WASM comes from: its bytes, or the address to fetch; neither where the package itself can find it (plain Node). */
export type KernelSource = { readonly wasmBinary?: ArrayBuffer | Uint8Array; readonly locateFile?: (file: string) => string };

type Point = { readonly x: number; readonly y: number };
type Vector<T> = { push_back(item: T): void; get(i: number): T; size(): number; delete(): void };
type Loops = Vector<Vector<Point>>;
/**
 * Extruding through the kernel's public classes sends each outline through an integer grid (1e-9 mm off, so flush faces are no
 * longer flush), and what they hand out as arrays leaves vectors undeleted. These are the calls that stand beneath them.
 */
type Beneath = {
  Vector_vec2: new () => Vector<Point>;
  Vector2_vec2: new () => Loops;
  _Extrude(loops: Loops, height: number, divisions: number, twist: number, scaleTop: Point): Manifold;
  _Revolve(loops: Loops, segments: number, degrees: number): Manifold;
  addFunction(work: (at: number, count: number) => void, signature: 'vii'): number;
  _Triangulate(loops: Loops, epsilon: number, allowConvex: boolean): Vector<{ readonly 0: number; readonly 1: number; readonly 2: number }>;
};
type Kernel = ManifoldToplevel & Beneath;
let current: Kernel | null = null;
let lens: Lens | null = null;
let loading: Promise<Kernel> | null = null;

/** Makes the kernel ready; once is enough, more does no harm. Fails when the WASM cannot be had. */
export async function loadKernel(source: KernelSource = {}): Promise<void> {
  loading ??= start(source);
  try {
    current = await loading;
  } catch (trouble) {
    loading = null;
    throw trouble;
  }
}
/** The kernel, for the files of this floor only. */
export function kernel(): Kernel {
  if (!current) throw new Error('the geometry kernel is not loaded: await loadKernel() first');
  return current;
}

async function start(source: KernelSource): Promise<Kernel> {
  // The published type knows `locateFile` alone, the loader beneath takes the bytes as well.
  const ready = (await Module(source as unknown as Parameters<typeof Module>[0])) as Kernel;
  ready.setup();
  for (const name of ['_Extrude', '_Revolve', '_Triangulate', 'addFunction', 'Vector_vec2', 'Vector2_vec2'] as const)
    if (typeof ready[name] !== 'function') throw new Error(`the geometry kernel has no ${name}: another version than this was written for`);
  return ready;
}

/** Loops (outline counter-clockwise, holes clockwise) in xy, pulled up from z = 0 to `height`. */
export const extrude = (loops: readonly (readonly Vec2[])[], height: number): Body =>
  withLoops(loops, (v) => kernel()._Extrude(v, height, 0, 0, { x: 1, y: 1 }));
/** Loops with x the radius and y the height, turned once round z. */
export const revolve = (loops: readonly (readonly Vec2[])[]): Body => withLoops(loops, (v) => kernel()._Revolve(v, CHORDS_PER_CIRCLE, 360));

/** The polygons (outlines counter-clockwise, holes clockwise) where a body is cut by the plane z = height. */
export const slice = (body: Body, height: number): Vec2[][] => takeLoops((body as unknown as { _Slice(z: number): Loops })._Slice(height));
/** Polygons as triangles, three points each. */
export function triangulate(loops: readonly (readonly Vec2[])[]): Vec2[][] {
  const points = loops.flat();
  return withLoops(loops, (v) => {
    const found = kernel()._Triangulate(v, -1, true);
    const out = Array.from({ length: found.size() }, (_, i) => {
      const t = found.get(i);
      return [t[0], t[1], t[2]].map((k) => points[k] as Vec2);
    });
    found.delete();
    return out;
  });
}
/**
 * What is left of the union of some counter-clockwise polygons when others are taken from it, without slivers thinner than
 * twice `sliver`; works on an integer grid of about 1e-9 mm.
 */
export function planeDifference(from: readonly (readonly Vec2[])[], take: readonly (readonly Vec2[])[], sliver: number): Vec2[][] {
  const made: { delete(): void }[] = [];
  const keep = <T extends { delete(): void }>(one: T): T => {
    made.push(one);
    return one;
  };
  const area = (loops: readonly (readonly Vec2[])[]): InstanceType<ManifoldToplevel['CrossSection']> =>
    keep(new (kernel().CrossSection)(loops.map((l) => l.map(([x, y]): [number, number] => [x, y]))));
  try {
    const left = take.length > 0 ? keep(area(from).subtract(area(take))) : area(from);
    const open = keep(keep(left.offset(-sliver, 'Miter')).offset(sliver, 'Miter'));
    return takeLoops((open as unknown as { _ToPolygons(): Loops })._ToPolygons());
  } finally {
    for (const one of made) one.delete();
  }
}

/** The one function that the kernel calls back, the memory it looks into, and what it is to do with a body's corners. */
type Lens = { readonly call: number; memory: ArrayBufferLike; work: (corners: Float64Array) => void; missed: boolean };
/**
 * A body with its corners (xyz triples, in double precision) as `work` leaves them. The kernel's own way of doing this compiles
 * a function for each call, which takes longer than the cut; this one is handed the same function each time.
 */
export function warped(body: Body, work: (corners: Float64Array) => void): Body {
  const l = (lens ??= makeLens());
  l.work = work;
  l.missed = false;
  const out = (body as unknown as { _WarpBatch(call: number): Body })._WarpBatch(l.call);
  if (!l.missed) return out;
  // The kernel's memory has grown and moved: once the slow way, which tells where it is now.
  out.delete();
  return body.warpBatch((corners) => {
    l.memory = corners.buffer;
    work(corners);
  });
}
function makeLens(): Lens {
  const made: Lens = {
    call: kernel().addFunction((at, count) => look(made, at, count), 'vii'),
    memory: new ArrayBuffer(0),
    work: () => {},
    missed: false,
  };
  return made;
}
function look(l: Lens, at: number, count: number): void {
  if (l.memory.byteLength === 0) l.missed = true;
  else l.work(new Float64Array(l.memory, at, 3 * count));
}

function takeLoops(loops: Loops): Vec2[][] {
  const out: Vec2[][] = [];
  for (let i = 0; i < loops.size(); i++) {
    const loop = loops.get(i);
    out.push(
      Array.from({ length: loop.size() }, (_, k): Vec2 => {
        const { x, y } = loop.get(k);
        return [x, y];
      }),
    );
    loop.delete();
  }
  loops.delete();
  return out;
}
function withLoops<T>(loops: readonly (readonly Vec2[])[], make: (loops: Loops) => T): T {
  const k = kernel();
  const all = new k.Vector2_vec2();
  try {
    for (const loop of loops) {
      const one = new k.Vector_vec2();
      for (const [x, y] of loop) one.push_back({ x, y });
      all.push_back(one);
      one.delete();
    }
    return make(all);
  } finally {
    all.delete();
  }
}

/** Bytes of memory that the kernel holds, used or not; it only ever grows. */
export function heapBytes(): number {
  const cube = kernel().Manifold.cube([1, 1, 1]);
  let bytes = 0;
  cube.warpBatch((corners) => (bytes = corners.buffer.byteLength)).delete();
  cube.delete();
  return bytes;
}
