// A practical of portions on the record sheet: results, graph, table of readings.

import { AsideAndAdded, ReadingsTable } from "../../bench/readings";
import { type Cell as TableCell, readingsTable } from "../../chart/volume";
import { VolumeChartStill, VolumeFigure } from "../../chart/volume_figure";
import { decimal, fixed, rounded, short } from "../../format";
import type { PortionsView } from "../../live/contract";
import type { EndPoint } from "../../live/results";
import { cm3Places, plusMinus } from "../../phrases/quantities";
import { intervalText, scatterText } from "../../phrases/results";
import { phrase } from "../../words";
import { type Column, type GraphProps, type NumbersProps, type Sheet, concentration, enthalpy, followed, refused } from "../sheet";

function endPoint(name: string, found: EndPoint, more: Column["more"], remark: string): Column {
  const { end_point_cm3, u_end_point_cm3, interval_95_cm3 } = found;
  return {
    name,
    number: phrase("page-record-end-point", { volume: rounded(end_point_cm3, cm3Places(u_end_point_cm3)), u: plusMinus(u_end_point_cm3, cm3Places(u_end_point_cm3)) }),
    interval: intervalText(interval_95_cm3, u_end_point_cm3),
    more,
    remark,
  };
}

function columns({ result }: PortionsView): Column[] {
  if (!result) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  const found = heat
    ? [
        ...followed(phrase("page-record-acid"), heat.acid_mol_dm3, heat.u_acid_mol_dm3, concentration),
        ...followed(phrase("page-record-enthalpy"), heat.enthalpy_kj_mol, heat.u_enthalpy_kj_mol, enthalpy),
      ]
    : [];
  return [
    ...(lines
      ? [endPoint(phrase("page-record-straight"), lines, [], scatterText(lines.predicted_bias_cm3 ?? null))]
      : refused(phrase("page-record-straight"), result.refused.straight_lines)),
    ...(heat
      ? [endPoint(phrase("page-record-heat"), heat, found, heat.describes_trace ? phrase("page-heat-balance-knows") : phrase("page-not-described"))]
      : refused(phrase("page-record-heat"), result.refused.heat_balance)),
  ];
}

function Graph({ view, paper_px, tall = false }: GraphProps<PortionsView>) {
  return paper_px === null ? <VolumeFigure view={view} /> : <VolumeChartStill view={view} width={paper_px} tall={tall} />;
}

// The readings of the record: as narrow as paper wants it, with marks and what they mean.

const UNSURE = "?";
const UNSETTLED = "*";

function marksOf({ reading }: TableCell): string {
  if (!reading || reading.temperature_c === null) return "";
  return `${reading.unsure ? UNSURE : ""}${reading.settled ? "" : UNSETTLED}`;
}

function Cell({ cell }: { cell: TableCell }) {
  const { reading, ownVolume_cm3 } = cell;
  if (!reading || reading.temperature_c === null) return <td>{phrase("page-missing")}</td>;
  return (
    <td>
      {decimal(fixed(reading.temperature_c, 2))}
      {marksOf(cell)}
      {ownVolume_cm3 !== null && <small> ({decimal(short(ownVolume_cm3))})</small>}
    </td>
  );
}

function Numbers({ view, paper }: NumbersProps<PortionsView>) {
  const table = readingsTable(view.repeats, view.mean);
  const cells = table.rows.flatMap((row) => row.cells);
  const marks = cells.map(marksOf).join("");
  const meant = [
    marks.includes(UNSURE) ? phrase("page-record-unsure-mark") : "",
    marks.includes(UNSETTLED) ? phrase("page-record-unsettled-mark") : "",
    cells.some(({ ownVolume_cm3 }) => ownVolume_cm3 !== null) ? phrase("page-record-volume-mark") : "",
  ].filter((words) => words !== "");
  return (
    <div class="record-readings">
      {/* Wider than a phone it is scrolled, by keys too. */}
      <div class="table-frame" {...(paper ? {} : { tabIndex: 0, role: "region", "aria-label": phrase("page-table") })}>
        <ReadingsTable table={table} write={(cell, key) => <Cell key={key} cell={cell} />} />
      </div>
      {meant.length > 0 && <p class="record-remark">{meant.join(" ")}</p>}
      <AsideAndAdded view={view} />
    </div>
  );
}

export const sheet: Sheet<PortionsView> = { columns, Graph, Numbers };
