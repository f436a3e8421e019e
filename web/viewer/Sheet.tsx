/** The sheet: the piece in its own wood, and what can be done with the way it is looked at. */
import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type ReactNode, type RefObject } from 'react';
import { askBite } from '../document/piece.ts';
import { Pictogram } from '../look/Pictogram.tsx';
import { type Seen, hover, look, saw, useView } from '../look/view.ts';
import { useResults } from '../results/store.ts';
import type { Room } from './camera.ts';
import { followGestures } from './gestures.ts';
import { Lens, cutOf, useOpened } from './Lens.tsx';
import { Overlay } from './Overlay.tsx';
import { poseAt } from './pose.ts';
import { Rules } from './Rules.tsx';
import { makeStage } from './stage.ts';
import { type LensSpot, useStage } from './useStage.ts';

/** From this width on the lens stands on the sheet. */
const WIDE = 620;
const LENS = 240;

export function Sheet(): ReactNode {
  const box = useRef<HTMLElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [life, setLife] = useState(0);
  const trouble = useStage((s) => s.trouble);
  useLife(canvas, life);
  useRoom(box, life);
  useLooks();
  useShots();
  const lens = useLensSpot();
  const piece = useResults((r) => r.piece);
  const empty = piece !== null && piece.parts.length === 0;
  return (
    <main className="sheet" ref={box} aria-label="The sheet">
      <Verbs />
      <SeenWords />
      <canvas
        key={life}
        ref={canvas}
        tabIndex={0}
        role="application"
        aria-roledescription="drawing that turns"
        aria-label={`${piece?.title ?? 'The piece'}, drawn in three dimensions. Arrow keys turn it, plus and minus bring it nearer.`}
        onKeyDown={onSheetKey}
      />
      {empty ? <EmptySheet /> : null}
      {trouble ? null : <Overlay lens={lens} />}
      {lens && !trouble ? (
        <div className="lens-place" style={{ left: lens.x - lens.r, top: lens.y - lens.r, width: 2 * lens.r }}>
          <Lens place="sheet" />
        </div>
      ) : null}
      {trouble ? (
        <div className="drawing-stopped" role="alert">
          <p>
            {trouble === 'none'
              ? 'This browser cannot draw in three dimensions. Everything else works.'
              : 'The drawing stopped. Your piece is safe and kept on this machine.'}
          </p>
          <button className="press filled" onClick={() => setLife(life + 1)}>
            Draw again
          </button>
        </div>
      ) : null}
      <Rules />
    </main>
  );
}
/** Makes the stage for a canvas and takes it away with it; a lost context is told, and drawn again when it comes back. */
function useLife(canvas: RefObject<HTMLCanvasElement | null>, life: number): void {
  useEffect(() => {
    const el = canvas.current;
    if (!el) return;
    let stage: ReturnType<typeof makeStage>;
    try {
      stage = makeStage(el, () => useStage.setState((s) => ({ frame: s.frame + 1 })));
    } catch {
      useStage.setState({ trouble: 'none', stage: null });
      return;
    }
    const lost = (e: Event): void => {
      e.preventDefault();
      useStage.setState({ trouble: 'lost' });
    };
    const back = (): void => {
      useStage.setState({ trouble: null, shot: null });
      stage.setScene(useResults.getState().scene);
    };
    el.addEventListener('webglcontextlost', lost);
    el.addEventListener('webglcontextrestored', back);
    const unfollow = followGestures(el, {
      turn: (dx, dy) => {
        if (stage.seen() !== 'freely') return stage.moveBy(dx, dy);
        stage.turnBy(-dx * 0.008, dy * 0.006);
      },
      move: stage.moveBy,
      zoom: stage.zoomBy,
      press: (x, y) => {
        const path = stage.pick(x, y);
        if (path === null) look({ part: null, alone: false, focus: false });
        else look({ part: saw().part === path ? null : path, focus: false });
      },
      over: (x, y) => {
        const path = stage.pick(x, y);
        hover(path === null ? [] : [path]);
      },
      leave: () => hover([]),
      rest: () => undefined,
    });
    useStage.setState({ stage, trouble: null, shot: null });
    const themes = matchMedia('(prefers-color-scheme: dark)');
    const theme = (): void => {
      stage.setTheme();
      useStage.setState({ shot: null });
    };
    themes.addEventListener('change', theme);
    const watcher = new MutationObserver(theme);
    watcher.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    return () => {
      themes.removeEventListener('change', theme);
      watcher.disconnect();
      unfollow();
      el.removeEventListener('webglcontextlost', lost);
      el.removeEventListener('webglcontextrestored', back);
      stage.dispose();
      useStage.setState({ stage: null, shot: null });
    };
  }, [canvas, life]);
}
function useRoom(box: RefObject<HTMLElement | null>, life: number): void {
  const hasFindings = useResults((r) => (r.verdict?.findings.length ?? 0) > 0);
  const apart = useView((v) => v.together < 0.55);
  const cut = useView((v) => v.cut !== null);
  const more = useView((v) => v.dock === 'more');
  useEffect(() => {
    const el = box.current;
    if (!el) return;
    const measure = (): void => {
      const { width, height } = el.getBoundingClientRect();
      const wide = width >= WIDE;
      const foot = width < 500 && cut ? 164 : 92;
      const head = wide ? 56 : more ? 96 : 14;
      const side = wide ? (apart ? 190 : 36) : apart ? 46 : 18;
      const right = wide && hasFindings && !apart ? LENS + 56 : side;
      const room: Room = { x: side, y: head, width: Math.max(60, width - side - right), height: Math.max(60, height - head - foot) };
      useStage.setState({ size: { width, height }, room });
      useStage.getState().stage?.setSize({ width, height }, room);
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(el);
    return () => watcher.disconnect();
  }, [box, hasFindings, apart, cut, more, life]);
}
/** Hands what the stores say to the stage. */
function useLooks(): void {
  const stage = useStage((s) => s.stage);
  const scene = useResults((r) => r.scene);
  const order = useResults((r) => r.order);
  const { part, hover: hovered, alone, focus, cut, seen, together } = useView();
  const opened = useOpened();
  useEffect(() => stage?.setScene(scene), [stage, scene]);
  useEffect(() => stage?.setPose(poseAt(order, together)), [stage, order, together, scene]);
  useEffect(() => stage?.setSeen(seen), [stage, seen]);
  useEffect(() => stage?.setCut(cut), [stage, cut]);
  const front = useMemo(() => new Set(part === null ? [] : [part]), [part]);
  const wood = useMemo(() => (part !== null ? front : focus && opened ? new Set(opened.parts) : null), [part, front, focus, opened]);
  useEffect(
    () => stage?.setLooks({ wood, front, heavy: new Set(hovered), only: alone && part !== null ? front : null }),
    [stage, wood, front, hovered, alone, part, scene],
  );
}
/** A lens picture is made when finding, size of the page or theme change, not with each frame. */
function useShots(): void {
  const stage = useStage((s) => s.stage);
  const scene = useResults((r) => r.scene);
  const finding = useOpened();
  const shot = useStage((s) => s.shot);
  const asked = useRef('');
  const rev = useResults((r) => r.scene?.piece.rev);
  useEffect(() => {
    if (!stage || !scene || !finding) return;
    const key = `${finding.key} ${rev ?? ''}`;
    if (shot && shot.finding === finding.key && asked.current === key) return;
    const timer = setTimeout(() => {
      const made = stage.shoot({
        at: finding.where.at,
        reach: finding.where.reach,
        cut: cutOf(finding),
        parts: finding.parts,
        bite: finding.grade === 'stops',
        px: LENS,
      });
      asked.current = key;
      useStage.setState({ shot: made ? { ...made, finding: finding.key } : null });
    }, 60);
    return () => clearTimeout(timer);
  }, [stage, scene, finding, shot, rev]);
  useEffect(() => {
    if (finding?.grade === 'stops') askBite(finding.key);
  }, [finding]);
}
function useLensSpot(): LensSpot | null {
  const size = useStage((s) => s.size);
  const shot = useStage((s) => s.shot);
  const finding = useOpened();
  const together = useView((v) => v.together);
  const part = useView((v) => v.part);
  const stage = useStage((s) => s.stage);
  useStage((s) => s.frame);
  if (
    !shot ||
    !finding ||
    part !== null ||
    stage?.isAway(finding.where.at) ||
    shot.finding !== finding.key ||
    size.width < WIDE ||
    together <= 0.98
  )
    return null;
  const r = Math.min(LENS / 2, (size.height - 106 - 34 - 92) / 2);
  return r < 56 ? null : { x: size.width - 28 - LENS / 2, y: 106 + r, r };
}
function onSheetKey(e: KeyboardEvent): void {
  const stage = useStage.getState().stage;
  if (!stage || e.ctrlKey || e.metaKey || e.altKey) return;
  const { width, height } = useStage.getState().size;
  const by: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => (e.shiftKey ? stage.moveBy(-30, 0) : stage.turnBy(-Math.PI / 12, 0)),
    ArrowRight: () => (e.shiftKey ? stage.moveBy(30, 0) : stage.turnBy(Math.PI / 12, 0)),
    ArrowUp: () => (e.shiftKey ? stage.moveBy(0, -30) : stage.turnBy(0, Math.PI / 12)),
    ArrowDown: () => (e.shiftKey ? stage.moveBy(0, 30) : stage.turnBy(0, -Math.PI / 12)),
    '+': () => stage.zoomBy(1.2, width / 2, height / 2),
    '=': () => stage.zoomBy(1.2, width / 2, height / 2),
    '-': () => stage.zoomBy(1 / 1.2, width / 2, height / 2),
    Home: () => stage.home(),
  };
  const act = by[e.key];
  if (!act) return;
  e.preventDefault();
  e.stopPropagation();
  act();
}
function Verbs(): ReactNode {
  const cut = useView((v) => v.cut);
  const alone = useView((v) => v.alone);
  const part = useView((v) => v.part);
  const stage = useStage((s) => s.stage);
  return (
    <div className="verbs">
      <button aria-pressed={cut !== null} onClick={() => look({ cut: cut ? null : { axis: 'x', at: 0.5 } })}>
        <Pictogram name="cutopen" />
        {cut ? 'Whole again' : 'Cut open'}
      </button>
      <button
        aria-pressed={alone}
        disabled={part === null}
        title={part === null ? 'Choose a part first' : undefined}
        onClick={() => look({ alone: !alone })}
      >
        <Pictogram name="alone" />
        {alone ? 'Show the rest' : 'Look alone'}
      </button>
      <button onClick={() => stage?.home()}>
        <Pictogram name="turn" />
        As at first
      </button>
    </div>
  );
}
const SEEN: readonly Seen[] = ['freely', 'front', 'side', 'above'];
function SeenWords(): ReactNode {
  const seen = useView((v) => v.seen);
  return (
    <div className="seen words" role="group" aria-label="Seen">
      <span>seen</span>
      {SEEN.map((s) => (
        <button key={s} aria-pressed={seen === s} onClick={() => look({ seen: s })}>
          {s}
        </button>
      ))}
    </div>
  );
}
/** Paper with three faint axes, named. */
const EmptySheet = (): ReactNode => (
  <svg className="empty" viewBox="-200 -130 400 260" aria-hidden="true">
    <path d="M-150 40L150 40M-96 92L80 -26M0 70V-90" />
    <text x="150" y="56" textAnchor="end">
      left – right
    </text>
    <text x="84" y="-30">
      front – back
    </text>
    <text x="6" y="-84">
      bottom – top
    </text>
  </svg>
);
