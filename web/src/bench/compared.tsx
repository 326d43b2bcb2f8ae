// How far the students' own reading is off the computed ones, and which of these is worth more.

import { keptTogether, rounded, short, signed } from "../format";
import type { OwnReading, View } from "../live/contract";
import type { OnceResult, PortionsResult } from "../live/results";
import { TableFrame } from "../page/shared";
import { Explained } from "../page/terms";
import { worthText } from "../phrases/answer";
import { offChangeText, offText } from "../phrases/own_lines";
import { celsiusPlaces, cm3Places } from "../phrases/quantities";
import { phrase } from "../words";

interface Row {
  name: string;
  value: string;
  off: string;
}

function volumes({ end_point_cm3, before }: OwnReading, result: PortionsResult): Row[] {
  if (end_point_cm3 === null) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  const row = (name: string, found: { end_point_cm3: number; u_end_point_cm3: number } | null | undefined): Row[] =>
    found
      ? [{
          name,
          value: phrase("page-own-lines-own-volume", { volume: rounded(found.end_point_cm3, cm3Places(found.u_end_point_cm3)) }),
          off: offText(end_point_cm3, found.end_point_cm3),
        }]
      : [];
  return [
    { name: before ? phrase("page-own-lines-you") : phrase("page-own-lines-you-typed"), value: phrase("page-own-lines-own-volume", { volume: short(end_point_cm3) }), off: "" },
    ...row(phrase("page-own-lines-lines"), lines),
    ...row(phrase("page-own-lines-heat"), heat),
  ];
}

function changes({ change_c }: OwnReading, result: OnceResult): Row[] {
  if (change_c === null) return [];
  const row = (name: string, found: { change_c: number; u_change_c: number } | null): Row[] =>
    found
      ? [{
          name,
          value: phrase("page-own-lines-own-change", { change: signed(found.change_c, celsiusPlaces(found.u_change_c)) }),
          off: offChangeText(change_c, found.change_c),
        }]
      : [];
  return [
    { name: phrase("page-own-lines-you-typed"), value: phrase("page-own-lines-own-change", { change: signed(change_c, 2) }), off: "" },
    ...row(phrase("page-own-lines-lines-once"), result.straight_lines),
    ...row(phrase("page-own-lines-heat"), result.heat_balance),
  ];
}

/** The own reading beside the computed values, and which of these is worth more. */
export function Compared({ view }: { view: View }) {
  const { own_reading, result } = view;
  if (!result) return null;
  const rows = !own_reading ? [] : own_reading.change_c === null ? volumes(own_reading, result as PortionsResult) : changes(own_reading, result as OnceResult);
  const worth = worthText(view);
  if (rows.length < 2) return <WorthMore text={worth} />;
  return (
    <>
      <TableFrame name={phrase("page-own-lines-compared")}>
        <table class="compared">
          <caption>{phrase("page-own-lines-compared")}</caption>
          <thead>
            <tr>
              <th scope="col">{phrase("page-own-lines-which")}</th>
              <th scope="col">{phrase("page-own-lines-value")}</th>
              <th scope="col">{phrase("page-own-lines-how-far")}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, value, off }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{keptTogether(value)}</td>
                <td>{keptTogether(off)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <WorthMore text={worth} />
    </>
  );
}

function WorthMore({ text }: { text: string }) {
  return text === "" ? null : <p class="worth-more"><Explained text={text} /></p>;
}
