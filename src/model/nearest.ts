/** "Did you mean": the known name that a mistyped one is nearest to. */
import { nearestOf } from '../units/words.ts';

/** The known name nearest to `word` by letters added, dropped, changed or swapped; null when none is near enough to be meant. */
export const nearestWord = (word: string, candidates: Iterable<string>): string | null => nearestOf(word, candidates);
