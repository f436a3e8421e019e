import { test } from 'vitest';
import * as P from './pieces.ts';
import { makeScene } from '../../src/assembly/scene.ts';
import { makeGraph } from '../../src/assembly/graph.ts';
import { waysApart } from '../../src/assembly/split.ts';
import { itemsOf, bitsOf } from '../../src/assembly/bits.ts';
test('x', () => {
  const p = P.table();
  const s = makeScene(p.parts, p.links);
  const g = makeGraph(s, s.parts.map((_, i) => [i]));
  const show = (names: string[]) => { console.log('----', names.join(' ')); for (const w of waysApart(g, bitsOf(9, names.map((n) => s.index.get(n)!)), () => [0, 1, 2, 3, 4, 5]).slice(0,6)) console.log(w.cost.toFixed(2), w.movers.map((m) => `${itemsOf(m.set).map((i) => s.parts[i]!.path)} @${m.dir} ${m.cost.toFixed(2)} ${m.joined}`).join(' | '));};
  show(s.parts.map((q) => q.path).filter((q) => q !== 'top'));
  show(['apron:front', 'apron:back', 'top']);
  show(['apron:front', 'apron:back']);
  show(['apron:left', 'leg:left:front', 'leg:left:back']);
});
