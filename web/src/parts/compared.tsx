// How far the students' own reading is off the computed ones.

import type { OwnReading, View } from "../contract";
import { keptTogether } from "../format";
import { isOnce } from "../plan";
import type { OnceResult, PortionsResult } from "../results";
import { words } from "../words";
import { TableFrame } from "./table_frame";

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
          value: words.ownLines.volume(found.end_point_cm3, found.u_end_point_cm3),
          off: words.ownLines.off(end_point_cm3, found.end_point_cm3),
        }]
      : [];
  return [
    { name: before ? words.ownLines.you : words.ownLines.youTyped, value: words.ownLines.ownVolume(end_point_cm3), off: "" },
    ...row(words.ownLines.lines, lines),
    ...row(words.ownLines.heat, heat),
  ];
}

function changes({ change_c }: OwnReading, result: OnceResult): Row[] {
  if (change_c === null) return [];
  const row = (name: string, found: { change_c: number; u_change_c: number } | null): Row[] =>
    found
      ? [{
          name,
          value: words.ownLines.changeOf(found.change_c, found.u_change_c),
          off: words.ownLines.offChange(change_c, found.change_c),
        }]
      : [];
  return [
    { name: words.ownLines.youTyped, value: words.ownLines.ownChange(change_c), off: "" },
    ...row(words.ownLines.linesOnce, result.straight_lines),
    ...row(words.ownLines.heat, result.heat_balance),
  ];
}

export function Compared({ view }: { view: View }) {
  const { own_reading, result } = view;
  if (!own_reading || !result) return null;
  const rows = isOnce(view) ? changes(own_reading, result as OnceResult) : volumes(own_reading, result as PortionsResult);
  if (rows.length < 2) return null;
  return (
    <TableFrame name={words.ownLines.compared}>
      <table class="compared">
        <caption>{words.ownLines.compared}</caption>
        <thead>
          <tr>
            <th scope="col">{words.ownLines.which}</th>
            <th scope="col">{words.ownLines.value}</th>
            <th scope="col">{words.ownLines.howFar}</th>
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
  );
}
