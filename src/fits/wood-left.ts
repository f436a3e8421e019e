import { middleOf, sizeOf } from '../geom/box.ts';
import { outPoint } from '../geom/frame.ts';
import { asPlaced, type Check, finding } from './check.ts';

/** What cutting leaves of a part: nothing, several pieces, a tenon that hangs in the air, a cut that meets no wood. */
export const woodLeft: Check = {
  id: 'wood-left',
  wave: 2,
  words: 'A part is cut away, falls apart, or a cut meets no wood.',
  run: ({ built, store }) => {
    if (!store) return [];
    return [...built.built.parts.values(), ...built.built.extras.values()].flatMap((p) => {
      const flaw = store.flaw(asPlaced(p));
      const facts = flaw === null ? store.facts(asPlaced(p)) : [];
      if (flaw === null && facts.length === 0) return [];
      const where = { at: outPoint(p.frame, middleOf(p.record.stock)), reach: Math.max(...sizeOf(p.record.stock)) / 2 };
      const base = {
        parts: [p.path],
        where,
        limit: 1,
        unit: 'count' as const,
        basis: 'computed' as const,
        source: { name: 'the solid of the part', basis: 'derived' as const },
      };
      if (flaw !== null)
        return [
          finding({
            ...base,
            rule: 'cannot-be-cut',
            grade: 'stops',
            title: 'This part cannot be cut',
            measured: 0,
            why: `The ${p.words}: ${flaw}.`,
          }),
        ];
      return facts.flatMap((f) => {
        if (f.fact === 'nothing left')
          return [
            finding({
              ...base,
              rule: 'nothing-left',
              grade: 'stops',
              title: 'Nothing is left of this part',
              measured: 0,
              why: `The cuts take away all the wood of the ${p.words}.`,
            }),
          ];
        if (f.fact === 'floats')
          return [
            finding({
              ...base,
              rule: 'floats',
              grade: 'stops',
              title: 'A part of a joint hangs in the air',
              measured: 0,
              why: `The ${f.feature} of the ${p.words} is not held by the wood that it should grow from.`,
            }),
          ];
        if (f.fact === 'in pieces')
          return [
            finding({
              ...base,
              rule: 'in-pieces',
              grade: 'stops',
              title: 'This part falls apart',
              measured: f.volumes.length,
              why: `The cuts leave the ${p.words} in ${f.volumes.length} pieces.`,
            }),
          ];
        return [
          finding({
            ...base,
            rule: 'cuts-nothing',
            grade: 'note',
            title: 'A cut that meets no wood',
            measured: 0,
            why: `The ${f.feature} of the ${p.words} takes nothing away.`,
            joint: f.feature,
          }),
        ];
      });
    });
  },
};
