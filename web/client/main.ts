/** The client's page: the same sheet as the app's, without React, marks or findings. Bundled into one script, dist/client.js. */
import type { ClientData } from '../../src/exports/client-data.ts';
import type { Seen } from '../look/view.ts';
import { followGestures } from '../viewer/gestures.ts';
import { poseAt } from '../viewer/pose.ts';
import { type Stage, makeStage } from '../viewer/stage.ts';
import css from './client.css?inline';
import { type Shown, spoken, unpack } from './data.ts';
import { makeRule } from './rule.ts';
import { tag } from './tag.ts';

const SEEN: readonly Seen[] = ['freely', 'front', 'side', 'above'];
/** From this width on the sheet leaves a wider margin and says the step in one line. */
const WIDE = 620;

const style = new CSSStyleSheet();
style.replaceSync(css);
document.adoptedStyleSheets = [style];
if (document.readyState === 'loading') addEventListener('DOMContentLoaded', start);
else start();

function start(): void {
  const data = JSON.parse(document.getElementById('piece')?.textContent ?? '') as ClientData;
  const sheet = document.querySelector('main');
  if (!sheet || data.parts.length === 0) return;
  const shown = unpack(data);
  const canvas = tag('canvas', { tabIndex: 0 });
  canvas.setAttribute('role', 'application');
  canvas.setAttribute('aria-roledescription', 'drawing that turns');
  canvas.setAttribute('aria-label', `${spoken(data)}, drawn in three dimensions. Arrow keys turn it, plus and minus bring it nearer.`);
  sheet.append(canvas);
  let stage: Stage;
  try {
    stage = makeStage(canvas, () => undefined);
  } catch {
    canvas.remove();
    sheet.append(tag('p', { className: 'none' }, 'This browser cannot draw in three dimensions. The words hold all the same.'));
    return;
  }
  const { order } = shown;
  const ruled = order !== null && order.steps.length > 0;
  follow(sheet, stage, ruled);
  stage.setScene(shown);
  handle(canvas, stage, shown);
  sheet.append(seenWords(stage));
  if (ruled) sheet.append(makeRule(order, (together) => stage.setPose(poseAt(order, together))));
}
/** Keeps the drawing as large as the sheet, with room for the words on it. */
function follow(sheet: HTMLElement, stage: Stage, ruled: boolean): void {
  const measure = (): void => {
    const { width, height } = sheet.getBoundingClientRect();
    const side = width >= WIDE ? 48 : 20;
    const [head, foot] = [60, ruled ? (width >= WIDE ? 112 : 140) : 32];
    stage.setSize(
      { width, height },
      { x: side, y: head, width: Math.max(60, width - 2 * side), height: Math.max(60, height - head - foot) },
    );
  };
  new ResizeObserver(measure).observe(sheet);
  measure();
}
/** Mouse, fingers, wheel, keys, and a graphics context that comes back. */
function handle(canvas: HTMLCanvasElement, stage: Stage, shown: Shown): void {
  const nothing = (): void => undefined;
  followGestures(canvas, {
    turn: (dx, dy) => (stage.seen() === 'freely' ? stage.turnBy(-dx * 0.008, dy * 0.006) : stage.moveBy(dx, dy)),
    move: stage.moveBy,
    zoom: stage.zoomBy,
    press: nothing,
    over: nothing,
    leave: nothing,
    rest: nothing,
  });
  canvas.addEventListener('keydown', (e) => onKey(e, canvas, stage));
  canvas.addEventListener('webglcontextlost', (e) => e.preventDefault());
  canvas.addEventListener('webglcontextrestored', () => stage.setScene(shown));
}
function onKey(e: KeyboardEvent, canvas: HTMLCanvasElement, stage: Stage): void {
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  const [x, y] = [canvas.clientWidth / 2, canvas.clientHeight / 2];
  const go = (dx: number, dy: number): void => {
    if (e.shiftKey || stage.seen() !== 'freely') stage.moveBy(dx * 30, dy * 30);
    else stage.turnBy((dx * Math.PI) / 12, (-dy * Math.PI) / 12);
  };
  const by: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => go(-1, 0),
    ArrowRight: () => go(1, 0),
    ArrowUp: () => go(0, -1),
    ArrowDown: () => go(0, 1),
    '+': () => stage.zoomBy(1.2, x, y),
    '=': () => stage.zoomBy(1.2, x, y),
    '-': () => stage.zoomBy(1 / 1.2, x, y),
    Home: stage.home,
  };
  const act = by[e.key];
  if (!act) return;
  e.preventDefault();
  act();
}
function seenWords(stage: Stage): HTMLElement {
  const buttons = SEEN.map((seen) => {
    const button = tag('button', { type: 'button' }, seen);
    button.addEventListener('click', () => {
      if (stage.seen() === seen) stage.home();
      else stage.setSeen(seen);
      mark();
    });
    return button;
  });
  const mark = (): void => buttons.forEach((b, i) => b.setAttribute('aria-pressed', String(SEEN[i] === stage.seen())));
  mark();
  const row = tag('div', { className: 'seen' }, tag('span', {}, 'seen'), ...buttons);
  row.setAttribute('role', 'group');
  row.setAttribute('aria-label', 'Seen');
  return row;
}
