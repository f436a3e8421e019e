/** Whether memory is given back: a piece of 60 parts edited and built again and again, as the app's worker does it. */
import { heapBytes } from '../../solids/kernel.ts';
import { liveSolids } from '../../solids/scope.ts';
import { editOf } from './edits.ts';
import { type Figure, figure } from './figure.ts';
import { openSession } from './session.ts';
import { shelving } from './shelving.ts';

/** The heap may grow so much between a tenth of the rebuilds and all of them. */
const GROWTH = 1.1;
/** Edits run through this many different pieces and begin again. */
const ROUND = 450;

export function heap(rebuilds = 5000): Figure[] {
  const session = openSession(shelving());
  let early = heapBytes();
  for (let n = 0; n < rebuilds; n++) {
    session.edit(editOf(n % ROUND));
    if (n === Math.floor(rebuilds / 10)) early = heapBytes();
  }
  const late = heapBytes();
  session.close();
  return [
    figure('heap', 'rebuilds', rebuilds, 'count'),
    figure('heap', 'solids alive once the piece is closed', liveSolids(), 'count', 0),
    figure('heap', 'memory after a tenth of the rebuilds', early, 'bytes'),
    figure('heap', 'memory after all of them, to that', late / early, 'ratio', GROWTH),
  ];
}
