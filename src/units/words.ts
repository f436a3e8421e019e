/** How far apart two words are, for "did you mean". */

/**
 * Number of single letters to add, drop, change, or swap with their neighbour to make one word of the other (each stretch
 * of letters is changed at most once). Words are compared by code unit; the work grows with the product of the lengths, so callers cap them.
 */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let d = Math.min((last[j] as number) + 1, (row[j - 1] as number) + 1, (last[j - 1] as number) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, (before[j - 2] as number) + 1);
      row.push(d);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}

/** The nearest of the candidates, or null when none is near: one slip in a short word, a third of the letters in a long one. */
export function nearestOf(word: string, candidates: Iterable<string>): string | null {
  if (word.length === 0 || word.length > 60) return null;
  const small = word.toLowerCase();
  // At least one letter must stay, or every word of one letter would be near every other.
  const reach = Math.min(Math.max(1, Math.floor(small.length / 3)), small.length - 1);
  let best: string | null = null;
  let bestDistance = reach + 1;
  for (const c of candidates) {
    if (Math.abs(c.length - small.length) > reach) continue;
    const d = editDistance(small, c.toLowerCase());
    // Equal distances fall to the lower code points, so that the answer does not hang on the order of the list.
    if (d < bestDistance || (d === bestDistance && best !== null && c < best)) {
      best = c;
      bestDistance = d;
    }
  }
  return best;
}
