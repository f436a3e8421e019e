import type { Example } from '../family.ts';

const first = { wood: 'cherry', grain: 'x', left: '0', width: '800', front: '0', depth: '120', bottom: '0', height: '22' };
const second = { wood: 'cherry', grain: 'x', left: '0', width: '800', front: 'first.back', depth: '100', bottom: '0', height: '22' };
export const examples: readonly Example[] = [
  {
    name: 'two boards',
    words: 'Two boards glued edge to edge along their grain.',
    document: {
      dryfit: 1,
      title: 'Edge joint',
      units: 'mm',
      parts: { first, second },
      joints: { seam: { as: 'edge_joint@1', places: [{ enter: 'first', into: 'second' }] } },
    },
    removed: {},
    planar: true,
  },
];
