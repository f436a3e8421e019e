/** The exchange file: sound to the validator, in metres, right side out, and as large as the kernel says. */
import { validateBytes } from 'gltf-validator';
import { beforeAll, expect, test } from 'vitest';
import { type Store, openStore } from '../../src/build/store.ts';
import { type GlbMesh, type GlbPart, glb } from '../../src/exports/glb.ts';
import { materialOf } from '../../src/exports/materials.ts';
import { asPlaced } from '../../src/fits/check.ts';
import { HOME, handed, mirrored } from '../../src/geom/frame.ts';
import { glbOf } from '../../src/piece/files.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { boundsOf, readGlb } from '../support/glb.ts';
import { builtOf, documentOf, fixtureText, starterText } from '../support/piece.ts';
import { toLinear } from '../../src/wood/shade.ts';

beforeAll(() => loadKernel());

async function sound(bytes: Uint8Array): Promise<void> {
  const { issues } = await validateBytes(bytes, { maxIssues: 20 });
  const bad = issues.messages.filter((m) => m.severity < 2).map((m) => `${m.pointer ?? ''} ${m.code}: ${m.message}`);
  expect(bad).toEqual([]);
  expect([issues.numErrors, issues.numWarnings]).toEqual([0, 0]);
}
function withStore<T>(work: (store: Store) => T): T {
  const store = openStore();
  try {
    return work(store);
  } finally {
    store.close();
  }
}
/** A pyramid with the corner at the origin and legs of 300, 200 and 100 mm: volume 1,000,000 mm³, by hand. */
const PYRAMID = pyramid();
function pyramid(): GlbMesh {
  const [o, a, b, c] = [
    [0, 0, 0],
    [300, 0, 0],
    [0, 200, 0],
    [0, 0, 100],
  ] as const;
  // Slanted face: normal to (1/300, 1/200, 1/100).
  const l = Math.hypot(1 / 300, 1 / 200, 1 / 100);
  const faces = [
    { corners: [o, b, a], normal: [0, 0, -1] },
    { corners: [o, a, c], normal: [0, -1, 0] },
    { corners: [o, c, b], normal: [-1, 0, 0] },
    { corners: [a, b, c], normal: [1 / 300 / l, 1 / 200 / l, 1 / 100 / l] },
  ];
  return {
    positions: Float32Array.from(faces.flatMap((f) => f.corners.flat())),
    normals: Float32Array.from(faces.flatMap((f) => f.corners.flatMap(() => f.normal))),
    indices: Uint32Array.from({ length: 12 }, (_, i) => i),
  };
}
const CHERRY = new Map([['cherry', materialOf('cherry')]]);
const part = (name: string, over: Partial<GlbPart> = {}): GlbPart => ({ name, key: 'pyramid', frame: HOME, material: 'cherry', ...over });

test('a part stands in metres with y up, its volume as worked by hand', async () => {
  const bytes = glb('One', [part('pyramid')], new Map([['pyramid', PYRAMID]]), CHERRY);
  await sound(bytes);
  const { solids } = readGlb(bytes);
  expect(solids).toHaveLength(1);
  expect(solids[0]?.volume).toBeCloseTo(1e-3, 8);
  // Right 300, back 200, up 100 become x 0.3, y 0.1 and z -0.2.
  const { min, max } = boundsOf(solids);
  [0, 0, -0.2].forEach((n, i) => expect(min[i]).toBeCloseTo(n, 6));
  [0.3, 0.1, 0].forEach((n, i) => expect(max[i]).toBeCloseTo(n, 6));
});

test('a mirrored part is right side out without a negative scale, and stands where the mirror puts it', async () => {
  const frame = mirrored('x', -500);
  expect(handed(frame)).toBe(-1);
  const bytes = glb('Two', [part('as drawn'), part('mirrored', { frame })], new Map([['pyramid', PYRAMID]]), CHERRY);
  await sound(bytes);
  const { solids, json } = readGlb(bytes);
  for (const s of solids) {
    expect(s.volume).toBeCloseTo(1e-3, 8);
    expect(s.determinant).toBeCloseTo(1, 6);
    expect(s.agreement).toBeGreaterThan(0.999);
  }
  // The plane x = -500 sends 0…300 to -1000…-1300.
  const { min, max } = boundsOf(solids.slice(1));
  expect([min[0], max[0]].map((n) => Math.round((n ?? 0) * 1e4) / 1e4)).toEqual([-1.3, -1]);
  expect(json.meshes).toHaveLength(2);
});

test('equal parts share one mesh, an empty piece is still a sound file, a part without a mesh is left out', async () => {
  const meshes = new Map([['pyramid', PYRAMID]]);
  const twice = readGlb(glb('Twice', [part('one'), part('other', { frame: { ...HOME, o: [0, 0, 500] } })], meshes, CHERRY));
  expect(twice.json.meshes).toHaveLength(1);
  expect(twice.solids).toHaveLength(2);
  for (const parts of [[], [part('gone', { key: 'nowhere' })]]) {
    const bytes = glb('', parts, meshes, CHERRY);
    await sound(bytes);
    expect(readGlb(bytes).solids).toEqual([]);
  }
  expect(() => glb('', [part('one', { material: 'amber' })], meshes, CHERRY)).toThrow('amber');
});

test.each(['hall-bench', 'wall-shelf', 'frame-door'])(
  '%s: sound, as large as the kernel says, box of the piece in metres',
  async (name) => {
    const doc = documentOf(starterText(name));
    const built = builtOf(doc);
    const { bytes, volumes, box } = withStore((store) => {
      const all = [...built.built.parts.values(), ...built.built.extras.values()];
      return { bytes: glbOf(doc, built, store), volumes: all.map((p) => store.measures(asPlaced(p))?.volume ?? 0), box: boxOf(all, store) };
    });
    await sound(bytes);
    const { solids } = readGlb(bytes);
    expect(solids).toHaveLength(volumes.length);
    solids.forEach((s, i) => {
      const mm3 = volumes[i] ?? 0;
      expect(mm3).toBeGreaterThan(0);
      expect(Math.abs(s.volume * 1e9 - mm3) / mm3, s.name).toBeLessThan(1e-5);
      expect(s.determinant).toBeCloseTo(1, 6);
      // Smooth round faces turn a corner's normal away from its facet's by at most half a segment.
      expect(s.agreement, s.name).toBeGreaterThan(0.9);
    });
    const { min, max } = boundsOf(solids);
    const size = [0, 1, 2].map((i) => ((max[i] ?? 0) - (min[i] ?? 0)) * 1000);
    [size[0], size[2], size[1]].forEach((n, i) => expect(n).toBeCloseTo(box[i] ?? 0, 2));
  },
);
/** Size of the piece from the facets that the kernel gives, world mm: another way than the mesh that is exported. */
function boxOf(parts: readonly Parameters<typeof asPlaced>[0][], store: Store): number[] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const p of parts) {
    const facets = store.facets(asPlaced(p)) ?? [];
    for (let i = 0; i < facets.length; i += 3)
      for (const k of [0, 1, 2] as const) {
        const n =
          p.frame.o[k] + p.frame.x[k] * (facets[i] ?? 0) + p.frame.y[k] * (facets[i + 1] ?? 0) + p.frame.z[k] * (facets[i + 2] ?? 0);
        low[k] = Math.min(low[k] ?? n, n);
        high[k] = Math.max(high[k] ?? n, n);
      }
  }
  return high.map((h, i) => h - (low[i] ?? 0));
}

test('names from a hostile document are plain words in the file', async () => {
  const doc = documentOf(fixtureText('hostile-names'));
  const bytes = withStore((store) => glbOf(doc, builtOf(doc), store));
  await sound(bytes);
  const { json, solids } = readGlb(bytes);
  const names = [json.scenes[0]?.name ?? '', ...solids.flatMap((s) => [s.name, s.material])];
  expect(names).toHaveLength(9);
  // eslint-disable-next-line no-control-regex
  for (const n of names) expect(n).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]|\p{Surrogate}/u);
  expect(names.filter((n) => n.includes('post'))).toHaveLength(2);
  // The tapered post among them: its slanted face looks out as well.
  expect(solids.every((s) => s.volume > 0 && s.agreement > 0.999)).toBe(true);
});

test('each wood has its own colour in linear light', () => {
  // IEC 61966-2-1: 0 and 1 stay, 0.5 is 0.2140.
  expect([0, 1].map(toLinear)).toEqual([0, 1]);
  expect(toLinear(0.5)).toBeCloseTo(0.214041, 5);
  const [walnut, maple] = [materialOf('walnut'), materialOf('maple')];
  for (const c of [...walnut.colour, ...maple.colour]) expect(c > 0 && c < 1).toBe(true);
  expect(maple.colour[1]).toBeGreaterThan(2 * walnut.colour[1]);
  expect([materialOf('brass').metal, materialOf('oak').metal]).toEqual([1, 0]);
});
