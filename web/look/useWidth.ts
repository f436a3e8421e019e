import { useEffect, useState, type RefObject } from 'react';

/** Width of an element in px, followed as the page changes. */
export function useWidth(box: RefObject<HTMLElement | null>): number {
  const [width, set] = useState(900);
  useEffect(() => {
    if (!box.current) return;
    const watcher = new ResizeObserver(([entry]) => entry && set(entry.contentRect.width));
    watcher.observe(box.current);
    return () => watcher.disconnect();
  }, [box]);
  return width;
}
