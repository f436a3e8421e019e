/** Lengths as texts for the document: exact, plain characters, read back as the same mm. */
import { INCH } from './ratio.ts';
import { nearestInteger } from './round.ts';

/** How far the written text may be from the length, mm: the grid of all records. */
const TRUE_TO = 1e-6;

/**
 * The shortest plain text that reads back as `mm` to 1e-6 mm, with its unit: "27 mm", "1-1/16 in", "0.3937008 in". Fractions of an inch down to 1/128.
 * Throws on a number that is not finite, which is always a fault of ours.
 */
export function writeLength(mm: number, unit: 'mm' | 'in'): string {
  if (!Number.isFinite(mm)) throw new Error(`a length to write must be finite, got ${mm}`);
  const minus = mm < -TRUE_TO / 2 ? '-' : '';
  const size = Math.abs(mm);
  if (unit === 'mm') return `${minus}${decimals(size, 6)} mm`;
  const n = nearestInteger((size / INCH) * 128);
  return `${minus}${Math.abs((n / 128) * INCH - size) <= TRUE_TO ? mixed(n) : decimals(size / INCH, 8)} in`;
}

/** n/128 in lowest terms, as a maker writes it. */
function mixed(n: number): string {
  const whole = Math.floor(n / 128);
  let [a, b] = [n % 128, 128];
  if (a === 0) return String(whole);
  while (a % 2 === 0) [a, b] = [a / 2, b / 2];
  return `${whole > 0 ? `${whole}-` : ''}${a}/${b}`;
}

function decimals(n: number, places: number): string {
  return n.toFixed(places).replace(/\.?0+$/, '');
}
