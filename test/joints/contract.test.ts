/** Every family against the contract, every example as a whole piece: document, records, solids, contacts and the mirror law. */
import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { dot, length, sub } from '../../src/geom/vec3.ts';
import type { Contact, Side } from '../../src/joints/family.ts';
import { families } from '../../src/joints/families.ts';
import { partRecord } from '../../src/model/part-record.ts';
import type { PartRecord } from '../../src/model/record.ts';
import { kernel, loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';
import { mirrorMeeting, shapesOf } from '../support/joint-bench.ts';
import { jsonDocument } from '../support/piece.ts';
import { cutOf, expectSound } from '../support/sound.ts';

beforeAll(() => loadKernel());

const kebab = (id: string): string => id.replaceAll('_', '-');
test('each folder of src/joints is a listed family, and each listed family a folder', () => {
  const folders = readdirSync(new URL('../../src/joints', import.meta.url), { withFileTypes: true })
    .filter((f) => f.isDirectory())
    .map((f) => f.name);
  expect(Object.keys(families).map(kebab).sort()).toEqual(folders.sort());
});

const volume = (r: PartRecord, who: string): number => withSolids(() => measure(cutOf(r, who)).volume);
/** Round examples differ from the hand's numbers by the chords of their circles: 64 to a turn lose 0.16 % of a circle. */
const near = (planar: boolean, got: number, want: number): boolean =>
  Math.abs(got - want) <= (planar ? 0.01 : Math.max(0.05, Math.abs(want) * 0.004));

describe.each(Object.values(families))('$id', (family) => {
  test('has sound facts', () => {
    expect(family.version).toBeGreaterThan(0);
    expect(family.examples.length).toBeGreaterThan(0);
    for (const [key, field] of Object.entries(family.params)) {
      expect(key).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(field.words).not.toBe('');
      expect(field.kind === 'choice').toBe(field.options !== undefined);
    }
    expect(new Set(family.rules.map((r) => r.id)).size).toBe(family.rules.length);
    for (const u of family.upgrades) expect(Object.keys(u.up(u.sample)).filter((k) => !(k in family.params))).toEqual([]);
  });
  describe.each(family.examples)('$name', (ex) => {
    const built = () => {
      const b = buildPiece(jsonDocument(ex.document), families);
      expect(b.problems).toEqual([]);
      for (const p of b.drawn.places) expect(p.refused, `${p.joint}/${p.place}`).toBeNull();
      return b.drawn;
    };
    test('cuts and adds what the hand worked out', () => {
      const b = built();
      for (const [path, part] of b.parts) {
        const features = part.record.features;
        const only = (...ops: string[]): number =>
          volume(
            partRecord(
              part.record.stock,
              part.record.grain,
              part.wood,
              features.filter((f) => ops.includes(f.op)),
            ),
            path,
          );
        const before = only('shape');
        const grown = only('shape', 'add');
        const after = volume(part.record, path);
        const [removed, added] = [ex.removed[path] ?? 0, ex.added?.[path] ?? 0];
        // What is taken from the stock, and what stands beyond it: their difference is exact whatever cuts into the added wood.
        expect(
          near(ex.planar, after - before, added - removed),
          `${path}: ${(after - before).toFixed(3)} mm³ more than its stock, worked out by hand ${(added - removed).toFixed(3)}`,
        ).toBe(true);
        if (added === 0) expect(grown, `${path} grew`).toBeCloseTo(before, 6);
      }
      for (const path of [...Object.keys(ex.removed), ...Object.keys(ex.added ?? {})]) expect([...b.parts.keys()], path).toContain(path);
    });
    test('every solid is sound and in one piece, and no two share wood but where it is meant', () => {
      const b = built();
      withSolids(() => {
        const { Manifold } = kernel();
        const all = [
          ...[...b.parts].map(([path, p]) => ({ path, record: p.record, frame: p.frame })),
          ...[...b.extras].map(([path, e]) => ({ path, record: e.record, frame: e.frame })),
        ];
        const solids = all.map((a) => {
          const solid = cutOf(a.record, a.path);
          expectSound(solid);
          return { ...a, body: placed(solid.body, a.frame) };
        });
        const meant = biting(b.places.flatMap((p) => p.made?.contacts ?? []));
        solids.forEach((a, i) => {
          for (const c of solids.slice(i + 1)) {
            const both = Manifold.intersection([a.body, c.body]);
            const shared = both.volume();
            both.delete();
            if (shared > 0.05 && !(meant && (b.extras.has(a.path) || b.extras.has(c.path))))
              throw new Error(`${a.path} and ${c.path} share ${shared.toFixed(3)} mm³`);
          }
        });
      });
    });
    test('every contact lies on faces that its features name, and stands as far apart as it is meant to', () => {
      const b = built();
      for (const p of b.places) {
        const made = p.made;
        if (!made) continue;
        expect(made.contacts.length).toBeGreaterThan(0);
        expect(new Set(made.contacts.map((c) => c.name)).size, 'names of contacts').toBe(made.contacts.length);
        for (const c of made.contacts) {
          for (const s of c.between) expectFace(s, p.roles, made, p.family.roles, p.meeting.sides);
          expect(apart(c), c.name).toBeCloseTo(c.meant, 4);
          if (c.hold === 'glued') expect(c.glue, c.name).not.toBe('never');
        }
      }
    });
    test('a mirrored meeting makes the mirrored joint', () => {
      for (const p of built().places) {
        if (!p.sizes || !p.made || p.family.id !== family.id) continue;
        for (const axis of ['x', 'y'] as const) {
          const meeting = mirrorMeeting(p.meeting, axis);
          // In a mirrored frame a sibling's own frame is mirrored on the outside and keeps its inside.
          const flip = (v: readonly [number, number, number]) =>
            axis === 'x' ? ([-v[0], v[1], v[2]] as const) : ([v[0], -v[1], v[2]] as const);
          const siblings = p.input.siblings.map((s) => ({
            ...s,
            frame: { o: flip(s.frame.o), x: flip(s.frame.x), y: flip(s.frame.y), z: flip(s.frame.z) },
          }));
          const image = family.make({ ...p.input, meeting, siblings }, p.sizes);
          expect(shapesOf(image), `${axis} of ${p.joint}/${p.place}`).toEqual(shapesOf(p.made, axis));
        }
      }
    });
    test('its rules and its work at the bench can be told', () => {
      for (const p of built().places) {
        if (!p.sizes || !p.made || p.family.id !== family.id) continue;
        for (const hand of [true, false]) {
          const work = family.bench(p.input, p.sizes, p.made, hand);
          expect(work.length).toBeGreaterThan(0);
          for (const o of work) expect(Object.keys(family.roles), o.words).toContain(o.role);
        }
        for (const w of family.rules.flatMap((r) => r.run(p.input, p.sizes ?? {}, p.made as never))) {
          expect(family.rules.map((r) => r.id)).toContain(w.rule);
          for (const cure of w.cures)
            for (const key of Object.keys(cure.set)) expect(Object.keys(family.params), `cure "${cure.label}"`).toContain(key);
          expect(w.grade, `${w.title}: an example shows the joint as it should be`).not.toBe('stops');
        }
      }
    });
  });
});

/** Pegs that are drawn in bent are drawn straight: their contact says by how much they bite. */
const biting = (contacts: readonly Contact[]): boolean => contacts.some((c) => c.meant < 0);

function expectFace(
  s: Side,
  roles: Readonly<Record<string, readonly string[]>>,
  made: NonNullable<ReturnType<typeof buildPiece>['drawn']['places'][number]['made']>,
  kinds: Readonly<Record<string, { count: string }>>,
  sides: Readonly<Record<string, readonly { shapes: readonly { name: string; faces: object }[] }[]>>,
): void {
  const where = `${s.role} ${s.feature}.${s.face}`;
  if (s.role === 'extra') {
    const extra = made.extras[s.index ?? 0];
    expect(extra, where).toBeDefined();
    if (s.feature === 'stock') return;
    const f = extra?.record.features.find((x) => x.name === s.feature);
    expect(f, where).toBeDefined();
    expect(Object.keys(f?.faces ?? {}), where).toContain(s.face);
    return;
  }
  expect(Object.keys(roles), where).toContain(s.role);
  if (s.feature === 'stock') {
    expect(['left', 'right', 'front', 'back', 'bottom', 'top'], where).toContain(s.face);
    return;
  }
  const key = kinds[s.role]?.count === 'many' ? `${s.role}#${s.index ?? 0}` : s.role;
  const own =
    made.features[key]?.find((x) => x.name === s.feature) ?? sides[s.role]?.[s.index ?? 0]?.shapes.find((x) => x.name === s.feature);
  expect(own, where).toBeDefined();
  expect(Object.keys(own?.faces ?? {}), where).toContain(s.face);
}
/** Signed distance of the two surfaces along the first one's normal: above 0 apart, below 0 biting. Round ones: how far their axes lie apart, below 0, or the play of their radii. */
function apart(c: Contact): number {
  const [a, b] = [c.between[0].surface, c.between[1].surface];
  if ('plane' in a && 'plane' in b) {
    expect(dot(a.plane.normal, b.plane.normal), c.name).toBeCloseTo(-1, 6);
    return -b.plane.off - a.plane.off;
  }
  if ('round' in a && 'round' in b) {
    const d = sub(b.round.at, a.round.at);
    const off = length(
      sub(d, [
        a.round.along[0] * dot(d, a.round.along),
        a.round.along[1] * dot(d, a.round.along),
        a.round.along[2] * dot(d, a.round.along),
      ]),
    );
    return off > 1e-6 ? -off : b.r - a.r;
  }
  throw new Error(`${c.name}: a flat face on a round one`);
}
