// What answers the question of a practical, by its kind; and which of two methods is worth more.

import type { View } from "../live/contract";
import { marked } from "../words";

export interface Answering<Of extends View = View> {
  /** Marked sentences (`Explained`): the own value, the best one; none while there is nothing to answer with. */
  sentences(view: Of): string[];
  /** Of two values, which is worth more, and why, as marked text. */
  worth(view: Of): string;
}

/** A value with its standard uncertainty. */
export interface Found {
  value: number;
  u: number;
}

const fits = (heat: unknown): boolean => (heat as { describes_trace?: boolean } | null)?.describes_trace !== false;

/** Which method's value is worth more: the heat balance's, unless it does not fit the trace and the lines gave one. */
export function worthMore({ result }: View): "heat" | "lines" | null {
  const { heat_balance: heat = null, straight_lines: lines = null, repeats = [] } = result ?? {};
  if (!heat) return lines && "lines";
  const described = "describes_trace" in heat ? fits(heat) : repeats.every(({ heat_balance: one }) => fits(one));
  return described || !lines ? "heat" : "lines";
}

/** Why one of them is: `heat` where that is the heat balance's. */
export const whyWorthMore = (view: View, heat: string): string => (worthMore(view) === "lines" ? marked("page-worth-lines") : heat);
