/** A piece of many parts: a drying deck of two floors of slats let too deep into their rails. */
export function deckOf(slats: number): string {
  const [floors, sides, ends] = [
    ['low', 'high'],
    ['front', 'rear'],
    ['left', 'right'],
  ] as const;
  const each = floors.flatMap((floor) => sides.map((side) => ({ floor, side })));
  return JSON.stringify({
    dryfit: 1,
    title: 'Drying deck for boards',
    units: 'mm',
    sizes: { long: String(slats * 60 + 100), deep: '900', slat_w: '40', slat_t: '18', let_in: '18' },
    parts: {
      rail: {
        wood: 'ash',
        grain: 'x',
        copies: [
          { mirror: 'y', names: sides },
          { row: 'z', count: 2, step: '400', names: floors },
        ],
        left: '-long/2',
        right: 'long/2',
        front: '-deep/2',
        depth: '40',
        bottom: '200',
        height: '70',
      },
      slat: {
        wood: 'ash',
        grain: 'y',
        copies: [
          { row: 'x', count: slats, step: '60' },
          { row: 'z', count: 2, step: '400', names: floors },
        ],
        left: '-long/2 + 60',
        width: 'slat_w',
        front: '-deep/2 + 40',
        back: 'deep/2 - 40',
        bottom: '230',
        height: 'slat_t',
      },
      post: {
        wood: 'ash',
        grain: 'z',
        copies: [
          { mirror: 'x', names: ends },
          { mirror: 'y', names: sides },
        ],
        left: '-long/2 - 60',
        width: '60',
        front: '-deep/2 - 10',
        depth: '60',
        bottom: '0',
        height: '760',
      },
    },
    joints: {
      slats: {
        as: 'housing@1',
        places: each.map(({ floor, side }) => ({ enter: `slat:*:${floor}`, into: `rail:${side}:${floor}` })),
        set: { depth: 'let_in' },
      },
      corners: {
        as: 'mortise_tenon@1',
        places: each.flatMap(({ floor, side }) => ends.map((end) => ({ enter: `rail:${side}:${floor}`, into: `post:${end}:${side}` }))),
      },
    },
  });
}
