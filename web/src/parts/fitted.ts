// Words that must keep their place: the letters become smaller, in few steps, until they fit; only words that fit in no
// size may take more room.

import type { RefObject } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

const SIZES = ["1", "2", "3", "4", "5"] as const;

function fit(element: HTMLElement): void {
  for (const size of SIZES) {
    element.dataset["size"] = size;
    if (element.scrollHeight <= element.clientHeight + 1) return;
  }
  element.dataset["size"] = "free";
}

/** Give the element to fit this ref; `data-size` on it says which size fits (see styles/doing.css). */
export function useFitted(text: string): RefObject<HTMLDivElement | null> {
  const ref = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (ref.current) fit(ref.current);
  }, [text]);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    let width = element.clientWidth;
    const observer = new ResizeObserver(() => {
      // Only another width makes other lines; the height is ours.
      if (element.clientWidth === width) return;
      width = element.clientWidth;
      fit(element);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return ref;
}
