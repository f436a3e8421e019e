/** Random jobs, stocks and shops for the laws of the layout. */
import fc from 'fast-check';
import type { BlankJob } from '../../src/boards/blank.ts';
import type { LayJob } from '../../src/boards/lay-out.ts';
import { type Shop, defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';

const wood = fc.constantFrom('cherry', 'white oak', 'bog oak');
const size = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.integer({ min, max }),
    fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64),
  );

const part = (i: number): fc.Arbitrary<BlankJob> =>
  fc.record({
    part: fc.constant(String.fromCharCode(65 + i)),
    copies: fc.integer({ min: 1, max: 5 }),
    wood,
    finished: fc.record({
      length: size(30, 2600),
      width: fc.oneof({ weight: 4, arbitrary: size(12, 130) }, { weight: 1, arbitrary: size(100, 400) }),
      thickness: fc.oneof(size(6, 30), size(20, 110)),
    }),
    made: fc.oneof(
      { weight: 4, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.constant([{ staves: { widest: 90, alternate: true }, across: 'width' as const }]) },
      { weight: 1, arbitrary: fc.constant([{ layers: [15, 15], across: 'thickness' as const }]) },
    ),
    turns: fc.boolean(),
  });
const parts = fc.integer({ min: 1, max: 10 }).chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => part(i))));

const line = (i: number): fc.Arbitrary<StockLine> =>
  fc.record({
    id: fc.constant(`line ${i}`),
    wood,
    nominal: fc.constantFrom('4/4', '8/4', '27 mm', 'as measured'),
    thickness: fc.oneof(size(18, 30), size(40, 110)),
    width: size(40, 330),
    length: size(300, 4000),
    count: fc.option(fc.integer({ min: 0, max: 6 }), { nil: null, freq: 3 }),
    surface: fc.constantFrom('rough' as const, 'rough' as const, 'dressed' as const),
  });
const stock = fc.integer({ min: 0, max: 7 }).chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => line(i))));

const shop: fc.Arbitrary<Shop> = fc
  .record({
    system: fc.constantFrom('mm' as const, 'in' as const),
    crosscut: fc.constantFrom(0, 1, 2.4, 3.175, 5),
    rip: fc.constantFrom(0, 1, 2.4, 3.175, 5),
    ripAt: fc.constantFrom('band saw' as const, 'table saw' as const, 'hand saw' as const),
    length: fc.constantFrom(0, 12.7, 25, 100),
    width: fc.constantFrom(0, 6, 10),
    thin: fc.constantFrom(0, 3, 4.7625),
    endTrim: fc.constantFrom(0, 1, 25, 75),
    straighten: fc.constantFrom(0, 3, 12),
    farEdge: fc.constantFrom(0, 3),
    dressedTrim: fc.constantFrom(0, 12),
  })
  .map((s) => {
    const base = defaultShop(s.system);
    return {
      ...base,
      kerf: { crosscut: s.crosscut, rip: s.rip },
      ripAt: s.ripAt,
      over: { ...base.over, length: s.length, width: s.width, thin: s.thin, thick: s.thin + 1 },
      rough: { endTrim: s.endTrim, straighten: s.straighten, farEdge: s.farEdge },
      dressed: { endTrim: s.dressedTrim, sawnEdge: 1.5 },
    };
  });

export type KnownJob = LayJob & { readonly stock: readonly StockLine[]; readonly shop: Shop };
export const anyJob: fc.Arbitrary<KnownJob> = fc.record({
  jobs: parts,
  stock,
  shop,
  aim: fc.constantFrom('least wood' as const, 'fewest boards' as const),
});
/** Parts of usual furniture sizes, for assumed boards. */
export const usualParts: fc.Arbitrary<BlankJob[]> = fc
  .array(
    fc.record({
      copies: fc.integer({ min: 1, max: 4 }),
      wood,
      finished: fc.record({ length: size(60, 2200), width: size(20, 230), thickness: size(8, 90) }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((list) => list.map((p, i) => ({ part: String.fromCharCode(65 + i), ...p })));
