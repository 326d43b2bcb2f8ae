// A time that the page counts on by itself, in the practical's own seconds, at whatever speed these pass.

import { useLayoutEffect, useRef } from "preact/hooks";
import { lasted } from "../phrases/room";

interface Props {
  /** How long it had been when the room told it / bench s. */
  from_s: number;
  /** When the room told it / ms on the page's clock. */
  told_ms: number;
  /** Bench seconds a second. */
  speed: number;
}

export const countedOn = ({ from_s, told_ms, speed }: Props, now_ms: number): number =>
  from_s + (Math.max(0, now_ms - told_ms) / 1000) * speed;

interface Counted extends Props {
  element: HTMLElement;
}

/** All times on the page, and the one timer that writes them: so often that each is true to a second of its own. */
const counted = new Set<Counted>();
const OFTEN_MS = 50;
const USUAL_MS = 250;
let timer = 0;

function write(each: Counted, now_ms: number): void {
  const text = lasted(countedOn(each, now_ms));
  if (each.element.textContent !== text) each.element.textContent = text;
}

function tick(): void {
  const now_ms = performance.now();
  let fastest = 0;
  for (const each of counted) {
    write(each, now_ms);
    fastest = Math.max(fastest, each.speed);
  }
  timer = counted.size === 0 ? 0 : window.setTimeout(tick, fastest > 4 ? OFTEN_MS : USUAL_MS);
}

export function Counting({ from_s, told_ms, speed }: Props) {
  const element = useRef<HTMLTimeElement>(null);
  useLayoutEffect(() => {
    if (!element.current) return undefined;
    const each = { from_s, told_ms, speed, element: element.current };
    counted.add(each);
    write(each, performance.now());
    if (timer === 0) timer = window.setTimeout(tick, OFTEN_MS);
    return () => void counted.delete(each);
  }, [from_s, told_ms, speed]);
  return <time class="tile-waits" ref={element} />;
}
