/** A drawing as SVG (W3C SVG 1.1 elements only): wood in its own colours, pencil lines, letters in chalk circles. Deterministic text. */
import type { Drawing, Line, LineKind } from '../papers/record.ts';
import { DISC } from '../papers/sheet.ts';
import type { Vec2 } from '../geom/vec3.ts';
import { type Colour, hexColour, mixed, shaded } from '../wood/shade.ts';
import { toneOf } from '../wood/tones.ts';
import { plainName } from './names.ts';

/** How much of a face is late wood, by eye; the view mixes its plain colours the same way. */
const LATE = 0.32;
/** Marks lie on lit wood, so that they are the same on light and dark paper. */
const PENCIL = '#17110c';
const CHALK = '#fbfdfd';
const PENS: Readonly<Record<LineKind, string>> = {
  ring: 'stroke-width=".5" stroke-opacity=".3"',
  edge: 'stroke-width=".7" stroke-opacity=".62"',
  outline: 'stroke-width="1.15" stroke-opacity=".85"',
};

/** `title` is what the drawing shows, for those who do not see it; without `letters` it can be drawn small. */
export function svg(d: Drawing, title: string, letters = true): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${d.width} ${d.height}" width="${d.width}" height="${d.height}" role="img">`,
    `<title>${escaped(plainName(title))}</title>`,
    ...fillLines(d),
    ...(['ring', 'edge', 'outline'] as const).flatMap((kind) => penLines(d.lines, kind)),
    ...(letters ? discLines(d) : []),
    '</svg>',
    '',
  ].join('\n');
}
/** Fills of one colour that follow each other are one path; a thin line of their own colour closes the seams between them. */
function fillLines(d: Drawing): string[] {
  const runs: { colour: string; paths: string }[] = [];
  for (const f of d.fills) {
    const colour = hexOf(shaded(woodColour(f.wood), f.shade));
    const paths = f.loops.map((loop) => `${pathOf(loop)}z`).join('');
    const last = runs.at(-1);
    if (last?.colour === colour) last.paths += paths;
    else runs.push({ colour, paths });
  }
  return ['<g stroke-width=".4">', ...runs.map((r) => `<path fill="${r.colour}" stroke="${r.colour}" d="${r.paths}"/>`), '</g>'];
}
function penLines(lines: readonly Line[], kind: LineKind): string[] {
  const own = lines.filter((l) => l.kind === kind);
  if (own.length === 0) return [];
  const paths = own.map((l) => pathOf(l.points)).join('');
  return [
    `<path class="${kind}" fill="none" stroke="${PENCIL}" stroke-linejoin="round" stroke-linecap="round" ${PENS[kind]} d="${paths}"/>`,
  ];
}
function discLines(d: Drawing): string[] {
  if (d.discs.length === 0) return [];
  const font = 'font-family="IBM Plex Sans,Plex,system-ui,sans-serif" font-size="11" font-weight="600" text-anchor="middle"';
  const discs = d.discs.map(({ letter, label, at: [x, y] }) => {
    const ring = `<circle cx="${x}" cy="${y}" r="${DISC}" fill="${CHALK}" stroke="${PENCIL}"/>`;
    return `<g><title>${escaped(plainName(label))}</title>${ring}<text x="${x}" y="${round(y + 3.9)}">${escaped(plainName(letter, 4))}</text></g>`;
  });
  return [`<g class="discs" fill="${PENCIL}" ${font}>`, ...discs, '</g>'];
}
/** Each point after the first as its distance from the one before: shorter than places. */
function pathOf(points: readonly Vec2[]): string {
  const [first, ...rest] = points;
  if (!first) return '';
  let [x, y] = first;
  const steps = rest.map(([px, py]) => {
    const step = pair(round(px - x), round(py - y));
    [x, y] = [px, py];
    return step;
  });
  return `M${pair(...first)}l${steps.join(' ')}`;
}
const pair = (x: number, y: number): string => (y < 0 ? `${short(x)}${short(y)}` : `${short(x)} ${short(y)}`);
const short = (n: number): string => String(n).replace(/^(-?)0\./, '$1.');
const round = (n: number): number => {
  const q = Math.round(n * 10) / 10;
  return q === 0 ? 0 : q;
};
function woodColour(wood: string): Colour {
  const tone = toneOf(wood);
  return mixed(hexColour(tone.light), hexColour(tone.dark), LATE);
}
const hexOf = (c: Colour): string =>
  `#${c
    .map((v) =>
      Math.round(v * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;').replaceAll("'", '&#39;');
