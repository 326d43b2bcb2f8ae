// The table of readings: the numbers behind the curve.

import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import type { View } from "../contract";
import { decimal, short } from "../format";
import { addedWord } from "../plan";
import { reasonInWords } from "../reasons";
import { type Cell as TableCell, type Table, readingsTable } from "../table";
import { said, words } from "../words";
import { TableFrame } from "./table_frame";

function Cell({ cell: { reading, ownVolume_cm3, unsureReason }, typed }: { cell: TableCell; typed: boolean }) {
  const reason = reasonInWords(unsureReason);
  if (!reading || reading.temperature_c === null) {
    return (
      <td>
        <span aria-hidden="true">{words.missing}</span>
        <span class="unseen">{words.noReading}</span>
      </td>
    );
  }
  return (
    <td>
      {words.reading(reading.temperature_c)}
      {ownVolume_cm3 !== null && <small> {words.atVolume(ownVolume_cm3)}</small>}
      {!reading.settled && <small> {words.notSettled}</small>}
      {reading.unsure && <small> {reason ? words.seeing.unsureWhy(reason) : words.notSure}</small>}
      {typed && reading.typed && <small> {words.seeing.typed}</small>}
    </td>
  );
}

interface TableProps {
  table: Table;
  /** One cell of a repeat, as it is wanted there. */
  write: (cell: TableCell, key: number | undefined) => ComponentChildren;
}

/** Volume, each repeat, and their mean; what stands in a repeat's cell is the caller's. */
export function ReadingsTable({ table, write }: TableProps) {
  const averaged = table.repeats.length > 1;
  return (
    <table>
      <caption>{words.table}</caption>
      <thead>
        <tr>
          <th scope="col">{words.tableVolume}</th>
          {table.repeats.map((repeat) => (
            <th scope="col" key={repeat}>
              {words.tableRepeat(repeat)}
            </th>
          ))}
          {averaged && <th scope="col">{words.tableMean}</th>}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <tr key={row.portion}>
            <th scope="row">{decimal(short(row.volume_cm3))}</th>
            {row.cells.map((cell, index) => write(cell, table.repeats[index]))}
            {averaged && <td class="mean-cell">{row.mean ? words.reading(row.mean.temperature_c) : ""}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the probe's temperatures are corrected by, or that they are not; by repeat where they differ. */
export function corrections({ corrections: all }: View): string[] {
  return all.map(({ repeats, text }) =>
    all.length > 1 ? `${repeats.map(words.tableRepeat).join(", ")}: ${said(text)}` : said(text),
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
          <p key={repeat.started_s}>{words.setAside(repeat.repeat, reasonInWords(repeat.reason))}</p>
        ))}
      {corrections(view).map((told) => (
        <p key={told}>{told}</p>
      ))}
      {alkali_temperature_c !== null && <p>{words.addedAt(addedWord(view.plan), alkali_temperature_c)}</p>}
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
  return (
    <section class="readings">
      <TableFrame name={words.table}>
        <ReadingsTable table={table} write={(cell, key) => <Cell key={key} cell={cell} typed={mixed} />} />
      </TableFrame>
      <AsideAndAdded view={view} />
    </section>
  );
}
