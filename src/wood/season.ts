/**
 * How wood follows the air, as far as gaps need it: moisture content from the air, and growth across the grain from moisture content.
 * Averages over a timber: a board may differ by a third, and a finish slows the change without stopping it.
 */
import { woodOf } from './woods.ts';

/** The air of a room in which figures without a temperature are meant, degrees C. */
const ROOM = 21.1;

/**
 * Moisture content, per cent, that wood comes to in air of this humidity (a share) and temperature (degrees C). Hailwood-Horrobin form with
 * two hydrates, coefficients of Simpson, FPL-RN-0268 (1998) and Wood Handbook FPL-GTR-190 eq. 4-5, read at second hand and partly from
 * memory; checked against the printed Table 4-2.
 */
export function moistureIn(humidity: number, celsius: number = ROOM): number {
  const [t, h] = [celsius, humidity];
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * h;
  const wet = k1 * kh + k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (wet + k1 * k2 * kh * kh) / (1 + wet));
}
/** A moisture content as typed: "8", "8 %", or the air that gives it: "65 % RH". null when it is neither. */
export function wetnessIn(text: string): number | null {
  const m = /^(\d{1,3}(?:\.\d{1,3})?) *%? *(rh)?$/i.exec(text.trim());
  if (!m) return null;
  const n = Number(m[1]);
  if (m[2] === undefined) return n;
  return n > 0 && n < 100 ? moistureIn(n / 100) : null;
}

/** Timbers without figures are taken to move as much as the livelier ones; common practice. */
const LIVELY = 0.0037;
/**
 * Growth across the grain as a share of the size for one per cent of moisture content: flat-sawn boards unless told otherwise. Wood Handbook
 * Table 13-5 where the species has its figures; else from its shrinkage S, C = (S/F) / (100 - S (F - 10)/F) with F = 30 %, which
 * gives that table's figures back. Sheets, glass and metal: nothing.
 */
export function growthOf(wood: string, way: 'tangential' | 'radial' = 'tangential'): number {
  const w = woodOf(wood);
  if (w.kind === 'other') return 0;
  if (w.kind === 'own') return LIVELY;
  if (w.species.change) return w.species.change[way].value;
  const s = w.species.shrinkage[way].value;
  const f = w.species.movesBelow;
  return s / f / (100 - (s * (f - 10)) / f);
}
/** Growth from one moisture content to another as a share of the size (Wood Handbook eq. 13-2); below 0 it shrinks. */
export const seasonShare = (wood: string, now: number, then: number, way: 'tangential' | 'radial' = 'tangential'): number =>
  growthOf(wood, way) * (then - now);
