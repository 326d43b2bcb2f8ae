// Lists on the page of planning.

import { phrase } from "../words";

/** "45", "45 or 60", "45 or 60 or 90". */
export function eitherOf(all: readonly string[]): string {
  return all.reduce((some, other) => phrase("page-plan-or", { some, other }));
}
