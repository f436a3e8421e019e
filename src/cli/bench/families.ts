/** What each family's joints cost to cut through our door, against the bare kernel calls for the same records; and a long row of dovetails. */
import { buildPiece } from '../../build/build.ts';
import type { PartRecord } from '../../model/record.ts';
import { readDocument } from '../../model/parse.ts';
import { catalog, families } from '../../piece/catalog.ts';
import { cutPart } from '../../solids/cut.ts';
import { measure } from '../../solids/measure.ts';
import { withSolids } from '../../solids/scope.ts';
import { bareCut } from './bare.ts';
import { type Figure, figure, median, timed } from './figure.ts';

const MOST = 1.5;
/** A board with twenty tails is cut within this, ms, on the machine of the bench. */
const TAILS_MOST = 10;
const WARM = 3;

/** One figure for each family, all its examples together, and one for the row of twenty tails; medians over the rounds. */
export function familiesBench(rounds = 25): Figure[] {
  const all = Object.values(families).map((f) => ({ id: f.id, records: f.examples.flatMap((e) => recordsOf(e.document)) }));
  return [
    ...all.map(({ id, records }) => figure('families', `${id}: our door to bare calls`, ratioOf(records, rounds), 'ratio', MOST)),
    figure('families', 'board with twenty tails', tails(rounds), 'ms', TAILS_MOST),
  ];
}
function recordsOf(json: unknown): PartRecord[] {
  const read = readDocument(json, catalog);
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.where}: ${p.what}`).join('; '));
  const { drawn } = buildPiece(read.doc, families);
  return [...drawn.parts.values(), ...drawn.extras.values()].map((p) => p.record);
}
function ours(records: readonly PartRecord[]): number {
  return withSolids(() =>
    records.reduce((sum, r) => {
      const cut = cutPart(r, { who: 'part' });
      if (!cut.ok) throw new Error(cut.problem);
      return sum + measure(cut.solid).volume;
    }, 0),
  );
}
function bare(records: readonly PartRecord[]): number {
  return records.reduce((sum, r) => {
    const body = bareCut(r);
    const volume = body.volume();
    body.delete();
    return sum + volume;
  }, 0);
}
function ratioOf(records: readonly PartRecord[], rounds: number): number {
  const ratios: number[] = [];
  for (let k = -WARM; k < rounds; k++) {
    // Each side goes first every other time.
    const [a, b] =
      k % 2 === 0 ? [timed(() => ours(records)), timed(() => bare(records))] : [timed(() => bare(records)), timed(() => ours(records))];
    const [mine, raw] = k % 2 === 0 ? [a, b] : [b, a];
    if (Math.abs(mine[0] - raw[0]) > 1e-3 * raw[0]) throw new Error(`our door finds ${mine[0]} mm³, the bare calls ${raw[0]}`);
    if (k >= 0) ratios.push(mine[1] / raw[1]);
  }
  return median(ratios);
}
/** ms for one corner of a chest with twenty tails: the board with the tails and the one with the sockets, each cut once. */
function tails(rounds: number): number {
  const board = { wood: 'ash', bottom: '0', height: '800' };
  const records = recordsOf({
    dryfit: 1,
    title: 'Twenty tails',
    units: 'mm',
    parts: {
      side: { ...board, grain: 'y', left: '0', width: '18', front: '0', depth: '400' },
      front: { ...board, grain: 'x', left: '0', width: '600', front: '0', depth: '18' },
    },
    joints: { corner: { as: 'dovetail@1', places: [{ tails: 'side', pins: 'front' }], set: { tails: '20' } } },
  });
  const times: number[] = [];
  for (let k = -WARM; k < rounds; k++) {
    const [, time] = timed(() => ours(records));
    if (k >= 0) times.push(time);
  }
  return median(times);
}
