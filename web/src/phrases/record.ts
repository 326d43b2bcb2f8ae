// Lines of the record to print.

import { short } from "../format";
import { phrase } from "../words";

/** How temperatures were read that were typed; `division_c` between two lines of the scale or of the last digit, null where
 * it is not known. */
export function typedText({ division_c, digital }: { division_c: number | null; digital: boolean }): string {
  if (division_c === null) return phrase("page-record-typed");
  return phrase("page-record-typed-lines", { division: short(division_c), digital: digital ? "true" : "false" });
}

/** Which repeat and portion something happened in; empty where neither is known. */
export function whereText(repeat: number | null, portion: number | null): string {
  const parts = [
    ...(repeat === null ? [] : [phrase("page-repeat-name", { repeat })]),
    ...(portion === null ? [] : [phrase("page-portion", { portion })]),
  ];
  return parts.join(", ");
}

export function lineText(at: string, where: string, what: string): string {
  return where === "" ? phrase("page-record-line", { at, what }) : phrase("page-record-line-where", { at, where, what });
}

export function becauseText(what: string, reason: string): string {
  return reason === "" ? what : phrase("page-record-because", { what, reason });
}
