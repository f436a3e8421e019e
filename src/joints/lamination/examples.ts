import type { Example } from '../family.ts';

const lower = { wood: 'ash', grain: 'x', left: '0', width: '700', front: '0', depth: '60', bottom: '0', height: '22' };
const upper = { wood: 'ash', grain: 'x', left: '0', width: '700', front: '0', depth: '60', bottom: 'lower.top', height: '22' };
export const examples: readonly Example[] = [
  {
    name: 'two layers',
    words: 'Two layers glued face to face into a thicker piece.',
    document: {
      dryfit: 1,
      title: 'Lamination',
      units: 'mm',
      parts: { lower, upper },
      joints: { layers: { as: 'lamination@1', places: [{ enter: 'lower', into: 'upper' }] } },
    },
    removed: {},
    planar: true,
  },
];
