import { beforeAll, test } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { heap } from '../bench/heap.ts';
beforeAll(() => loadKernel());
test('x', () => { const t=performance.now(); for (const f of heap(1500)) console.log(JSON.stringify(f)); console.log((performance.now()-t)/1500);}, 600000);
