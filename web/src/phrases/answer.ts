// The answer to the question that the practical asks, in one or two sentences.

import { parts } from "@kinds/answer";
import type { View } from "../live/contract";

/** Which of two values is worth more, and why, as marked text; empty where there is only one. */
export function worthText(view: View): string {
  const { heat_balance: heat = null, straight_lines: lines = null } = view.result ?? {};
  if (!heat || !lines) return "";
  return parts[view.plan.kind].worth(view);
}

/** Marked text (`Explained`); empty while there is nothing to answer with. */
export const answerText = (view: View): string => parts[view.plan.kind].sentences(view).join(" ");
