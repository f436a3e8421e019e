import { beforeAll, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { families } from '../../src/joints/families.ts';
import { documentOf, fixtureText } from '../support/piece.ts';
import { loadKernel, kernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { placed } from '../../src/solids/shape.ts';
import { cutOf, expectSound } from '../support/sound.ts';
beforeAll(() => loadKernel());
test.each(['hearth-stool', 'window-table'])('%s', (name) => {
  const doc = documentOf(fixtureText(name));
  const t0 = performance.now();
  for (let i = 0; i < 5; i++) buildPiece(doc, families);
  console.log(name, 'build ms', (performance.now() - t0) / 5);
  const b = buildPiece(doc, families);
  console.log(b.problems);
  for (const p of b.drawn.places) {
    console.log(p.joint, p.place, p.meeting.kind, p.meeting.touch, p.meeting.gap.toFixed(4), JSON.stringify(p.meeting.angle), JSON.stringify(p.refused), p.sizes && JSON.stringify(p.sizes));
    if (p.made) for (const w of p.family.rules.flatMap((r) => r.run(p.input, p.sizes!, p.made!))) console.log('   !', w.grade, w.title, w.why);
    if (p.made) console.log('   ', Object.entries(p.made.features).map(([r, f]) => r + ': ' + f.map((x) => x.name).join(',')).join(' | '), p.made.contacts.map((c) => c.name).join(', '));
  }
  const keys = [...b.drawn.parts].map(([k, v]) => k + ' ' + v.record.key.slice(0, 8));
  console.log(keys.join('\n'));
  withSolids(() => {
    const { Manifold } = kernel();
    const all = [...[...b.built.parts], ...[...b.built.extras]].map(([path, e]: any) => { const s = cutOf(e.record, path); expectSound(s); return { path, body: placed(s.body, e.frame) }; });
    all.forEach((a, i) => { for (const c of all.slice(i + 1)) { const both = Manifold.intersection([a.body, c.body]); const v = both.volume(); if (v > 1e-3) console.log('overlap', a.path, c.path, v.toFixed(4), 'thickness', (2 * v / both.surfaceArea()).toFixed(5)); both.delete(); } });
  });
});
