/** Document → verdict: built, checked in two waves, remedies proved. */
import { type Built, type Families, buildPiece } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import { checks, runChecks } from '../fits/checks.ts';
import { proveRemedies } from '../fits/prove.ts';
import { sizeRemedies } from '../fits/size-remedy.ts';
import type { Document } from '../model/document.ts';
import type { Finding } from '../model/finding.ts';
import { hashText } from '../model/hash.ts';
import { copiesOf } from '../model/parse.ts';
import type { Problem } from '../model/problem.ts';
import type { Verdict } from './view.ts';

/** A revision of a document: equal text, equal rev. */
export const revOf = (doc: Document): string => hashText(JSON.stringify(doc));

export type Judged = { readonly built: Built; readonly findings: readonly Finding[]; readonly problems: readonly Problem[] };

/** Whether it goes together: one finding that stops it decides. Sizes that cannot be worked out leave it open. */
export function verdictOf(j: Judged): Verdict {
  if (j.problems.length) return 'cannot-say';
  return j.findings.some((f) => f.grade === 'stops') ? 'not-yet' : 'together';
}

export type Proved = { readonly done: number; readonly of: number };
export type Judging = {
  /** Builds and checks. Wave 2 needs a store; remedies are still untried. */
  readonly judge: (doc: Document, store: Store | null, wave: 1 | 2, built?: Built) => Judged;
  /**
   * The findings with those remedies only that hold, each proved on a fork that shares the store; yields after every finding, so that
   * whoever runs it may listen, report or stop. At most `most` findings are given remedies, the worst first, and of a piece of very many
   * parts so few that it stays a matter of seconds: counted work, so that the same document is always answered alike.
   */
  readonly proving: (doc: Document, findings: readonly Finding[], store: Store, most?: number) => Generator<Proved, Finding[], void>;
  /** All at once. */
  readonly prove: (doc: Document, findings: readonly Finding[], store: Store) => Finding[];
};
/** Parts and places that all forks together may hold: about ten seconds of work. A first wave is this share of it. */
const EFFORT = 60_000;
const SHARE = 0.2;
const partsAndPlaces = (d: Document): number =>
  Object.values(d.parts ?? {}).reduce((n, p) => n + copiesOf(d, p), 0) +
  Object.values(d.joints ?? {}).reduce((n, j) => n + j.places.length, 0);

/** Judges documents whose joints are all among `families`. */
export function judging(families: Families): Judging {
  function judge(doc: Document, store: Store | null, wave: 1 | 2, built: Built = buildPiece(doc, families, store?.builds)): Judged {
    if (built.problems.length) return { built, findings: [], problems: built.problems };
    return { built, findings: runChecks({ doc, built, families, store }, wave), problems: [] };
  }

  function* proving(doc: Document, findings: readonly Finding[], store: Store, most = 24): Generator<Proved, Finding[], void> {
    const bySize = new Set(checks.flatMap((c) => c.bySize ?? []));
    let left = EFFORT;
    const spend = (d: Document, share: number): boolean => (left -= share * (1 + partsAndPlaces(d))) > 0;
    const judgeFork = (d: Document): readonly Finding[] | null => {
      if (!spend(d, 1)) return null;
      const j = judge(d, store, 2);
      return j.problems.length ? null : j.findings;
    };
    const out: Finding[] = [];
    let tried = 0;
    for (const [i, f] of findings.entries()) {
      const offers =
        tried >= most
          ? []
          : bySize.has(f.rule)
            ? [...f.remedies, ...sizeRemedies(doc, f, (d) => (spend(d, SHARE) ? measureAgain(d, f, store) : null))]
            : f.remedies;
      if (offers.length) tried++;
      out.push({ ...f, remedies: offers.length ? proveRemedies(doc, findings, { ...f, remedies: offers }, judgeFork) : [] });
      yield { done: i + 1, of: findings.length };
    }
    return out;
  }
  function prove(doc: Document, findings: readonly Finding[], store: Store): Finding[] {
    const run = proving(doc, findings, store);
    for (;;) {
      const step = run.next();
      if (step.done) return step.value;
    }
  }
  function measureAgain(doc: Document, f: Finding, store: Store): number | null {
    const j = judge(doc, null, 1, buildPiece(doc, families, store.builds));
    return j.problems.length ? null : (j.findings.find((g) => g.key === f.key)?.measured ?? 0);
  }
  return { judge, proving, prove };
}
