import { test } from 'vitest';
import * as P from './pieces.ts';
import { makeScene } from '../../src/assembly/scene.ts';
import { takeApart } from '../../src/assembly/search.ts';
import { drawApart } from '../../src/assembly/explode.ts';
test('x', () => {
  for (let r = 0; r < 3; r++) {
  const p = P.table();
  let t = performance.now();
  const lap = (w: string) => { const n = performance.now(); console.log(w, (n - t).toFixed(1)); t = n; };
  const s = makeScene(p.parts, p.links);
  console.log(s.parts.map((q) => q.triangles.length / 9).join(' '));
  lap('scene');
  const run = { effort: 3000, stop: () => false, stopped: false };
  const tree = takeApart(s, s.parts.map((_, i) => [i]), null, run);
  lap('apart ' + run.effort);
  drawApart(s, tree, 30);
  lap('draw');
  }
});
