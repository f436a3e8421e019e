/** One measured figure of a bench; printed as one line of JSON. */
export type Figure = {
  readonly bench: string;
  readonly figure: string;
  readonly value: number;
  readonly unit: string;
  /** What it must not exceed; null when it is only told. */
  readonly limit: number | null;
  readonly holds: boolean;
};
export const figure = (bench: string, name: string, value: number, unit: string, limit: number | null = null): Figure => ({
  bench,
  figure: name,
  value: Number(value.toPrecision(4)),
  unit,
  limit,
  holds: limit === null || value <= limit,
});
export const median = (all: readonly number[]): number => {
  const sorted = all.toSorted((a, b) => a - b);
  const m = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[m] ?? Number.NaN) : ((sorted[m - 1] ?? Number.NaN) + (sorted[m] ?? Number.NaN)) / 2;
};
/** What work gives, and how long it took, ms. */
export function timed<T>(work: () => T): [T, number] {
  const start = performance.now();
  const result = work();
  return [result, performance.now() - start];
}
