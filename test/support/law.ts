/**
 * Laws: what must hold for every input, tried on seeded random ones. The seed stands in the title of the test; run it again with
 * LAW_SEED=<seed>. LAW_RUNS=10 tries ten times as many inputs.
 */
import fc from 'fast-check';
import { test } from 'vitest';

type Options = { readonly runs?: number; readonly timeout?: number };

const whole = (name: 'LAW_SEED' | 'LAW_RUNS', otherwise: number): number => {
  const text = process.env[name];
  if (text === undefined || text === '') return otherwise;
  const value = Number(text);
  if (!Number.isInteger(value)) throw new Error(`${name} is '${text}'; it should be a whole number.`);
  return value;
};

/** One seed for all laws of this file in this run. */
const seed = whole('LAW_SEED', Math.floor(Math.random() * 2 ** 31));
const times = whole('LAW_RUNS', 1);
if (times < 1) throw new Error(`LAW_RUNS is ${times}; it should be 1 or more.`);

/** A test that fails, with the seed and the smallest failing input, where the property does not hold. 100 runs unless told otherwise. */
export function law<T>(name: string, property: fc.IRawProperty<T>, options?: Options): void;
export function law<T>(name: string, inputs: fc.Arbitrary<T>, holds: (input: T) => void | boolean | Promise<void>, options?: Options): void;
export function law<T>(
  name: string,
  first: fc.IRawProperty<T> | fc.Arbitrary<T>,
  second?: ((input: T) => void | boolean | Promise<void>) | Options,
  third?: Options,
): void {
  const property = typeof second === 'function' ? fc.asyncProperty(first as fc.Arbitrary<T>, async (input) => second(input)) : first;
  const options = (typeof second === 'function' ? third : second) ?? {};
  const settings = { seed, numRuns: (options.runs ?? 100) * times };
  test(`${name} (seed ${seed})`, { timeout: (options.timeout ?? 60_000) * times }, async () => {
    await fc.assert(property as fc.IAsyncProperty<T>, settings);
  });
}
