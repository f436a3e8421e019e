/** A 128-bit hash of text as 32 hex digits (four FNV-1a lanes with a final mix): the same on every machine; not for secrets. */
export function hashText(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x01234567;
  let c = 0x9e3779b9;
  let d = 0x85ebca6b;
  for (let i = 0; i < text.length; i++) {
    const k = text.charCodeAt(i);
    a = Math.imul(a ^ k, 0x01000193);
    b = Math.imul(b ^ k, 0x01000193) ^ (a >>> 15);
    c = Math.imul(c ^ k, 0x85ebca6b) ^ (b >>> 13);
    d = Math.imul(d ^ k, 0xc2b2ae35) ^ (c >>> 16);
  }
  return [a, b, c, d].map((n) => finish(n).toString(16).padStart(8, '0')).join('');
}
function finish(n: number): number {
  let h = n;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
