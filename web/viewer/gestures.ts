/** Fingers, mouse and wheel on the sheet, told as turning, moving, zooming and pressing. */

export type Gestures = {
  /** px moved since the last call. */
  readonly turn: (dx: number, dy: number) => void;
  readonly move: (dx: number, dy: number) => void;
  /** Factor above 1 is nearer; x, y px on the sheet stay in place. */
  readonly zoom: (by: number, x: number, y: number) => void;
  readonly press: (x: number, y: number) => void;
  readonly over: (x: number, y: number) => void;
  readonly leave: () => void;
  readonly rest: () => void;
};
type Finger = { x: number; y: number };
/** A press may wander this far, px. */
const STILL = 6;

/** Follows an element until the returned function is called. A finger that is lost (pointercancel) ends like one that is lifted. */
export function followGestures(element: HTMLElement, told: Gestures): () => void {
  const fingers = new Map<number, Finger>();
  let began = { x: 0, y: 0, moved: false, many: false };
  let moving = false;
  const local = (e: { clientX: number; clientY: number }): Finger => {
    const box = element.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };
  const spread = (): { x: number; y: number; apart: number } | null => {
    const [a, b] = [...fingers.values()];
    return a && b ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) } : null;
  };
  const down = (e: PointerEvent): void => {
    if (e.button === 1) e.preventDefault();
    const at = local(e);
    if (fingers.size === 0) began = { ...at, moved: false, many: false };
    fingers.set(e.pointerId, at);
    if (fingers.size > 1) began.many = true;
    moving = e.button !== 0 || e.shiftKey;
    try {
      element.setPointerCapture(e.pointerId);
    } catch {
      // The pointer is already gone; its end is heard all the same.
    }
  };
  const move = (e: PointerEvent): void => {
    const before = fingers.get(e.pointerId);
    const at = local(e);
    if (!before) {
      if (e.pointerType === 'mouse') told.over(at.x, at.y);
      return;
    }
    const two = spread();
    fingers.set(e.pointerId, at);
    if (Math.hypot(at.x - began.x, at.y - began.y) > STILL) began.moved = true;
    if (two) {
      const now = spread();
      if (!now) return;
      told.move(now.x - two.x, now.y - two.y);
      if (two.apart > 1 && now.apart > 1) told.zoom(now.apart / two.apart, now.x, now.y);
    } else if (began.moved) (moving ? told.move : told.turn)(at.x - before.x, at.y - before.y);
  };
  const lift = (e: PointerEvent): void => {
    if (!fingers.delete(e.pointerId) || fingers.size > 0) return;
    const pressed = e.type === 'pointerup' && !began.moved && !began.many && e.button === 0;
    if (pressed) told.press(began.x, began.y);
    told.rest();
  };
  const wheel = (e: WheelEvent): void => {
    e.preventDefault();
    const at = local(e);
    const lines = e.deltaMode === 1 ? 30 : 1;
    told.zoom(Math.exp((-e.deltaY * lines * (e.ctrlKey ? 8 : 1)) / 900), at.x, at.y);
    told.rest();
  };
  const leave = (): void => told.leave();
  const menu = (e: Event): void => e.preventDefault();
  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', lift);
  element.addEventListener('pointercancel', lift);
  // Not pointerleave: React tells what is entered before that is heard, and its mark would be wiped away.
  element.addEventListener('pointerout', leave);
  element.addEventListener('wheel', wheel, { passive: false });
  element.addEventListener('contextmenu', menu);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', lift);
    element.removeEventListener('pointercancel', lift);
    element.removeEventListener('pointerout', leave);
    element.removeEventListener('wheel', wheel);
    element.removeEventListener('contextmenu', menu);
  };
}
