/** Sets of small whole numbers as bits. A set is never changed once another function has seen it. */
export type Bits = Uint32Array;

export const emptyBits = (size: number): Bits => new Uint32Array((size + 31) >>> 5);
export function bitsOf(size: number, items: Iterable<number>): Bits {
  const out = emptyBits(size);
  for (const i of items) put(out, i);
  return out;
}
export const put = (b: Bits, i: number): void => {
  b[i >>> 5] = (b[i >>> 5] ?? 0) | (1 << (i & 31));
};
export const has = (b: Bits, i: number): boolean => ((b[i >>> 5] ?? 0) & (1 << (i & 31))) !== 0;
export const minus = (a: Bits, b: Bits): Bits => a.map((w, k) => w & ~(b[k] ?? 0));
export const meets = (a: Bits, b: Bits): boolean => a.some((w, k) => (w & (b[k] ?? 0)) !== 0);
export const keyOf = (b: Bits): string => b.join(',');
export function itemsOf(b: Bits): number[] {
  const out: number[] = [];
  b.forEach((word, k) => {
    for (let w = word; w !== 0; w &= w - 1) out.push((k << 5) + 31 - Math.clz32(w & -w));
  });
  return out;
}
export function countOf(b: Bits): number {
  let n = 0;
  for (const word of b) for (let w = word; w !== 0; w &= w - 1) n++;
  return n;
}
