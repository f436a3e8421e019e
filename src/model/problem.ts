/** What is wrong with a document: where, what, and the nearest valid name or the cure. */
export type Problem = { readonly where: string; readonly what: string; readonly nearest?: string };
export const problem = (where: string, what: string, nearest?: string | null): Problem =>
  nearest ? { where, what, nearest } : { where, what };
/** One line for a person: "parts/leg/left: no size or part is named 'lng'. Did you mean 'long'?" */
export const problemLine = (p: Problem): string =>
  `${p.where ? `${p.where}: ` : ''}${p.what}${p.nearest ? `${/[.?!…]$/.test(p.what) ? '' : '.'} Did you mean "${p.nearest}"?` : ''}`;

/** Names and values from outside, shortened and with control characters made visible, before they are repeated to a person. */
export function shown(value: unknown, most = 60): string {
  const s = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  // eslint-disable-next-line no-control-regex
  const plain = s.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, '\ufffd');
  return plain.length > most ? `${plain.slice(0, most)}…` : plain;
}
