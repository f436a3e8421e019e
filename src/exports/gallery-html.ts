/** The gallery as pages that any browser reads from disk: no script, one style sheet, drawings beside them. Figures in mm and in inches. */
import {
  type Listed,
  type Page,
  type PageExample,
  type PageFit,
  type PageSize,
  type PageSort,
  type PageTask,
  SORTS,
  cardName,
  drawingName,
  isShown,
} from '../papers/page.ts';
import { renderFigures } from '../units/figures.ts';
import type { LengthStyle } from '../units/format.ts';
import { plainName } from './names.ts';

export function galleryIndex(pages: readonly Listed[]): string {
  const groups = (Object.keys(SORTS) as PageSort[]).map((sort) => {
    const own = pages.filter((p) => p.sort === sort);
    return own.length
      ? `<section><h2>${SORTS[sort].many}</h2><p>${SORTS[sort].words}</p><ul class="cards">${own.map(card).join('')}</ul></section>`
      : '';
  });
  return htmlPage('Joints, shapes and makers', `<h1>Joints, shapes and makers</h1>\n${groups.join('\n')}`, false);
}
const card = (p: Listed): string =>
  `<li><a href="${p.id}.html"><img src="${cardName(p.id)}" alt="" loading="lazy"><b>${words(p.title)}</b></a><span>${words(p.words)}</span></li>\n`;

export function galleryHtml(p: Page): string {
  const roles = p.roles.length
    ? `<p>Its parts: ${p.roles.map((r) => words(r.many ? `${r.words}, one or more` : r.words)).join('; ')}.</p>`
    : '';
  const rules = p.rules.length ? `<section><h2>What is looked at</h2>${list(p.rules)}</section>` : '';
  const examples = p.examples.map((e, i) => exampleHtml(p, e, i)).join('\n');
  return htmlPage(p.title, `<h1>${words(p.title)}</h1>\n<p class="deck">${words(p.words)}</p>\n${roles}\n${examples}\n${rules}`, true);
}
function exampleHtml(p: Page, e: PageExample, i: number): string {
  const figure = (apart: boolean): string =>
    `<figure><img src="${drawingName(p.id, i, apart)}" alt="${words(`${e.name}, drawn ${apart ? 'apart' : 'together'}`)}"><figcaption>${apart ? 'Apart' : 'Together'}</figcaption></figure>`;
  const one = p.examples.length === 1 ? '' : ` <small>example ${i + 1} of ${p.examples.length}</small>`;
  return [
    `<section class="example"><h2>${words(capital(e.name))}${one}</h2><p>${words(e.words)}</p>`,
    `<div class="figures">${figure(true)}${e.steps.length ? figure(false) : ''}</div>`,
    partsTable(e),
    e.steps.length ? `<h3>How it goes together</h3><ol>${e.steps.map((s) => `<li>${words(s)}</li>`).join('')}</ol>` : '',
    sizesTable(e.sizes),
    e.given.length ? `<p>This example sets ${e.given.map((g) => `${words(g.words)} to ${words(g.value ?? '')}`).join(', ')}.</p>` : '',
    fitsList(e.fits),
    tasks('At the bench, by hand', e.hand),
    sameTasks(e) ? '' : tasks('At the bench, by machine', e.machine),
    '</section>',
  ].join('\n');
}
const sameTasks = (e: PageExample): boolean => JSON.stringify(e.hand) === JSON.stringify(e.machine);
function partsTable(e: PageExample): string {
  const rows = e.parts.map(
    (p) => `<tr><th>${words(p.letter)}</th><td>${words(p.label)}</td><td>${words(p.wood)}</td><td>${words(p.size)}</td></tr>`,
  );
  return `<table><thead><tr><th></th><th>Part</th><th>Of</th><th>Length × width × thickness</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}
function sizesTable(sizes: readonly PageSize[]): string {
  if (sizes.length === 0) return '';
  const rows = sizes.filter(isShown).map((s) => {
    const range = s.range ? ` <small>from ${words(s.range[0])} to ${words(s.range[1])}</small>` : '';
    const source = s.source ? `<br><small>${words(s.source.name)}</small>` : '';
    return `<tr><th>${words(s.words)}</th><td>${words(s.value ?? '')}${range}</td><td>${s.rule === undefined ? '' : words(s.rule)}${source}</td></tr>`;
  });
  const more = sizes.filter((s) => !isShown(s)).map((s) => words(s.words));
  return `<h3>Sizes, and why</h3><table><tbody>${rows.join('')}</tbody></table>${more.length ? `<p>May be set too: ${more.join('; ')}.</p>` : ''}`;
}
const fitsList = (fits: readonly PageFit[]): string =>
  fits.length
    ? `<h3>How tight, and where glue goes</h3><dl>${fits.map((f) => `<dt>${words(f.how)}</dt><dd>${words(f.where.join('; '))}</dd>`).join('')}</dl>`
    : '';
function tasks(title: string, all: readonly PageTask[]): string {
  if (all.length === 0) return '';
  const rows = all.map((t) => {
    const caution = t.caution === undefined ? '' : `<br><em>${words(t.caution)}</em>`;
    return `<li><b>${words(capital(t.role))}.</b> ${words(t.words)} <small>${words(t.tool)}</small>${caution}</li>`;
  });
  return `<h3>${title}</h3><ol>${rows.join('')}</ol>`;
}
const list = (texts: readonly string[]): string => `<ul>${texts.map((t) => `<li>${words(t)}</li>`).join('')}</ul>`;
const capital = (t: string): string => t.charAt(0).toUpperCase() + t.slice(1);

const MM: LengthStyle = { system: 'mm', decimals: 1 };
const INCHES: LengthStyle = { system: 'in', denominator: 32 };
/** Text with its lengths in mm, and the same in inches behind where they differ; nothing of it can be markup. */
function words(text: string): string {
  const both = text.replaceAll(/\{mm:[^}]*\}/g, (figure) => `${renderFigures(figure, MM)} (${renderFigures(figure, INCHES)})`);
  return escaped(plainName(renderFigures(both, MM), 2000));
}
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;').replaceAll("'", '&#39;');

const htmlPage = (title: string, body: string, inside: boolean): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${words(title)} · Dryfit</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="tokens.css">
<link rel="stylesheet" href="gallery.css">
</head>
<body>
<main>
${inside ? '<p class="back"><a href="index.html">Joints, shapes and makers</a></p>\n' : ''}${body}
</main>
</body>
</html>
`;
