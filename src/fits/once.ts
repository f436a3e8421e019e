/**
 * Facts worked out once for each object that they are facts of. What a build hands up does not change, and the next build hands the same
 * objects on where nothing about them is different; so an edit has only what it changed looked at again.
 */
export function once<K extends object, V>(work: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    const before = known.get(of);
    if (before) return before.value;
    const value = work(of);
    known.set(of, { value });
    return value;
  };
}
