/** The shared part of two triangles in a plane. One scratch polygon serves all calls: read it before the next call. */
const MAX = 12;
let cut = new Float64Array(2 * MAX);
let spare = new Float64Array(2 * MAX);

/**
 * Clips triangle `a` (corners from a[i], shifted by du, dv) by triangle `b` (from b[j]), both counter-clockwise.
 * Returns how many corners are left, 0 when they share nothing; they stand in `clipped()`.
 */
export function clipTriangles(a: Float64Array, i: number, du: number, dv: number, b: Float64Array, j: number): number {
  for (let k = 0; k < 6; k += 2) {
    cut[k] = a[i + k]! + du;
    cut[k + 1] = a[i + k + 1]! + dv;
  }
  let n = 3;
  for (let e = 0; e < 6 && n > 0; e += 2) {
    const f = (e + 2) % 6;
    n = clipByLine(n, b[j + e]!, b[j + e + 1]!, b[j + f]!, b[j + f + 1]!);
  }
  return n;
}
/** Corners left by the last clip, x y x y … */
export const clipped = (): Float64Array => cut;

/** Keeps what lies left of the line p → q. */
function clipByLine(n: number, px: number, py: number, qx: number, qy: number): number {
  const nx = py - qy;
  const ny = qx - px;
  let out = 0;
  let ax = cut[2 * n - 2]!;
  let ay = cut[2 * n - 1]!;
  let sa = nx * (ax - px) + ny * (ay - py);
  for (let k = 0; k < n; k++) {
    const bx = cut[2 * k]!;
    const by = cut[2 * k + 1]!;
    const sb = nx * (bx - px) + ny * (by - py);
    if (sa >= 0 !== sb >= 0) {
      const t = sa / (sa - sb);
      spare[2 * out] = ax + t * (bx - ax);
      spare[2 * out + 1] = ay + t * (by - ay);
      out++;
    }
    if (sb >= 0) {
      spare[2 * out] = bx;
      spare[2 * out + 1] = by;
      out++;
    }
    ax = bx;
    ay = by;
    sa = sb;
  }
  [cut, spare] = [spare, cut];
  return out >= 3 ? out : 0;
}
/** Area of the clipped polygon (n corners) and its width 2·area/girth, which is that of the strip where it is slim. */
export function measureClip(n: number): { readonly area: number; readonly width: number } {
  let area = 0;
  let girth = 0;
  for (let k = 0; k < n; k++) {
    const m = (k + 1) % n;
    const [ax, ay, bx, by] = [cut[2 * k]!, cut[2 * k + 1]!, cut[2 * m]!, cut[2 * m + 1]!];
    area += (ax - cut[0]!) * (by - cut[1]!) - (bx - cut[0]!) * (ay - cut[1]!);
    girth += Math.hypot(bx - ax, by - ay);
  }
  area /= 2;
  return { area, width: girth > 0 ? (2 * area) / girth : 0 };
}
