/** Base64 (RFC 4648, section 4), here because the core has neither btoa nor Buffer. */
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The bytes of a view as text, padded with '='. */
export function base64(view: ArrayBufferView): string {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  const at = (i: number): number => bytes[i] ?? 0;
  const digit = (n: number, shift: number): string => DIGITS[(n >> shift) & 63] ?? '';
  const out: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const n = (at(i) << 16) | (at(i + 1) << 8) | at(i + 2);
    const left = bytes.length - i;
    out.push(digit(n, 18) + digit(n, 12) + (left > 1 ? digit(n, 6) : '=') + (left > 2 ? digit(n, 0) : '='));
  }
  return out.join('');
}
