// The graph of a practical that mixes once, with nothing to touch: all repeats, and the newest one's lines.

import { type OnceChart, type Segment, onceChart } from "../chart_once";
import { drawnRepeats } from "../chart_volume";
import type { Box } from "../frame";
import type { OnceView } from "../plan";
import type { Traces } from "../traces";
import { words } from "../words";
import { Axes } from "./axes";
import { Marks, Swatch, repeatClass, repeatMark } from "./marks";
import { Sized } from "./sized";

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
  const series = drawnRepeats(view.repeats).map(({ repeat, portions }) => ({
    repeat,
    samples: traces.get(repeat)?.samples ?? [],
    mixed_s: portions[0]?.time_s ?? null,
  }));
  const chart = onceChart({ planned_s: before_s + after_s, series, read }, box);
  const { letter } = box;
  const change = read && words.change(read.lines.change_c, read.lines.u_change_c);
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={words.onceChartText(series.length, change)}>
      <Axes frame={chart.frame} letter={letter} across={words.sinceRepeatAxis} up={words.temperatureAxis} />
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

/** `width` in CSS px for paper; null takes the width there is. */
export function OnceStill({ view, traces, width }: { view: OnceView; traces: Traces; width: number | null }) {
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
            <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {words.repeatName(repeat)}
          </li>
        ))}
      </ul>
    </>
  );
}
