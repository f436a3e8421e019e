import { type Check, cap, finding, jointName, partsOf, reachOf, remedy, the, whereAt, withoutGlue } from './check.ts';

/** Glue where none may be: a solid panel or a drawer's bottom glued into a groove that runs across its grain. */
export const mustNotGlue: Check = {
  id: 'must-not-glue',
  wave: 1,
  words: 'A panel is glued into its groove, or another part that must be free to move is glued.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      const glued = (p.made?.contacts ?? []).filter((c) => c.hold === 'glued' && c.glue === 'never');
      // Families that judge their own glue line know better where a short one may be crossed.
      if (glued.length === 0 || p.family.rules.some((r) => r.tells === 'glue')) return [];
      const over = Math.max(...glued.map((c) => c.gluedLength ?? 0));
      const [a, b] = partsOf(p).map((path) => the(facts, path));
      const patches = withoutGlue(facts.doc, p);
      return [
        finding({
          rule: 'must-not-glue',
          grade: 'trouble',
          title: 'Glued where it must be free to move',
          parts: partsOf(p),
          joint: jointName(p),
          where: whereAt(p.meeting.frame, reachOf(p)),
          measured: over,
          limit: 0,
          unit: 'mm',
          basis: 'computed',
          why: `${cap(a ?? '')} is glued to ${b ?? ''} over {mm:${over}}, across its grain. It swells and shrinks with the seasons, ${b ?? ''} hardly does: ${a ?? 'it'} splits, or pushes the joint apart. Let it lie loose in its groove.`,
          source: { name: 'woodworkingtips.com, panels in frames', basis: 'read' },
          remedies: patches.length ? [remedy('Leave it without glue', patches, 'The groove alone holds it.')] : [],
        }),
      ];
    }),
};
