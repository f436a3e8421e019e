/** Whether memory is given back: a piece of 60 parts built again and again. */
import { heapBytes } from '../../src/solids/kernel.ts';
import { meshOf } from '../../src/solids/mesh.ts';
import { overlap } from '../../src/solids/pair.ts';
import { sectionOf } from '../../src/solids/section.ts';
import { liveSolids, withSolids } from '../../src/solids/scope.ts';
import { cutOf } from '../support/records.ts';
import { type Figure, figure } from './figure.ts';
import { rack } from './rack.ts';

/** The heap may grow so much between a tenth of the rebuilds and all of them. */
const GROWTH = 1.1;

export function heap(rebuilds = 5000, parts = 60): Figure[] {
  const piece = rack(parts);
  const at = (i: number): (typeof piece)[number] => piece[i % piece.length] as (typeof piece)[number];
  let early = 0;
  let live = 0;
  for (let n = 0; n < rebuilds; n++) {
    withSolids(() => {
      const solids = piece.map((p) => cutOf(p.record, p.who));
      const [a, b] = [solids[n % parts], solids[(n + 1) % parts]];
      if (!a || !b) throw new Error('a rack without parts');
      meshOf(a);
      sectionOf(a, { ...at(n).frame, o: [0, 0, 200] });
      // Pushed into each other, so that a bite is made and measured too.
      overlap(a, at(n).frame, b, { ...at(n + 1).frame, o: at(n).frame.o }, { facets: true });
    });
    live = Math.max(live, liveSolids());
    if (n === Math.floor(rebuilds / 10)) early = heapBytes();
  }
  return [
    figure('heap', 'solids alive after each rebuild', live, 'count', 0),
    figure('heap', 'memory after a tenth of the rebuilds', early, 'bytes'),
    figure('heap', 'memory after all of them, to that', heapBytes() / early, 'ratio', GROWTH),
  ];
}
