// The handles of the own lines, kept in this tab: a reload does not take them away before they are committed to.

import type { View } from "../../live/contract";
import type { OwnLines } from "./lines";

const KEY = "own-lines";

/** Lines are of one bench and one practical: bench time never begins anew. */
const nameOf = ({ bench, plan, repeats }: View): string => JSON.stringify([bench.name, plan, repeats.map(({ started_s }) => started_s)]);

const isLine = (line: unknown): boolean =>
  Array.isArray(line) && line.length === 2 && line.every((each) => Number.isFinite(each?.volume_cm3) && Number.isFinite(each?.temperature_c));

/** The lines as they were left, null where there are none of this practical. */
export function keptLines(view: View): OwnLines | null {
  try {
    const { of, lines } = JSON.parse(sessionStorage.getItem(KEY) ?? "{}") as { of?: string; lines?: OwnLines };
    return of === nameOf(view) && lines && isLine(lines.before) && isLine(lines.after) ? lines : null;
  } catch {
    return null;
  }
}

/** Keep the lines; where the browser keeps nothing they last as long as the page. */
export function keepLines(view: View, lines: OwnLines): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ of: nameOf(view), lines }));
  } catch {
    // A private window may keep nothing.
  }
}
