/** The client's view: one HTML file that opens from disk, fetches nothing and runs no script but its own. */
import { strToU8 } from 'fflate';
import { type LengthStyle, lengthParts } from '../units/format.ts';
import { woodWords } from '../wood/woods.ts';
import { base64 } from './base64.ts';
import type { ClientData } from './client-data.ts';
import { plainName } from './names.ts';
import { sha256 } from './sha256.ts';

/** A line of the list: '4 × leg, cherry'; the wood is left out where all is of one. */
export type ClientRow = { readonly words: string; readonly count: number; readonly wood: string };

/**
 * The page. `viewer` is the script that draws (dist/client.js); the page's policy lets in that script by its sum and nothing else, so
 * what a document says can only ever be words. `rows` are told as text for those who do not see the drawing.
 */
export function clientPage(data: ClientData, rows: readonly ClientRow[], viewer: string): string {
  // Inside a script element these two would end or hide it, whatever the script means by them.
  if (/<\/script|<!--/i.test(viewer)) throw new Error('The viewer holds text that ends a script element.');
  const sum = base64(sha256(strToU8(viewer)));
  const title = escaped(plainName(data.title));
  const woods = woodsOf(data);
  return `<!doctype html>
<html lang="en" data-theme="light">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-${sum}'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="referrer" content="no-referrer">
<meta name="theme-color" content="#f6f9f9">
<link rel="icon" href="data:,">
<title>${title}</title>
<script>${viewer}</script>
</head>
<body>
<header>
<h1><bdi>${title}</bdi></h1>
${data.box ? `<p class="size">${sizeHtml(data)}</p>\n` : ''}<p class="woods">${woodsHtml(woods)}</p>
</header>
<main aria-label="The sheet"><noscript><p>The drawing needs JavaScript; the words stand without it.</p></noscript></main>
<section>
<h2>What it is made of</h2>
<ul>
${mergedRows(rows)
  .map((r) => rowHtml(r, woods.length > 1))
  .join('\n')}
</ul>
<p class="how">Drag or use the arrow keys to turn it; wheel, two fingers, plus and minus bring it nearer.</p>
</section>
<script type="application/json" id="piece">${JSON.stringify(data, rounded).replaceAll('<', '\\u003c')}</script>
</body>
</html>
`;
}
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;').replaceAll("'", '&#39;');
/** A millionth of a millimetre is all that a drawing needs. */
const rounded = (_key: string, value: unknown): unknown => (typeof value === 'number' ? Math.round(value * 1e6) / 1e6 : value);

/** Overall size in the piece's own units: whole millimetres or sixteenths of an inch. */
function sizeHtml(data: ClientData): string {
  const { box } = data;
  if (!box) return '';
  const style: LengthStyle = data.units === 'in' ? { system: 'in', denominator: 16 } : { system: 'mm', decimals: 0 };
  const ways = ['wide', 'deep', 'high'] as const;
  return ways
    .map((way, i) => `<span class="q"><b>${lengthHtml((box.max[i] ?? 0) - (box.min[i] ?? 0), style)}</b> ${way}</span>`)
    .join(', ');
}
function lengthHtml(mm: number, style: LengthStyle): string {
  const p = lengthParts(mm, style);
  const fraction = p.numerator > 0 ? `<span class="fr">${p.numerator}\u2044${p.denominator}</span>` : '';
  const whole = p.whole === null ? '' : `${p.whole}${p.decimals ? `.${p.decimals}` : ''}`;
  return `${[whole, fraction].filter((s) => s !== '').join(' ')} ${p.unit}`;
}
/** The stuff it is made of, what most parts are of first. */
function woodsOf(data: ClientData): readonly string[] {
  const counts = new Map<string, number>();
  for (const p of data.parts) if (p.kind !== 'hardware') counts.set(woodWords(p.wood), (counts.get(woodWords(p.wood)) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]).map(([wood]) => wood);
}
function woodsHtml(woods: readonly string[]): string {
  const each = woods.map((w) => `<bdi>${escaped(w)}</bdi>`);
  return each.length > 1
    ? `in ${each.slice(0, -1).join(', ')} and ${each.at(-1) ?? ''}`
    : each.length
      ? `in ${each.join('')}`
      : 'nothing on the sheet yet';
}
/** Left and right of the same thing are one line to a client. */
function mergedRows(rows: readonly ClientRow[]): ClientRow[] {
  const merged = new Map<string, ClientRow>();
  for (const r of rows) {
    const key = `${r.words}\n${woodWords(r.wood)}`;
    merged.set(key, { ...r, count: r.count + (merged.get(key)?.count ?? 0) });
  }
  return [...merged.values()];
}
function rowHtml(r: ClientRow, withWood: boolean): string {
  const wood = withWood ? `, <bdi>${escaped(plainName(woodWords(r.wood)))}</bdi>` : '';
  return `<li><span class="q">${r.count}</span> <span class="times">×</span> <bdi>${escaped(plainName(r.words))}</bdi>${wood}</li>`;
}
