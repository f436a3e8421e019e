/** From parts to the pieces of wood that have to be found on boards. All lengths mm. */
import { quantise } from '../geom/vec3.ts';
import { type Problem, problem } from '../model/problem.ts';
import { type Shop, overThickness } from './shop.ts';

/** Length along the grain, then width, then thickness. */
export type Size3 = { readonly length: number; readonly width: number; readonly thickness: number };
/** One step of gluing up, outermost first. `across`: which size of the part is divided. */
export type MadeStep =
  | { readonly layers: readonly number[]; readonly across: 'thickness' | 'width' }
  | { readonly staves: { readonly widest: number; readonly alternate?: boolean }; readonly across: 'thickness' | 'width' };

export type BlankJob = {
  /** Letter of the kind of part, or its path. */
  readonly part: string;
  readonly copies: number;
  /** Path of each copy, where known: hover on a board finds the part by it. */
  readonly paths?: readonly string[];
  readonly wood: string;
  readonly finished: Size3;
  readonly made?: readonly MadeStep[];
  /** The pieces that it is glued up from, when they are already worked out; else `made` divides the part. */
  readonly pieces?: readonly Size3[];
  /** Neighbouring pieces given by `pieces` lie with their heart side up and down in turn. */
  readonly alternate?: boolean;
  /** A sheet without a face grain may lie either way. Wood never turns, whatever is said here. */
  readonly turns?: boolean;
};

/** One piece of wood to be found on a board. */
export type Blank = {
  readonly part: string;
  /** 1 … copies */
  readonly copy: number;
  /** '1' when the part is of one piece, else '2' (second layer or stave) or '2.3' (third stave of the second layer). */
  readonly piece: string;
  /** Number of pieces that its part is glued up from. */
  readonly of: number;
  readonly path: string | null;
  readonly wood: string;
  /** Size of this piece in the finished part. */
  readonly finished: Size3;
  /** Which side faces up in the glue-up where rings are to alternate. */
  readonly heart: 'up' | 'down' | null;
  readonly turns: boolean;
  /** Sizes that stay over-size until the pieces are glued together. */
  readonly later: { readonly length: boolean; readonly width: boolean };
};

/** Rough size of a blank: the finished size with the shop's allowances, for the cut list. The thickness is the least that the board must have. */
export function roughOf(finished: Size3, shop: Shop): Size3 {
  const thin = finished.thickness + overThickness(shop, 0);
  const thick = finished.thickness + overThickness(shop, Infinity);
  return {
    length: quantise(finished.length + shop.over.length),
    width: quantise(finished.width + shop.over.width),
    thickness: quantise(thin < shop.over.thickFrom ? thin : Math.max(thick, shop.over.thickFrom)),
  };
}

type Part = {
  readonly size: Size3;
  readonly name: readonly number[];
  readonly heart: Blank['heart'];
  readonly layered: boolean;
  readonly staved: boolean;
};

/** The pieces of one part; throws nothing: sizes were checked before. */
function divided(job: BlankJob): Part[] {
  if (job.pieces && job.pieces.length > 1)
    return job.pieces.map((size, i) => ({
      size: lain(size),
      name: [i + 1],
      heart: job.alternate ? (i % 2 === 0 ? 'up' : 'down') : null,
      layered: Math.abs(lain(size).width - Math.max(job.finished.width, job.finished.thickness)) < 0.01,
      staved: false,
    }));
  let parts: Part[] = [{ size: job.finished, name: [], heart: null, layered: false, staved: false }];
  // `across` speaks of the part as it is given, so a piece is laid on its wider side only at the end; a stave keeps the thickness of
  // its panel, however narrow it is.
  for (const step of job.made ?? []) parts = parts.flatMap((p) => divide(p, step));
  return parts.map((p) => (p.staved ? p : { ...p, size: lain(p.size) }));
}
function divide(p: Part, step: MadeStep): Part[] {
  if ('layers' in step)
    return step.layers.map((t, i) => ({ ...p, size: { ...p.size, [step.across]: t }, name: [...p.name, i + 1], layered: true }));
  const whole = p.size[step.across];
  const n = Math.max(1, Math.ceil(whole / step.staves.widest - 1e-9));
  return Array.from({ length: n }, (_, i) => ({
    ...p,
    size: { ...p.size, [step.across]: quantise(whole / n) },
    // The edges of a stave are made before it is glued.
    layered: false,
    staved: n > 1,
    name: [...p.name, i + 1],
    heart: step.staves.alternate ? (i % 2 === 0 ? 'up' : 'down') : p.heart,
  }));
}
/** A piece lies on its board with its wider side. */
const lain = (s: Size3): Size3 => (s.width >= s.thickness ? s : { length: s.length, width: s.thickness, thickness: s.width });

/** Every piece of every copy, in the order of the jobs; and what is wrong with jobs that cannot be. */
export function blanksOf(jobs: readonly BlankJob[]): { readonly blanks: readonly Blank[]; readonly problems: readonly Problem[] } {
  const blanks: Blank[] = [];
  const problems: Problem[] = [];
  // A part may come in several jobs; its copies count on, so that every blank has a name of its own.
  const before = new Map<string, number>();
  for (const job of jobs) {
    const bad = jobProblem(job);
    if (bad) {
      problems.push(bad);
      continue;
    }
    const parts = divided(job);
    const first = before.get(job.part) ?? 0;
    before.set(job.part, first + job.copies);
    for (let copy = first + 1; copy <= first + job.copies; copy++)
      for (const p of parts)
        blanks.push({
          part: job.part,
          copy,
          piece: p.name.length === 0 ? '1' : p.name.join('.'),
          of: parts.length,
          path: job.paths?.[copy - first - 1] ?? null,
          wood: job.wood,
          finished: p.size,
          heart: p.heart,
          turns: job.turns ?? false,
          later: { length: parts.length > 1, width: parts.length > 1 && p.layered },
        });
  }
  return { blanks, problems };
}
function jobProblem(job: BlankJob): Problem | null {
  const where = `part ${job.part}`;
  const sizes = [job.finished, ...(job.pieces ?? [])];
  for (const s of sizes)
    for (const [k, v] of Object.entries(s)) if (!(Number.isFinite(v) && v > 0)) return problem(where, `its ${k} of ${v} mm cannot be.`);
  if (!(Number.isInteger(job.copies) && job.copies >= 1 && job.copies <= 10_000)) return problem(where, `${job.copies} copies cannot be.`);
  for (const step of job.made ?? []) {
    if ('staves' in step ? !(step.staves.widest > 0) : step.layers.length === 0 || step.layers.some((t) => !(Number.isFinite(t) && t > 0)))
      return problem(where, 'a layer or stave needs a size above 0.');
    if ('staves' in step && job.finished[step.across] / step.staves.widest > 500)
      return problem(where, 'staves as narrow as that make more than 500.');
  }
  return null;
}
