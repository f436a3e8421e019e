/** An element with its properties and what it holds; strings become text, never markup. */
export function tag<K extends keyof HTMLElementTagNameMap>(
  name: K,
  properties: Partial<HTMLElementTagNameMap[K]>,
  ...holds: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...holds);
  return element;
}
