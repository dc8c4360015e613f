import { type RefObject, startTransition, useEffect, useRef, useState } from 'react';

/**
 * How wide an element is, in rem, to the half rem; `null` before it is on the page. For drawings that are laid out
 * anew where there is more or less room, so that their type keeps its size.
 */
export function useWidthRem<Kind extends HTMLElement>(): readonly [RefObject<Kind | null>, number | null] {
  const element = useRef<Kind>(null);
  const [width, setWidth] = useState<number | null>(null);
  useEffect(() => {
    const observed = element.current;
    if (observed === null) return;
    const observer = new ResizeObserver(() => {
      const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      const found = Math.floor((observed.clientWidth / remPx) * 2) / 2;
      // Pictures are much to draw: they are drawn bit by bit.
      startTransition(() => setWidth(found));
    });
    observer.observe(observed);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
