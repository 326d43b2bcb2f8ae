// A practical that mixes once on the record sheet: results, graph, numbers.

import { Axes, Marks, Sized, Swatch, repeatClass, repeatMark } from "../../chart/axes";
import type { Box } from "../../chart/frame";
import { type OnceChart, OnceNumbers, type Segment, onceChart, seriesOf } from "../../chart/once";
import { drawnRepeats } from "../../chart/volume";
import { rounded, signed } from "../../format";
import type { OnceView } from "../../live/contract";
import type { Traces } from "../../live/model";
import type { Change } from "../../live/results";
import { celsiusPlaces, joulePlaces, plusMinus } from "../../phrases/quantities";
import { changeIntervalText, onceChartText } from "../../phrases/results";
import { phrase, said } from "../../words";
import { type Column, type GraphProps, type Sheet, enthalpy, followed, refused } from "../sheet";

function change(name: string, found: Change): Column {
  const of = found.enthalpy_of;
  const { change_c, u_change_c, interval_95_c, heat_j, u_heat_j, enthalpy_kj_mol, u_enthalpy_kj_mol } = found;
  return {
    name,
    number: phrase("page-change", { change: signed(change_c, celsiusPlaces(u_change_c)) }),
    interval: `${phrase("page-change-plus-minus", { u: plusMinus(u_change_c, celsiusPlaces(u_change_c)) })}; ${changeIntervalText(interval_95_c, u_change_c)}`,
    more: [
      [phrase("page-heat", { way: heat_j < 0 ? "in" : "out" }), `${phrase("page-joules", { heat: rounded(Math.abs(heat_j), joulePlaces(u_heat_j)) })} (${phrase("page-joules-plus-minus", { u: plusMinus(u_heat_j, joulePlaces(u_heat_j)) })})`],
      ...followed(of === null ? phrase("page-record-enthalpy") : phrase("page-enthalpy-of", { what: said(of) }), enthalpy_kj_mol, u_enthalpy_kj_mol, enthalpy),
    ],
    remark: null,
  };
}

function columns({ result }: OnceView): Column[] {
  if (!result) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  return [
    ...(lines ? [change(phrase("page-by-extended-lines"), lines)] : refused(phrase("page-by-extended-lines"), result.refused.straight_lines)),
    ...(heat ? [change(phrase("page-record-heat"), heat)] : refused(phrase("page-record-heat"), result.refused.heat_balance)),
  ];
}

// The graph of a practical that mixes once, with nothing to touch: all repeats, and the newest one's lines.

const SHAPE = 0.5;
const LETTERS = 48;
const MARK_LETTERS = 0.75;

const drawn = ([from, to]: Segment) => `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;

function Lines({ read }: { read: NonNullable<OnceChart["read"]> }) {
  return (
    <g class="read-off">
      {[read.before, read.after].map((line, index) => (
        <g key={index} class="stretch">
          <path class="through" d={drawn(line.through)} />
          <path class="extended" d={drawn(line.extended)} />
        </g>
      ))}
      <path class="change" d={drawn(read.change)} />
    </g>
  );
}

function Drawing({ view, traces, box }: { view: OnceView; traces: Traces; box: Box }) {
  const { before_s, after_s } = view.plan.timing;
  const withLines = (view.result?.repeats ?? []).flatMap(({ repeat, straight_lines: lines }) => (lines ? [{ repeat, lines }] : []));
  const read = withLines[withLines.length - 1] ?? null;
  const series = drawnRepeats(view.repeats).map((one) => seriesOf(one, traces.get(one.repeat)?.samples));
  const chart = onceChart({ planned_s: before_s + after_s, series, read }, box);
  const { letter } = box;
  const change = read && phrase("page-change", { change: signed(read.lines.change_c, celsiusPlaces(read.lines.u_change_c)) });
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={onceChartText(series.length, change)}>
      <Axes frame={chart.frame} letter={letter} across={phrase("page-since-repeat-axis")} up={phrase("page-temperature-axis")} />
      {chart.traces.map(({ repeat, path, marks }) => (
        <g key={repeat} class="once-trace">
          <path class={repeatClass(repeat)} d={path} />
          <Marks points={marks} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
        </g>
      ))}
      {chart.read && <Lines read={chart.read} />}
    </svg>
  );
}

function Graph({ view, traces, paper_px: width }: GraphProps<OnceView>) {
  return (
    <>
      {width === null ? (
        <Sized class="drawing" shape={SHAPE}>
          {(box) => <Drawing view={view} traces={traces} box={box} />}
        </Sized>
      ) : (
        <Drawing view={view} traces={traces} box={{ width, height: Math.round(SHAPE * width), letter: width / LETTERS }} />
      )}
      <ul class="legend">
        {drawnRepeats(view.repeats).map(({ repeat }) => (
          <li key={repeat}>
            <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {phrase("page-repeat-name", { repeat })}
          </li>
        ))}
      </ul>
    </>
  );
}

export const sheet: Sheet<OnceView> = { columns, Graph, Numbers: OnceNumbers };
