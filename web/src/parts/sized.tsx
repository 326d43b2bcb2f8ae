// A figure that knows its own width in CSS pixels, so that letters in a chart keep the size of letters on the page.

import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Box } from "../frame";

interface Props {
  /** Height as a share of the width. */
  shape: number;
  class: string;
  /** Least height / letters. */
  least?: number;
  children: (box: Box) => ComponentChildren;
}

const LETTER_SHARE = 0.85;
const LEAST_HEIGHT_LETTERS = 17;

export function Sized({ shape, class: name, least = LEAST_HEIGHT_LETTERS, children }: Props) {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState<Box | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => {
      const width = element.clientWidth;
      const letter = LETTER_SHARE * parseFloat(getComputedStyle(element).fontSize);
      const height = Math.round(Math.max(least * letter, shape * width));
      setBox((old) => (old && old.width === width && old.letter === letter ? old : { width, height, letter }));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [shape, least]);
  return (
    <div class={name} ref={ref}>
      {box && box.width > 0 && children(box)}
    </div>
  );
}
