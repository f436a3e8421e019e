/** SHA-256 as FIPS 180-4 describes it: a page's policy names its own script by this sum, and the core has no crypto to ask. */

/** The first 32 bits behind the point of a number. */
const fraction32 = (n: number): number => ((n - Math.floor(n)) * 2 ** 32) >>> 0;
function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((p) => n % p !== 0)) found.push(n);
  return found;
}
/** Fractional parts of the cube roots of the first 64 primes, and of the square roots of the first 8 (FIPS 180-4, 4.2.2 and 5.3.3). */
const ROUND = primes(64).map((p) => fraction32(Math.cbrt(p)));
const START = primes(8).map((p) => fraction32(Math.sqrt(p)));

const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/** 32 bytes. */
export function sha256(bytes: Uint8Array): Uint8Array {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length << 3) >>> 0);
  const state = Uint32Array.from(START);
  const words = new Uint32Array(64);
  for (let at = 0; at < padded.length; at += 64) block(view, at, words, state);
  const out = new Uint8Array(32);
  const into = new DataView(out.buffer);
  state.forEach((word, i) => into.setUint32(i * 4, word));
  return out;
}

function block(view: DataView, at: number, w: Uint32Array, state: Uint32Array): void {
  const of = (list: Uint32Array | readonly number[], i: number): number => list[i] ?? 0;
  for (let i = 0; i < 16; i++) w[i] = view.getUint32(at + i * 4);
  for (let i = 16; i < 64; i++) {
    const [x, y] = [of(w, i - 15), of(w, i - 2)];
    const s0 = turned(x, 7) ^ turned(x, 18) ^ (x >>> 3);
    const s1 = turned(y, 17) ^ turned(y, 19) ^ (y >>> 10);
    w[i] = of(w, i - 16) + s0 + of(w, i - 7) + s1;
  }
  let [a, b, c, d, e, f, g, h] = [...state] as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; i++) {
    const one = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + of(ROUND, i) + of(w, i)) | 0;
    const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((n, i) => (state[i] = of(state, i) + n));
}
