/** Edits of the shelving, one size, joint or part at a time, in turn; each of them leaves a piece that was not there before. */
import type { Patch } from '../../model/finding.ts';

type Knob = { readonly path: string; readonly from: number; readonly step: number; readonly text?: (n: number) => string };
const size = (id: string, from: number, step: number): Knob => ({ path: `sizes/${id}`, from, step });
const LEVELS = [1, 2, 3, 4] as const;

const knobs: readonly Knob[] = [
  size('long', 1100, 1),
  size('deep', 420, 1),
  size('high', 1500, 1),
  size('post_w', 52, 0.1),
  size('post_d', 52, 0.1),
  size('setback', 6, 0.1),
  size('rail_h', 70, 0.2),
  size('rail_t', 28, 0.1),
  size('lift', 85, 0.2),
  size('gap', 18, 0.1),
  size('slat_t', 18, 0.1),
  size('housed', 7, 0.05),
  size('side_tenon', 26, 0.1),
  ...LEVELS.flatMap((n): Knob[] => [
    size(`level_${n}`, 140 + 420 * (n - 1), 0.5),
    size(`slat_w_${n}`, 58 + 2 * n, 0.1),
    size(`tenon_${n}`, 24 + n, 0.1),
    { path: `joints/long_${n}_ends/set/thickness`, from: 9, step: 0.05 },
    { path: `joints/side_${n}_ends/set/width`, from: 40, step: 0.2 },
    { path: `joints/slat_${n}_ends/set/depth`, from: 7, step: 0.05, text: (d) => `housed + ${(d - 6.95).toFixed(2)}` },
    { path: `parts/long_${n}/height`, from: 0, step: 0.2, text: (d) => `rail_h + ${(d + 0.2).toFixed(1)}` },
    { path: `parts/slat_${n}/height`, from: 0, step: 0.1, text: (d) => `slat_t - ${(d + 0.1).toFixed(1)}` },
  ]),
  { path: 'parts/tray/width', from: 300, step: 1 },
];

/** The nth edit, from 0. */
export function editOf(n: number): readonly Patch[] {
  const k = knobs[n % knobs.length] as Knob;
  const value = k.from + k.step * (1 + Math.floor(n / knobs.length));
  return [{ op: 'add', path: k.path, value: k.text ? k.text(value) : String(Number(value.toFixed(3))) }];
}
