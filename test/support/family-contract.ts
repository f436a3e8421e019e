/**
 * What every joint family must keep, on every example of its own: document, records, solids by two readers, contacts, and that a joint is
 * the same wherever and whichever way round it stands.
 */
import { describe, expect, test } from 'vitest';
import { type Families, buildPiece } from '../../src/build/build.ts';
import { type Loop, loopPoints, polygonArea } from '../../src/geom/loop.ts';
import { dot, length, sub } from '../../src/geom/vec3.ts';
import type { Contact, Family, Side } from '../../src/joints/family.ts';
import type { Document } from '../../src/model/document.ts';
import type { Json } from '../../src/model/finding.ts';
import { partRecord } from '../../src/model/part-record.ts';
import { readDocument } from '../../src/model/parse.ts';
import { problemLine } from '../../src/model/problem.ts';
import type { Feature, PartRecord } from '../../src/model/record.ts';
import { shapes } from '../../src/shapes/shapes.ts';
import { CHORDS_PER_CIRCLE, kernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';
import { mirrorMeeting, shapesOf } from './joint-bench.ts';
import { exact } from './oracle.ts';
import { cutOf, expectSound } from './sound.ts';

const volume = (r: PartRecord, who: string): number => withSolids(() => measure(cutOf(r, who)).volume);
/** Reads an example's document, knowing only these families. */
function reader(among: Families): (json: Json) => Document {
  return (json) => {
    const r = readDocument(json, { families: among, shapes });
    if (!r.ok) throw new Error(r.problems.map(problemLine).join('\n'));
    return r.doc;
  };
}
type Anything = Record<string, Json>;
/** The whole document standing in one group: turned by 37° about two axes and 10 m away. */
function movedAway(json: Json): Json {
  const doc = json as Anything;
  const inside = (all: Json | undefined): Anything =>
    Object.fromEntries(
      Object.entries((all ?? {}) as Anything).map(([id, v]) => [
        id,
        'in' in (v as Anything) ? v : { in: 'moved_away', ...(v as Anything) },
      ]),
    );
  const away = {
    at: ['10 m', '-3 m', '2 m'],
    turn: [
      ['z', '37 deg'],
      ['x', '37 deg'],
    ],
  };
  const groups = { ...inside(doc['groups']), moved_away: away };
  return { ...doc, parts: inside(doc['parts']), spaces: inside(doc['spaces']), groups };
}

/** How much of a round feature the chords of its circles may leave out or in, mm³. */
function chordSlack({ solid: s }: Feature): number {
  const short = (loop: Loop): number =>
    Math.abs(polygonArea(loopPoints(loop, CHORDS_PER_CIRCLE).points) - polygonArea(loopPoints(loop, 4096).points));
  if (s.kind === 'prism') return s.profile.reduce((a, loop) => a + short(loop), 0) * (s.to - s.from);
  if (s.kind !== 'turned') return 0;
  const points = loopPoints(s.profile, 4096).points;
  const r = Math.max(...points.map((p) => p[0]));
  const h = Math.max(...points.map((p) => p[1])) - Math.min(...points.map((p) => p[1]));
  return Math.PI * r * r * h * 0.0017 + short(s.profile) * 2 * Math.PI * r;
}

export function familyContract(family: Family, among: Families): void {
  describe(family.id, () => {
    const read = reader(among);
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
        const b = buildPiece(read(ex.document), among);
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
          const words = `${path}: ${(after - before).toFixed(3)} mm³ more than its stock, worked out by hand ${(added - removed).toFixed(3)}`;
          // Circles are polygons in the kernel: what their chords leave out is not in the hand's numbers.
          const slack = ex.planar ? 0.01 : 0.05 + 1.02 * features.reduce((a, f) => a + chordSlack(f), 0);
          expect(Math.abs(after - before - (added - removed)), words).toBeLessThanOrEqual(slack);
          if (added === 0) expect(grown, `${path} grew`).toBeCloseTo(before, 6);
        }
        for (const path of [...Object.keys(ex.removed), ...Object.keys(ex.added ?? {})]) expect([...b.parts.keys()], path).toContain(path);
      });
      test('a second, exact reader of the same records finds the same volumes', () => {
        const b = built();
        const records = new Map([...b.parts, ...b.extras].map(([path, p]) => [p.record.key, { path, record: p.record }]));
        for (const { path, record } of records.values()) {
          const [ours, theirs] = [volume(record, path), exact(record).volume];
          const slack = record.features.reduce((a, f) => a + chordSlack(f), 0) * 1.02 + 1e-6 * theirs;
          expect(Math.abs(ours - theirs), `${path}: ${ours} mm³, exactly ${theirs}`).toBeLessThanOrEqual(slack);
        }
      });
      test('is the same joint when the whole piece is turned by 37 degrees and stands 10 m away', () => {
        const here = built();
        const away = buildPiece(read(movedAway(ex.document)), among);
        expect(away.problems).toEqual([]);
        for (const [path, p] of here.parts) expect(away.drawn.parts.get(path)?.record.key, path).toBe(p.record.key);
        for (const [path, e] of here.extras) expect(away.drawn.extras.get(path)?.record.key, path).toBe(e.record.key);
        away.drawn.places.forEach((p, i) => {
          const contacts = (q: typeof p | undefined) =>
            q?.made?.contacts.map((c) => [c.name, c.fit, c.hold, c.meant, c.gluedLength ?? null]);
          expect(contacts(p)).toEqual(contacts(here.places[i]));
        });
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
}

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
