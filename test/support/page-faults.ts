/**
 * What must not be seen on a page: text that is cut off, covered or outside the page, controls that lie on each other, targets
 * too small for a finger. Runs in the page and returns one line a fault.
 */

/** Parts of the picture that lie on each other by design: spans and pointers of the stick, parts on a board, the slider's pin. */
const TOGETHER = '.lath, .strip, .track, .marks';
/** What is longer than a narrow page is wide, and is moved sideways by hand. */
const SIDEWAYS = '.boards, .lath-scroll, .table, .bench > .head .words';
/** Text that is read by screen readers only. */
const UNSEEN = '.hidden, noscript, title, script, style';

export function pageFaults({
  touch,
  together,
  sideways,
  unseen,
}: {
  readonly touch: boolean;
  readonly together: string;
  readonly sideways: string;
  readonly unseen: string;
}): string[] {
  type Box = { left: number; top: number; right: number; bottom: number };
  const faults: string[] = [];
  const wide = document.documentElement.clientWidth;
  const deep = Math.max(innerHeight, document.documentElement.scrollHeight);
  const meet = (a: Box, b: Box): Box => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  });
  const boxOf = (e: Element): Box => e.getBoundingClientRect();
  const some = (b: Box, by = 0.5): boolean => b.right - b.left > by && b.bottom - b.top > by;
  const name = (e: Element): string => {
    const said = (e.getAttribute('aria-label') ?? e.textContent ?? '').replaceAll(/\s+/g, ' ').trim().slice(0, 40);
    const kind = typeof e.className === 'string' && e.className ? `.${e.className.trim().split(/\s+/).join('.')}` : '';
    return `${e.tagName.toLowerCase()}${kind} “${said}”`;
  };
  const px = (b: Box): string => `${Math.round(b.left)},${Math.round(b.top)} to ${Math.round(b.right)},${Math.round(b.bottom)}`;
  const shown = (e: Element): boolean => e.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) && !e.closest(unseen);
  /** What the ancestors leave visible of a place; `cut` when one of them hides what does not fit and cannot be scrolled. */
  const left = (e: Element, box: Box): { box: Box; cut: Element | null } => {
    let now = box;
    let cut: Element | null = null;
    let fixed = getComputedStyle(e).position === 'fixed';
    for (let a: Element | null = e; a && a !== document.body && !fixed; a = a.parentElement) {
      const style = getComputedStyle(a);
      const clips = [style.overflowX, style.overflowY].some((o) => o !== 'visible');
      if (clips && (a !== e || a instanceof HTMLElement)) {
        const scrolls = [style.overflowX, style.overflowY].some((o) => o === 'auto' || o === 'scroll');
        const inside = boxOf(a);
        const next = meet(now, inside);
        const lost = Math.max(inside.left - now.left, now.right - inside.right, inside.top - now.top, now.bottom - inside.bottom);
        const meant = style.textOverflow === 'ellipsis' || style.webkitLineClamp !== 'none';
        if (!scrolls && lost > 1 && !meant && some(now)) cut ??= a;
        now = next;
      }
      fixed = style.position === 'fixed';
    }
    return { box: now, cut };
  };

  // Text.
  type Said = { box: Box; of: Element };
  const said: Said[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const of = node.parentElement;
    if (!of || !node.textContent?.trim() || !shown(of)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const rect of range.getClientRects()) {
      // A line's box is higher than its letters: the middle half is what is read.
      const quarter = rect.height / 4;
      const line: Box = { left: rect.left, right: rect.right, top: rect.top + quarter, bottom: rect.bottom - quarter };
      if (!some(line)) continue;
      const seen = left(of, line);
      if (seen.cut && some(seen.box)) faults.push(`clipped: ${name(of)} at ${px(line)} by ${name(seen.cut).slice(0, 60)}`);
      if (!some(seen.box)) {
        if (seen.cut) faults.push(`cut away: ${name(of)} at ${px(line)}`);
        continue;
      }
      const at: Box = { left: seen.box.left, right: seen.box.right, top: seen.box.top + scrollY, bottom: seen.box.bottom + scrollY };
      if (at.left < -1 || at.right > wide + 1 || at.top < -1 || at.bottom > deep + 1)
        faults.push(`outside the page: ${name(of)} at ${px(line)}`);
      said.push({ box: seen.box, of });
    }
  }
  // What scrolls passes beneath what stays.
  const stays = (e: Element): boolean => {
    for (let a: Element | null = e; a; a = a.parentElement) if (['fixed', 'sticky'].includes(getComputedStyle(a).position)) return true;
    return false;
  };
  for (const [i, a] of said.entries())
    for (const b of said.slice(i + 1)) {
      if (stays(a.of) !== stays(b.of) || a.of.closest('.name') || b.of.closest('.name')) continue;
      if (a.of === b.of || a.of.contains(b.of) || b.of.contains(a.of)) continue;
      const both = meet(a.box, b.box);
      if (some(both, 2)) faults.push(`text on text: ${name(a.of)} and ${name(b.of)} at ${px(both)}`);
    }
  if (document.documentElement.scrollWidth > wide + 1)
    faults.push(`the page is ${document.documentElement.scrollWidth} px wide in a window of ${wide}`);

  // What may be moved sideways, and nothing else.
  for (const e of document.querySelectorAll('body *')) {
    if (e.matches(sideways) || !shown(e) || e.scrollWidth <= e.clientWidth + 1) continue;
    if (['auto', 'scroll'].includes(getComputedStyle(e).overflowX))
      faults.push(`runs out sideways: ${name(e)}, ${e.scrollWidth} px in ${e.clientWidth}`);
  }

  // Controls.
  const controls = [...document.querySelectorAll('button, input, select, textarea, a[href], [role=slider], [role=button], label')]
    .filter((e) => shown(e))
    // A sign on the wood is as large as it is drawn; of two that stand close, the nearer one is hit.
    .map((e) => ({ e, box: left(e, boxOf(e.matches('.place') ? (e.firstElementChild ?? e) : e)).box }))
    .filter((c) => some(c.box));
  const group = (e: Element): Element | null => e.closest(together);
  for (const [i, a] of controls.entries()) {
    for (const b of controls.slice(i + 1)) {
      if (stays(a.e) !== stays(b.e)) continue;
      if (a.e.contains(b.e) || b.e.contains(a.e) || (group(a.e) && group(a.e) === group(b.e))) continue;
      const both = meet(a.box, b.box);
      if (some(both, 1)) faults.push(`controls on each other: ${name(a.e)} and ${name(b.e)} at ${px(both)}`);
    }
    // Whatever is on top at the middle of a control's text is the control itself.
    const [x, y] = [(a.box.left + a.box.right) / 2, (a.box.top + a.box.bottom) / 2];
    const top = y >= 0 && y < innerHeight ? document.elementFromPoint(x, y) : null;
    if (top?.closest('[role=alert]') || (top && stays(top) !== stays(a.e))) continue;
    if (top && !group(a.e) && !a.e.contains(top) && !top.contains(a.e))
      faults.push(`covered: ${name(a.e)} by ${name(top)} at ${Math.round(x)},${Math.round(y)}`);
  }
  if (!touch) return [...new Set(faults)];

  // Fingers: what answers to a press round the middle of a control, whatever is drawn.
  for (const { e } of controls) {
    // A word in a running sentence is as high as its line; parts on a board have their rows in the cut list.
    if (e instanceof HTMLLabelElement || e.closest('.strip') || (e.matches('.inline') && e.parentElement?.matches('p, li, span'))) continue;
    e.scrollIntoView({ block: 'center', inline: 'nearest' });
    const box = boxOf(e);
    const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    const hit = (px_: number, py: number): boolean => {
      const top = document.elementFromPoint(px_, py);
      // A row of a list leads to the same place as the word in it.
      if (e.matches('.row-link')) return top !== null && e.closest('tr')?.contains(top) === true;
      return top !== null && (e === top || e.contains(top) || (e instanceof HTMLInputElement && top.closest('label')?.control === e));
    };
    const reach = (dx: number, dy: number): number => {
      let n = 0;
      while (n < 30 && hit(x + dx * (n + 1), y + dy * (n + 1))) n++;
      return n;
    };
    if (!hit(x, y)) continue;
    const size = {
      wide: Math.max(box.right - box.left, reach(-1, 0) + reach(1, 0) + 1),
      high: Math.max(box.bottom - box.top, reach(0, -1) + reach(0, 1) + 1),
    };
    // A span of the stick is as wide as its size is long; it is chosen by the words in the field's list too.
    if (size.high < 43.5 || (size.wide < 43.5 && !e.matches('.span')))
      faults.push(`too small for a finger: ${name(e)}, ${Math.round(size.wide)} by ${Math.round(size.high)}`);
  }
  return [...new Set(faults)];
}
export const pageFaultsAsk = (touch: boolean): Parameters<typeof pageFaults>[0] => ({
  touch,
  together: TOGETHER,
  sideways: SIDEWAYS,
  unseen: UNSEEN,
});
