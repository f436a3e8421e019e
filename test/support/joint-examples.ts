/** A family's examples built from their documents: what was cut and added, and whether all the wood goes together. */
import { expect, test } from 'vitest';
import { volumeOf } from '../../src/geom/box.ts';
import { buildPiece } from '../../src/build/build.ts';
import type { Family } from '../../src/joints/family.ts';
import { readDocument } from '../../src/model/parse.ts';
import { problemLine } from '../../src/model/problem.ts';
import { cutPart } from '../../src/solids/cut.ts';
import { kernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';

/** One test for each example: sound, volumes as worked by hand, nothing in the way of anything else, every part in one piece. */
export function testExamples<P>(family: Family<P>): void {
  const facts = family as unknown as Family;
  const families = { [facts.id]: facts };
  const catalog = { families, shapes: {} };
  test.each(family.examples.map((e) => [e.name, e] as const))(`${family.id}, example: %s`, (_name, example) => {
    const read = readDocument(example.document, catalog);
    if (!read.ok) throw new Error(read.problems.map(problemLine).join('\n'));
    const { drawn, problems } = buildPiece(read.doc, families);
    expect(problems.map(problemLine)).toEqual([]);
    expect(drawn.places.map((p) => p.refused)).toEqual(drawn.places.map(() => null));
    const net: Record<string, number> = {};
    withSolids(() => {
      const all = [...drawn.parts.values(), ...drawn.extras.values()].map((p) => {
        const cut = cutPart(p.record, { who: p.path });
        if (!cut.ok) throw new Error(cut.problem);
        const lumps = cut.solid.body.decompose();
        expect([p.path, lumps.length]).toEqual([p.path, 1]);
        for (const l of lumps) l.delete();
        net[p.path] = cut.solid.body.volume() - volumeOf(p.record.stock);
        return { path: p.path, body: placed(cut.solid.body, p.frame) };
      });
      all.forEach((a, i) => {
        for (const b of all.slice(i + 1)) {
          const both = kernel().Manifold.intersection([a.body, b.body]);
          expect([a.path, b.path, both.volume() < 1e-3 ? 0 : both.volume()]).toEqual([a.path, b.path, 0]);
          both.delete();
        }
      });
    });
    const { removed, added = {} } = example;
    for (const path of drawn.parts.keys()) {
      const want = (added[path] ?? 0) - (removed[path] ?? 0);
      // Round holes are cut as 64 chords: a little less is taken away than the true circle holds.
      const near = example.planar ? 1e-3 : Math.max(1, Math.abs(want) * 2e-3);
      expect(Math.abs((net[path] ?? NaN) - want), `${path}: ${net[path]} for ${want}`).toBeLessThanOrEqual(near);
    }
    const warnings = drawn.places.flatMap((p) =>
      p.made && p.sizes ? p.family.rules.flatMap((r) => r.run(p.input, p.sizes!, p.made!)) : [],
    );
    expect(warnings.filter((w) => w.grade !== 'note').map((w) => w.title)).toEqual([]);
    for (const p of drawn.places) {
      if (!p.made || !p.sizes) continue;
      for (const hand of [true, false]) expect(p.family.bench(p.input, p.sizes, p.made, hand).length).toBeGreaterThan(0);
      expect(Object.keys(p.because ?? {}).sort()).toEqual(Object.keys(p.family.params).sort());
      expect(p.family.suits(p.meeting)).not.toBeNull();
    }
  });
}
