/** The verdict as sentences. */
import type { VerdictView } from '../../src/piece/view.ts';
import { capital, inWords } from '../look/Figures.tsx';

const many = (n: number, one: string, more: string): string => (n === 1 ? one : more.replace('#', inWords(n)));

export function verdictSentence(verdict: VerdictView | null, parts: number): string {
  if (!verdict) return parts ? 'Trying it together…' : 'Nothing on the sheet yet.';
  if (verdict.counts.parts === 0) return 'Nothing on the sheet yet.';
  if (verdict.verdict === 'cannot-say') return 'Cannot tell yet whether it goes together.';
  if (verdict.verdict === 'not-yet') return 'It does not go together yet.';
  const watch = verdict.findings.filter((f) => f.grade === 'trouble').length;
  return watch ? `It goes together, with ${many(watch, 'one thing', '# things')} to watch.` : 'It goes together.';
}
/** Grades counted in words, then how much was tried. */
export function subLine(
  verdict: VerdictView,
  steps: number | null,
): { readonly words: string; readonly tried: readonly [number, number]; readonly steps: number | null } {
  const count = (grade: string): number => verdict.findings.filter((f) => f.grade === grade).length;
  const [stops, trouble, notes] = [count('stops'), count('trouble'), count('note')];
  const said: string[] = [];
  if (stops) said.push(many(stops, 'one thing stops it', '# things stop it'));
  const later: string[] = [];
  if (trouble) later.push(many(trouble, 'one thing gives trouble later', '# things give trouble later'));
  if (notes) later.push(many(notes, 'one is worth knowing', '# are worth knowing'));
  if (!stops && !trouble && notes) later[0] = many(notes, 'one thing is worth knowing', '# things are worth knowing');
  if (later.length) said.push(later.join(', and '));
  return {
    words: said.map((s) => `${capital(s)}. `).join(''),
    tried: [verdict.counts.parts, verdict.counts.joints],
    steps: stops ? null : steps,
  };
}
