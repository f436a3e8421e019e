/** A built piece drawn together and apart, with its parts and the steps of putting it together in words. */
import type { Built } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import { asPlaced } from '../fits/check.ts';
import { type Vec3, add } from '../geom/vec3.ts';
import type { Document } from '../model/document.ts';
import { drawing } from '../papers/drawing.ts';
import { eyeFor } from '../papers/eye.ts';
import type { PageExample, PagePart } from '../papers/page.ts';
import type { Drawing, DrawnPiece } from '../papers/record.ts';
import { mmFigure } from '../units/figures.ts';
import { woodWords } from '../wood/woods.ts';
import { describePiece } from './describe.ts';
import { orderOf } from './order.ts';
import type { OrderView, PartView } from './view.ts';

/** The paper that a drawing is made for, units. */
const ROOM = [400, 300] as const;

type Drawn = Pick<PageExample, 'parts' | 'together' | 'apart' | 'steps'>;
export function drawnOf(doc: Document, built: Built, store: Store): Drawn {
  const view = describePiece(doc, built);
  const order = orderOf(built, store);
  const whole: DrawnPiece = { parts: view.parts, meshes: meshesOf(built, store), apart: new Map() };
  const spread: DrawnPiece = { ...whole, apart: offsetsOf(order) };
  const eye = eyeFor(spread);
  return {
    parts: partsOf(view.parts),
    together: drawing(whole, eye, ROOM),
    apart: drawing(spread, eye, ROOM),
    steps: order.steps.map((s) => s.words),
  };
}
/** One of the two, for whoever wants no more. */
export function drawnOnce(doc: Document, built: Built, store: Store, apart: boolean): Drawing {
  const whole: DrawnPiece = { parts: describePiece(doc, built).parts, meshes: meshesOf(built, store), apart: new Map() };
  const spread: DrawnPiece = { ...whole, apart: offsetsOf(orderOf(built, store)) };
  return drawing(apart ? spread : whole, eyeFor(spread), ROOM);
}
function meshesOf(built: Built, store: Store): DrawnPiece['meshes'] {
  const b = built.built;
  return new Map(
    [...b.parts.values(), ...b.extras.values()].flatMap((p) => {
      const mesh = store.mesh(asPlaced(p));
      return mesh ? [[p.record.key, mesh] as const] : [];
    }),
  );
}
const offsetsOf = (order: OrderView): Map<string, Vec3> =>
  new Map(Object.entries(order.apart).map(([path, moves]) => [path, moves.reduce<Vec3>((sum, m) => add(sum, m.offset), [0, 0, 0])]));
/** One line a kind of part; what joints bring along below, by its words. */
function partsOf(parts: readonly PartView[]): PagePart[] {
  const lines = new Map<string, PagePart & { count: number }>();
  for (const p of parts) {
    const key = p.letter === '' ? p.label : p.letter;
    const { length, width, thickness } = p.finished;
    const had = lines.get(key);
    if (had) had.count++;
    else
      lines.set(key, {
        letter: p.letter,
        label: p.label,
        wood: woodWords(p.wood),
        size: [length, width, thickness].map(mmFigure).join(' × '),
        count: 1,
      });
  }
  return [...lines.values()].map(({ count, ...line }) => (count > 1 ? { ...line, label: `${line.label}, ${count} in all` } : line));
}
