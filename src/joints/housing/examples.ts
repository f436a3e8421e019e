import type { Example } from '../family.ts';

const side = { wood: 'pine', grain: 'z', left: '0', width: '18', front: '0', depth: '280', bottom: '0', height: '400' };
const shelf = {
  wood: 'pine',
  grain: 'x',
  left: 'side.right',
  width: '300',
  front: 'side.front',
  depth: '280',
  bottom: '150',
  height: '18',
};
const piece = (title: string, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side, shelf },
  joints: { shelf_end: { as: 'housing@1', places: [{ enter: 'shelf', into: 'side' }], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'through housing',
    words: 'A shelf let 6 mm into the side of a bookcase from edge to edge.',
    document: piece('Shelf in a side', { depth: '6' }),
    // 18 thick x 280 wide x 6 deep = 30 240
    removed: { side: 30240 },
    added: { shelf: 30240 },
    planar: true,
  },
  {
    name: 'stopped housing',
    words: 'The same shelf, its housing stopped 12 mm behind the front edge so that it does not show.',
    document: piece('Shelf in a side, stopped', { depth: '6', stopped: 'front', stop: '12' }),
    // 18 x (280 - 12) x 6 = 28 944
    removed: { side: 28944 },
    added: { shelf: 28944 },
    planar: true,
  },
  {
    name: 'bare-faced tongue',
    words: 'The same shelf cut back below to a tongue of 9 mm: one shoulder closes against the side.',
    document: piece('Shelf on a bare-faced tongue', { depth: '6', shoulders: 'bottom', tongue: '9' }),
    // 9 x 280 x 6 = 15 120
    removed: { side: 15120 },
    added: { shelf: 15120 },
    planar: true,
  },
  {
    name: 'two shoulders',
    words: 'A tongue of 6 mm in the middle of the shelf, stopped 12 mm behind the front edge.',
    document: piece('Shelf on a tongue with two shoulders', { depth: '6', shoulders: 'both', tongue: '6', stopped: 'front', stop: '12' }),
    // 6 x (280 - 12) x 6 = 9 648
    removed: { side: 9648 },
    added: { shelf: 9648 },
    planar: true,
  },
];
