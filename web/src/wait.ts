// How long a wait still lasts, in the time of the person who waits.

import type { View } from "./contract";

/** Wall seconds left of a wait, and the share of it that is over. */
export function waitLeft(view: View, poured_s: number | null): { left_s: number | null; over: number | null } {
  if (!view.settle || view.settle.left_s === null) return { left_s: null, over: null };
  const { left_s } = view.settle;
  const gone_s = poured_s === null ? 0 : Math.max(0, view.time_s - poured_s);
  return { left_s: left_s / (view.speed || 1), over: gone_s + left_s > 0 ? gone_s / (gone_s + left_s) : null };
}
