import { middleOf, sizeOf } from '../geom/box.ts';
import { outPoint } from '../geom/frame.ts';
import { type Check, finding } from './check.ts';
import { PLAIN_LABELS } from './plain-labels.ts';

/** Parts that no joint holds and that are not said to lie loose. */
export const heldByNothing: Check = {
  id: 'held-by-nothing',
  wave: 1,
  words: 'A part is joined to nothing.',
  run: (facts) => {
    const b = facts.built.built;
    if (b.parts.size < 2) return [];
    const joined = new Set(b.places.flatMap((p) => Object.values(p.roles).flat()));
    return [...b.parts.values()]
      .filter((p) => p.doc.loose !== true && !joined.has(p.path))
      .map((p) =>
        finding({
          rule: 'held-by-nothing',
          grade: 'stops',
          title: 'Held by nothing',
          parts: [p.path],
          where: { at: outPoint(p.frame, middleOf(p.record.stock)), reach: Math.max(...sizeOf(p.record.stock)) / 2 },
          measured: 0,
          limit: 1,
          unit: 'count',
          basis: 'drawn',
          why: `No joint holds the ${p.words}. Join it to what it touches, or say that it lies loose.`,
          source: { name: 'the joints of the document', basis: 'derived' },
          remedies: [{ label: PLAIN_LABELS.loose, patches: [{ op: 'add', path: `parts/${p.id}/loose`, value: true }], proof: 'untried' }],
        }),
      );
  },
};
