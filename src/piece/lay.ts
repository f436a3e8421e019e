/** The piece's parts laid on rough boards. */
import type { LayJob } from '../boards/lay-out.ts';
import { layOut } from '../boards/lay-out.ts';
import type { Layout } from '../boards/layout.ts';
import type { Run } from '../boards/lay-wood.ts';
import type { StockLine } from '../boards/stock.ts';
import type { Built } from '../build/build.ts';
import type { Document } from '../model/document.ts';
import { blankJobs } from './list.ts';

/** Without a stock, boards are assumed; the layout says so. */
export function layPiece(doc: Document, built: Built, stock: readonly StockLine[] | undefined, run: Run): Layout {
  const job: LayJob = { jobs: blankJobs(built), system: doc.units };
  return layOut(stock ? { ...job, stock } : job, run);
}
