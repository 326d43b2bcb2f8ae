// The table of readings: the numbers behind the curve.

import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { type Cell as TableCell, type Table, readingsTable } from "../chart/volume";
import { decimal, fixed, keptTogether, short } from "../format";
import type { View } from "../live/contract";
import { TableFrame } from "../page/shared";
import { Explained } from "../page/terms";
import { capital } from "../phrases/quantities";
import { setAsideText } from "../phrases/reasons";
import { dress, marked, phrase, said } from "../words";
import { addedWord, reasonInWords } from "./names";

/** Decimals of the probe's temperatures, live as in the table. */
export const PROBE_DECIMALS = 2;

/** Decimals of the readings in a table: as many as the finest typed one has, and two of the probe's. */
export function decimalsOf(repeats: View["repeats"]): number {
  const readings = repeats.flatMap((repeat) => repeat.readings).filter(({ temperature_c }) => temperature_c !== null);
  if (readings.length === 0 || !readings.every(({ typed }) => typed)) return PROBE_DECIMALS;
  return Math.max(...readings.map(({ temperature_c }) => short(temperature_c ?? 0).split(".")[1]?.length ?? 0));
}

interface CellProps {
  cell: TableCell;
  typed: boolean;
  decimals: number;
}

function Cell({ cell: { reading, ownVolume_cm3, unsureReason }, typed, decimals }: CellProps) {
  const reason = reasonInWords(unsureReason);
  if (!reading || reading.temperature_c === null) {
    return (
      <td>
        <span aria-hidden="true">{phrase("page-missing")}</span>
        <span class="unseen">{phrase("page-no-reading")}</span>
      </td>
    );
  }
  return (
    <td>
      {dress(fixed(reading.temperature_c, decimals))}
      {ownVolume_cm3 !== null && <small> {phrase("page-at-volume", { volume: short(ownVolume_cm3) })}</small>}
      {!reading.settled && <small> {phrase("page-not-settled")}</small>}
      {reading.unsure && <small> {reason ? phrase("page-seeing-unsure-why", { reason: said(reason) }) : phrase("page-not-sure")}</small>}
      {typed && reading.typed && <small> {phrase("page-seeing-typed")}</small>}
    </td>
  );
}

interface TableProps {
  table: Table;
  /** One cell of a repeat, as it is wanted there. */
  write: (cell: TableCell, key: number | undefined) => ComponentChildren;
  /** Whether its words explain themselves: not on paper. */
  explains?: boolean;
  /** Of the readings; the mean has one more, two at the most. */
  decimals?: number;
}

/** Volume, each repeat, and their mean; what stands in a repeat's cell is the caller's. */
export function ReadingsTable({ table, write, explains = false, decimals = 2 }: TableProps) {
  const averaged = table.repeats.length > 1;
  return (
    <table>
      <caption>{phrase("page-table")}</caption>
      <thead>
        <tr>
          <th scope="col">{phrase("page-table-volume")}</th>
          {table.repeats.map((repeat) => (
            <th scope="col" key={repeat}>
              {phrase("page-table-repeat", { repeat })}
            </th>
          ))}
          {averaged && <th scope="col">{explains ? <Explained text={marked("page-table-mean")} /> : phrase("page-table-mean")}</th>}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <tr key={row.portion}>
            <th scope="row">{decimal(short(row.volume_cm3))}</th>
            {row.cells.map((cell, index) => write(cell, table.repeats[index]))}
            {averaged && <td class="mean-cell">{row.mean ? dress(fixed(row.mean.temperature_c, Math.min(2, decimals + 1))) : ""}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the probe's temperatures are corrected by, or that they are not; by repeat where they differ. */
function corrections({ corrections: all }: View): string[] {
  return all.map(({ repeats, text }) =>
    keptTogether(all.length > 1 ? `${repeats.map((repeat) => phrase("page-table-repeat", { repeat })).join(", ")}: ${said(text)}` : said(text)),
  );
}

/** Repeats that were set aside, and how warm what is added was. */
export function AsideAndAdded({ view }: { view: View }) {
  const { alkali_temperature_c } = view;
  return (
    <>
      {view.repeats
        .filter((repeat) => repeat.status === "set aside")
        .map((repeat) => (
          <p key={repeat.started_s}>{setAsideText(repeat.repeat, reasonInWords(repeat.reason))}</p>
        ))}
      {corrections(view).map((told) => (
        <p key={told}>{told}</p>
      ))}
      {alkali_temperature_c !== null && <p>{phrase("page-added-at", { name: capital(said(addedWord(view.plan))), temperature: fixed(alkali_temperature_c, 1) })}</p>}
    </>
  );
}

export function Readings({ view }: { view: View }) {
  const { repeats, mean } = view;
  const table = useMemo(() => readingsTable(repeats, mean), [repeats, mean]);
  // Where the probe went on or gave up half-way, the typed readings are told apart.
  const all = repeats.flatMap(({ readings }) => readings);
  const mixed = all.some(({ typed }) => typed) && all.some(({ typed }) => !typed);
  if (repeats.length === 0) return null;
  const decimals = decimalsOf(repeats);
  return (
    <section class="readings">
      <TableFrame name={phrase("page-table")}>
        <ReadingsTable table={table} explains decimals={decimals} write={(cell, key) => <Cell key={key} cell={cell} typed={mixed} decimals={decimals} />} />
      </TableFrame>
      <AsideAndAdded view={view} />
    </section>
  );
}
