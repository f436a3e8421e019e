/** What is to be seen on a picture: a reader of PNG screenshots (8 bits, not interlaced, as browsers write them; the format's filters are W3C's). */
import { inflateSync } from 'node:zlib';

export type Picture = { readonly width: number; readonly height: number; readonly rgb: Uint8Array };

export function readPng(png: Buffer): Picture {
  let at = 8;
  let [width, height, channels] = [0, 0, 0];
  const packed: Buffer[] = [];
  while (at < png.length) {
    const size = png.readUInt32BE(at);
    const kind = png.toString('latin1', at + 4, at + 8);
    const body = png.subarray(at + 8, at + 8 + size);
    if (kind === 'IHDR') {
      [width, height] = [body.readUInt32BE(0), body.readUInt32BE(4)];
      channels = { 2: 3, 6: 4 }[body[9] ?? 0] ?? 0;
      if (body[8] !== 8 || channels === 0 || body[12] !== 0) throw new Error(`this PNG is of another kind: ${body.toString('hex')}`);
    } else if (kind === 'IDAT') packed.push(body);
    at += size + 12;
  }
  const rows = unfilter(inflateSync(Buffer.concat(packed)), width * channels, height, channels);
  const rgb = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) for (let c = 0; c < 3; c++) rgb[3 * i + c] = rows[channels * i + c] ?? 0;
  return { width, height, rgb };
}
/** Takes the filter of each row back: none, left, above, their mean, or the nearest of left, above and corner. */
function unfilter(raw: Buffer, line: number, height: number, step: number): Uint8Array {
  const out = new Uint8Array(line * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (line + 1)] ?? 0;
    for (let x = 0; x < line; x++) {
      const left = x < step ? 0 : (out[y * line + x - step] ?? 0);
      const above = y === 0 ? 0 : (out[(y - 1) * line + x] ?? 0);
      const corner = x < step || y === 0 ? 0 : (out[(y - 1) * line + x - step] ?? 0);
      const p = left + above - corner;
      const [l, a, c] = [Math.abs(p - left), Math.abs(p - above), Math.abs(p - corner)];
      const nearest = l <= a && l <= c ? left : a <= c ? above : corner;
      out[y * line + x] = (raw[y * (line + 1) + 1 + x] ?? 0) + ([0, left, above, (left + above) >> 1, nearest][filter] ?? 0);
    }
  }
  return out;
}

/** How many colours a picture has, and which share of it is not its commonest colour. */
export function statistics(p: Picture): { readonly colours: number; readonly inked: number } {
  const times = new Map<number, number>();
  for (let i = 0; i < p.rgb.length; i += 3) {
    const colour = ((p.rgb[i] ?? 0) << 16) | ((p.rgb[i + 1] ?? 0) << 8) | (p.rgb[i + 2] ?? 0);
    times.set(colour, (times.get(colour) ?? 0) + 1);
  }
  return { colours: times.size, inked: 1 - Math.max(...times.values()) / (p.width * p.height) };
}
/** Share of the pixels of which any channel differs by more than `by`. Pictures of different sizes differ wholly. */
export function difference(a: Picture, b: Picture, by = 24): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  let n = 0;
  for (let i = 0; i < a.rgb.length; i += 3) if ([0, 1, 2].some((c) => Math.abs((a.rgb[i + c] ?? 0) - (b.rgb[i + c] ?? 0)) > by)) n++;
  return n / (a.width * a.height);
}
