import { beforeAll, test } from 'vitest';
import { loadKernel, kernel } from '../../src/solids/kernel.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { measure } from '../../src/solids/measure.ts';
import { meshOf } from '../../src/solids/mesh.ts';
import { facesOf } from '../../src/solids/faces.ts';
import { creasesOf } from '../../src/solids/crease.ts';
import { factsOf } from '../../src/solids/facts.ts';
import { readBody, readSolid } from '../../src/solids/read.ts';
import { rack } from '../bench/rack.ts';
import { cutOf } from '../support/sound.ts';
import { pairs } from '../bench/pairs.ts';
beforeAll(() => loadKernel());
test('x', () => { 
  for (const f of pairs()) console.log(JSON.stringify(f));
  const acc: Record<string, number> = {};
  const pieces = rack(40);
  for (let k=0;k<30;k++) { if (k===10) for (const x in acc) acc[x]=0; for (const p of pieces) withSolids(() => {
  let t = performance.now(); const lap=(w:string)=>{const n=performance.now();acc[w]=(acc[w]??0)+n-t;t=n};
  const s = cutOf(p.record); lap('cut'); s.body.volume(); s.body.surfaceArea(); lap('vol'); s.body.getMesh(); lap('getMesh'); readBody(s.body); lap('readBody'); readSolid(s); lap('readSolid'); measure(s); lap('measure'); const f=facesOf(s); lap('faces'); creasesOf(f); lap('creases'); meshOf(s); lap('mesh(all)'); factsOf(s); lap('facts');
  const K=kernel().Manifold; t=performance.now();
  const b=K.cube([10,10,10]); const c=p.record.features.map(()=>{const q=K.cube([1,1,1]); const r=q.translate([1,2,3]); return [q,r]}); const d=K.difference([b,...c.map(x=>x[1]!)]); d.status(); c.flat().forEach(x=>x.delete()); b.delete(); d.delete(); lap('rawlike(cubes inside)');
  }); }
  for (const [k,v] of Object.entries(acc)) console.log(k, (v/20/pieces.length*1000).toFixed(0), 'µs a part');
}, 600000);
