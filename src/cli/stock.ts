/** A board rack in a file of its own: a JSON list of boards. */
import { z } from 'zod';
import type { StockLine } from '../boards/stock.ts';
import { shown } from '../model/problem.ts';
import { Unusable, readText } from './verb.ts';

const line = z.strictObject({
  id: z.string().min(1).max(80),
  wood: z.string().min(1).max(60),
  nominal: z.string().max(40),
  thickness: z.number().positive(),
  width: z.number().positive(),
  length: z.number().positive(),
  count: z.int().min(0).nullable(),
  surface: z.enum(['rough', 'dressed', 'sheet']),
  have: z.boolean().optional(),
  sawn: z.enum(['flat', 'rift', 'quarter']).optional(),
  price: z
    .union([
      z.strictObject({ each: z.number() }),
      z.strictObject({ perBoardFoot: z.number() }),
      z.strictObject({ perMetre: z.number() }),
      z.strictObject({ perCubicMetre: z.number() }),
    ])
    .optional(),
});
const rack = z.strictObject({ boards: z.array(line).max(5000) });

/** Lengths in mm. Throws Unusable with the place of the first thing wrong. */
export function readStock(file: string): StockLine[] {
  let json: unknown;
  try {
    json = JSON.parse(readText(file));
  } catch (e) {
    if (e instanceof Unusable) throw e;
    throw new Unusable([{ where: shown(file, 200), what: 'this board rack is not readable JSON.' }]);
  }
  const r = rack.safeParse(json);
  if (!r.success) {
    const i = r.error.issues[0];
    throw new Unusable([
      {
        where: `${shown(file, 120)}: ${(i?.path ?? []).map(String).join('/')}`,
        what: i?.code === 'invalid_type' ? `a ${i.expected} is needed here.` : `${i?.message ?? 'unreadable'}.`,
      },
    ]);
  }
  return r.data.boards as StockLine[];
}
