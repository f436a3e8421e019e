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

type Vector<T> = { push_back(item: T): void; delete(): void };
/**
 * Extruding through the kernel's public classes sends each outline through an integer grid (1e-9 mm off, so flush faces are no
 * longer flush) and leaves the grid's vectors undeleted. These are the calls that stand beneath them.
 */
type Beneath = {
  Vector_vec2: new () => Vector<{ x: number; y: number }>;
  Vector2_vec2: new () => Vector<Vector<{ x: number; y: number }>>;
  _Extrude(loops: unknown, height: number, divisions: number, twist: number, scaleTop: { x: number; y: number }): Manifold;
  _Revolve(loops: unknown, segments: number, degrees: number): Manifold;
};
type Kernel = ManifoldToplevel & Beneath;
let current: Kernel | null = null;
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
/** Forgets the kernel and all its memory, after it ran out of it: solids made before are void, `loadKernel` starts afresh. */
export function dropKernel(): void {
  current = null;
  loading = null;
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
  for (const name of ['_Extrude', '_Revolve', 'Vector_vec2', 'Vector2_vec2'] as const)
    if (typeof ready[name] !== 'function') throw new Error(`the geometry kernel has no ${name}: another version than this was written for`);
  return ready;
}

/** Loops (outline counter-clockwise, holes clockwise) in xy, pulled up from z = 0 to `height`. */
export const extrude = (loops: readonly (readonly Vec2[])[], height: number): Body =>
  withLoops(loops, (v) => kernel()._Extrude(v, height, 0, 0, { x: 1, y: 1 }));
/** Loops with x the radius and y the height, turned once round z. */
export const revolve = (loops: readonly (readonly Vec2[])[]): Body => withLoops(loops, (v) => kernel()._Revolve(v, CHORDS_PER_CIRCLE, 360));

function withLoops(loops: readonly (readonly Vec2[])[], make: (loops: unknown) => Body): Body {
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
