// The frame of a table: one that is wider than the screen scrolls, and then the keyboard must reach it.

import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

export function TableFrame({ name, children }: { name: string; children: ComponentChildren }) {
  const ref = useRef<HTMLDivElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useLayoutEffect(() => {
    const frame = ref.current;
    if (!frame) return undefined;
    const look = () => setScrolls(frame.scrollWidth > frame.clientWidth);
    const observer = new ResizeObserver(look);
    observer.observe(frame);
    if (frame.firstElementChild) observer.observe(frame.firstElementChild);
    look();
    return () => observer.disconnect();
  }, []);
  return (
    <div class="table-frame" ref={ref} {...(scrolls ? { tabindex: 0, role: "region", "aria-label": name } : {})}>
      {children}
    </div>
  );
}
