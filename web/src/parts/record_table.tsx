// The readings of the record: as narrow as paper wants it, with marks and what they mean.

import type { View } from "../contract";
import { decimal, fixed, short } from "../format";
import { type Cell as TableCell, readingsTable } from "../table";
import { words } from "../words";
import { AsideAndAdded, ReadingsTable } from "./readings";

const UNSURE = "?";
const UNSETTLED = "*";

function marksOf({ reading }: TableCell): string {
  if (!reading || reading.temperature_c === null) return "";
  return `${reading.unsure ? UNSURE : ""}${reading.settled ? "" : UNSETTLED}`;
}

function Cell({ cell }: { cell: TableCell }) {
  const { reading, ownVolume_cm3 } = cell;
  if (!reading || reading.temperature_c === null) return <td>{words.missing}</td>;
  return (
    <td>
      {decimal(fixed(reading.temperature_c, 2))}
      {marksOf(cell)}
      {ownVolume_cm3 !== null && <small> ({decimal(short(ownVolume_cm3))})</small>}
    </td>
  );
}

export function RecordTable({ view, paper }: { view: View; paper: boolean }) {
  const table = readingsTable(view.repeats, view.mean);
  const cells = table.rows.flatMap((row) => row.cells);
  const marks = cells.map(marksOf).join("");
  const meant = [
    marks.includes(UNSURE) ? words.record.unsureMark : "",
    marks.includes(UNSETTLED) ? words.record.unsettledMark : "",
    cells.some(({ ownVolume_cm3 }) => ownVolume_cm3 !== null) ? words.record.volumeMark : "",
  ].filter((words) => words !== "");
  return (
    <div class="record-readings">
      {/* Wider than a phone it is scrolled, by keys too. */}
      <div class="table-frame" {...(paper ? {} : { tabIndex: 0, role: "region", "aria-label": words.table })}>
        <ReadingsTable table={table} write={(cell, key) => <Cell key={key} cell={cell} />} />
      </div>
      {meant.length > 0 && <p class="record-remark">{meant.join(" ")}</p>}
      <AsideAndAdded view={view} />
    </div>
  );
}
