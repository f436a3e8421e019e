/** Results by content. Whatever is kept is a pure function of its key, so a result found is the result that would be worked out. */
export type Memo<V> = {
  /** The value of a key, made when it is not known. */
  readonly of: (key: string, make: () => V) => V;
  /** Ends a round: what was not asked for since long ago may be forgotten. */
  readonly sweep: () => void;
  readonly size: () => number;
};

/** So many entries are kept in a generation whatever is asked for, beside as many as a round asks for: enough for undo and for cures that are tried. */
const SPARE = 64;
/** Two generations: what the elder holds and nobody asks for goes when the younger has grown full. */
export function openMemo<V>(): Memo<V> {
  let young = new Map<string, V>();
  let old = new Map<string, V>();
  let asked = 0;
  return {
    of: (key, make) => {
      asked++;
      let value = young.get(key);
      if (value !== undefined) return value;
      value = old.get(key) ?? make();
      young.set(key, value);
      return value;
    },
    sweep: () => {
      if (young.size > SPARE + asked) [old, young] = [young, new Map()];
      asked = 0;
    },
    size: () => young.size + old.size,
  };
}
