/** Troubles gathered while settings are held against what a space allows. */
import type { Opening, Settings, Trouble } from './maker.ts';
import { textAtLeast, textAtMost } from './text.ts';

type Bound = (setting: string, cannot: string, limit: number, asked: number, nearest?: string) => void;
export type Bounds = {
  readonly most: Bound;
  readonly least: Bound;
  readonly add: (t: Trouble) => void;
  /** All that were gathered. Of a setting that is wanted both larger and smaller than itself no nearest is told: there is none. */
  readonly all: () => Trouble[];
};
/** Lengths in mm, with the nearest length as it would be typed; other settings bring the nearest text along. */
export function bounds(units: Opening['units'], settings: Settings): Bounds {
  const found: Trouble[] = [];
  const low = new Map<string, number>();
  const high = new Map<string, number>();
  const keep = (setting: string): void => {
    if (!low.has(setting)) low.set(setting, settings[setting]?.least ?? 0);
    if (!high.has(setting)) high.set(setting, settings[setting]?.most ?? Infinity);
  };
  // A typed length lies on a grid: between two bounds nearer than its step there may be none.
  const step = units === 'in' ? 0.4 : 0.1;
  const possible = (setting: string): boolean => (low.get(setting) ?? 0) <= (high.get(setting) ?? Infinity) - step;
  return {
    add: (t) => found.push(t),
    most: (setting, cannot, limit, asked, nearest = textAtMost(limit, units)) => {
      keep(setting);
      high.set(setting, Math.min(high.get(setting) ?? Infinity, limit));
      if (asked > limit + 1e-6) found.push({ setting, cannot, limit, asked, nearest });
    },
    least: (setting, cannot, limit, asked, nearest = textAtLeast(limit, units)) => {
      keep(setting);
      low.set(setting, Math.max(low.get(setting) ?? 0, limit));
      if (asked < limit - 1e-6) found.push({ setting, cannot, limit, asked, nearest });
    },
    all: () =>
      found.map((t) => {
        const { nearest: _, ...bare } = t;
        return low.has(t.setting) && !possible(t.setting) ? bare : t;
      }),
  };
}
