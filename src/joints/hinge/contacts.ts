import type { Contact } from '../family.ts';
import { flatAt, flatContact } from '../blocks.ts';
import { type Ground, leafSpan } from './lay.ts';
import type { Hinge } from './params.ts';

/** The gap, and each leaf on the bed of its recess. */
export function contacts(g: Ground, s: Hinge, at: readonly number[]): Contact[] {
  return [gap(g), ...at.flatMap((y, i) => [leaf(g, s, y, i, 'enter'), leaf(g, s, y, i, 'into')])];
}
const gap = (g: Ground): Contact =>
  flatContact({
    name: 'gap beside the door',
    a: { role: 'enter', feature: 'stock', face: g.enter.end },
    b: { role: 'into', feature: 'stock', face: g.into.end },
    on: flatAt('z+', 0, [Math.min(g.face, g.face + g.inward * g.deep), Math.max(g.face, g.face + g.inward * g.deep)], g.y),
    fit: 'gap',
    meant: g.gap,
    hold: 'dry',
    glue: 'never',
  });
function leaf(g: Ground, s: Hinge, y: number, i: number, role: 'enter' | 'into'): Contact {
  const door = role === 'enter';
  return flatContact({
    name: `leaf ${i + 1} in the ${door ? 'door' : 'case'}`,
    a: { role: 'extra', index: i, feature: 'outline', face: door ? 'leaf of the door' : 'leaf of the case' },
    b: { role, feature: `leaf recess ${i + 1}`, face: 'bed' },
    on: flatAt(door ? 'z-' : 'z+', door ? -s.thick : g.gap + s.thick, leafSpan(g, s), [y, y + s.length]),
    fit: 'slip',
    hold: 'pinned',
    glue: 'never',
  });
}
