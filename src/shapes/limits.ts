/** Settings read one after the other, each held within its limits: the first that lies outside is told, and what would do is kept of all. */
import type { Face } from '../model/ids.ts';
import type { Edge, ShapeRefusal, ShapeSet, Spot } from './shape.ts';

/** The least that a cut takes off, and the least wood that it leaves, mm. */
export const LEAST = 0.1;
export const LEAVE = 1;
const SLACK = 1e-6;

type Nearest = Record<string, number | string | readonly Face[] | readonly Edge[] | readonly Spot[]>;
export type Limits = {
  /** A length in mm from `low` to `high`; `usual` where it is not set. What comes back can always be cut. */
  readonly length: (key: string, words: string, low: number, high: number, usual: number) => number;
  readonly angle: (key: string, words: string, low: number, high: number, usual: number) => number;
  readonly count: (key: string, words: string, low: number, high: number, usual: number) => number;
  /** One of the words; the first is the usual one. */
  readonly choice: (key: string, words: string, options: readonly string[]) => string;
  /** Something else is wrong; `nearest` of it is what would do. */
  readonly wrong: (problem: string, nearest?: Nearest) => void;
  readonly refusal: () => ShapeRefusal | null;
};

const round3 = (n: number): string => String(Number(n.toFixed(3)));
const DEG = 180 / Math.PI;

export function limitsOf(set: ShapeSet): Limits {
  const found: string[] = [];
  const nearest: Nearest = {};
  let hopeless = false;
  const wrong: Limits['wrong'] = (problem, more) => {
    found.push(problem);
    if (more) Object.assign(nearest, more);
    else hopeless = true;
  };
  /** The nearest value inside, on whole thousandths of the unit that it is written in. */
  const inside = (v: number, low: number, high: number, per: number): number => {
    const grid = 1000 * per;
    if (!(v >= low)) return Math.min(high, Math.ceil(low * grid - SLACK) / grid);
    return v > high ? Math.max(low, Math.floor(high * grid + SLACK) / grid) : v;
  };
  const number = (key: string, words: string, low: number, high: number, usual: number, per: number, unit: string): number => {
    const given = set[key];
    const asked = typeof given === 'number' ? given : usual;
    if (!(high >= low - SLACK)) {
      wrong(`there is no room for ${words}: at most ${round3(high * per)}${unit}, and at least ${round3(low * per)}${unit} is needed.`);
      return low;
    }
    if (asked >= low - SLACK && asked <= high + SLACK) return Math.min(high, Math.max(low, asked));
    const best = inside(asked, low, high, per);
    wrong(
      `${words} must be ${asked > high ? `at most ${round3(high * per)}` : `at least ${round3(low * per)}`}${unit}; ${typeof given === 'number' ? `${round3(asked * per)}${unit} is asked` : `say how much, for the usual ${round3(asked * per)}${unit} will not do`}.`,
      { [key]: best },
    );
    return best;
  };
  return {
    wrong,
    length: (key, words, low, high, usual) => number(key, words, low, high, usual, 1, ' mm'),
    angle: (key, words, low, high, usual) => number(key, words, low, high, usual, DEG, '°'),
    count: (key, words, low, high, usual) => {
      const n = number(key, words, low, high, usual, 1, '');
      if (Number.isInteger(n)) return n;
      const best = Math.min(high, Math.max(low, Math.round(n)));
      wrong(`${words} must be a whole number.`, { [key]: best });
      return best;
    },
    choice: (key, words, options) => {
      const given = set[key] ?? options[0] ?? '';
      if (typeof given === 'string' && options.includes(given)) return given;
      wrong(`${words} must be one of ${options.join(', ')}.`, { [key]: options[0] ?? '' });
      return options[0] ?? '';
    },
    refusal: () =>
      found[0] === undefined ? null : hopeless ? { ok: false, problem: found[0] } : { ok: false, problem: found[0], nearest },
  };
}
