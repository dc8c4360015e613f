import { type RefObject, useEffect, useState } from 'react';

/** How wide an element is, in pixels of the page; 0 until that is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    if (element.current === null) return;
    const seen = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)));
    seen.observe(element.current);
    return () => seen.disconnect();
  }, [element]);
  return width;
}
