// Temperature (up) against time (across) of all repeats that mix once; of one of them both lines, extended to the
// moment of mixing, and the change read off between them.

import { useMemo, useRef, useState } from "preact/hooks";
import { type OnceChart, type OnceSeries, type Segment, type StretchDrawn, onceChart } from "../chart_once";
import { drawnRepeats } from "../chart_volume";
import type { Sample } from "../contract";
import type { Box } from "../frame";
import type { OnceView } from "../plan";
import type { Extended } from "../results";
import type { Traces } from "../traces";
import { words } from "../words";
import type { Acting } from "./acting";
import { Axes } from "./axes";
import { Compared } from "./compared";
import { isOver, mayRead } from "./curve_figure";
import { later } from "./later";
import { Marks, Swatch, repeatClass, repeatMark } from "./marks";
import { OnceResultWords } from "./once_result";
import { Reader } from "./reader";
import { Sized } from "./sized";
import { Waiting } from "./waiting";

const OwnChange = later(async () => (await import("./own_change")).OwnChange);

const MARK_LETTERS = 0.75;

function path([from, to]: Segment): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

function LineDrawn({ line, side }: { line: StretchDrawn; side: "before" | "after" }) {
  return (
    <g class={`stretch stretch-${side}`}>
      <path class="through" d={path(line.through)} />
      <path class="extended" d={path(line.extended)} />
    </g>
  );
}

/** Letters that the change takes beside its arrow. */
const CHANGE_LETTERS = 7;

function ReadOff({ read, lines, left, letter }: {
  read: NonNullable<OnceChart["read"]>;
  lines: Extended;
  left: number;
  letter: number;
}) {
  const [[x, from], [, to]] = read.change;
  const cap = 0.45 * letter;
  // To the left there is nothing else; on a narrow screen there is no room either.
  const toLeft = x - left > CHANGE_LETTERS * letter;
  return (
    <g class="read-off" font-size={1.25 * letter}>
      <LineDrawn line={read.before} side="before" />
      <LineDrawn line={read.after} side="after" />
      <path class="change" d={`M${x - cap},${from}h${2 * cap}M${x},${from}V${to}M${x - cap},${to}h${2 * cap}`} />
      <text x={x + (toLeft ? -0.7 : 1.8) * letter} y={(from + to) / 2 + 0.4 * letter} text-anchor={toLeft ? "end" : "start"}>
        {words.change(lines.change_c, lines.u_change_c)}
      </text>
    </g>
  );
}

function Mixing({ chart, repeat, letter }: { chart: OnceChart; repeat: number | undefined; letter: number }) {
  const { top, bottom } = chart.frame;
  return (
    <g class="mixing" font-size={letter}>
      {chart.traces.map(({ repeat: own, mixed_x }) =>
        mixed_x === null ? null : (
          <g key={own} class={repeatClass(own)}>
            <path d={`M${mixed_x.toFixed(1)},${top}V${bottom}`} />
            {own === repeat && (
              <text x={mixed_x + 0.4 * letter} y={bottom - 0.5 * letter}>
                {words.mixed}
              </text>
            )}
          </g>
        ),
      )}
    </g>
  );
}

interface DrawnProps {
  planned_s: number;
  series: readonly OnceSeries[];
  read: { repeat: number; lines: Extended } | null;
  box: Box;
}

/** The series handed in before, while it says the same: samples keep their identity while none comes. */
function useSame(series: readonly OnceSeries[]): readonly OnceSeries[] {
  const known = useRef(series);
  const same = known.current.length === series.length && series.every((one, index) => {
    const old = known.current[index];
    return old?.repeat === one.repeat && old.samples === one.samples && old.mixed_s === one.mixed_s;
  });
  if (!same) known.current = series;
  return known.current;
}

/** The chart, and the curve that is read point by point: that of the lines, else the newest. */
function Readable({ box, ...data }: DrawnProps) {
  const { series, read } = data;
  const chart = useMemo(() => onceChart(data, box), [useSame(series), data.planned_s, read?.lines, box]);
  const { frame } = chart;
  const own = series.find(({ repeat }) => repeat === read?.repeat) ?? series[series.length - 1];
  const good = chart.traces.find(({ repeat }) => repeat === own?.repeat)?.good ?? [];
  const one = (index: number) => good[index] ?? [0, 0];
  return (
    <Reader
      frame={frame}
      box={box}
      count={good.length}
      at={(index) => frame.x(one(index)[0])}
      marks={(index) => [[frame.x(one(index)[0]), frame.y(one(index)[1])]]}
      text={(index) => {
        const [time_s, temperature_c] = one(index);
        const mixed_s = own?.mixed_s ?? null;
        const since_s = mixed_s === null || time_s < mixed_s ? null : time_s - mixed_s;
        return words.seeing.momentOnce(time_s, own?.repeat ?? 1, temperature_c, since_s);
      }}
    >
      <Drawing chart={chart} series={series} read={read} box={box} />
    </Reader>
  );
}

function Drawing({ chart, series, read, box }: Omit<DrawnProps, "planned_s"> & { chart: OnceChart }) {
  const { letter } = box;
  const change = read && words.change(read.lines.change_c, read.lines.u_change_c);
  const labelled = read?.repeat ?? series[series.length - 1]?.repeat;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-labelledby="once-title once-text">
      <desc id="once-text">{words.onceChartText(series.length, change)}</desc>
      <Axes frame={chart.frame} letter={letter} across={words.sinceRepeatAxis} up={words.temperatureAxis} />
      <Mixing chart={chart} repeat={labelled} letter={letter} />
      {chart.traces.map(({ repeat, path: d, marks }) => (
        <g key={repeat} class={`once-trace${read && repeat !== read.repeat ? " once-quiet" : ""}`}>
          <path class={repeatClass(repeat)} d={d} />
          <Marks points={marks} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
        </g>
      ))}
      {chart.read && read && <ReadOff read={chart.read} lines={read.lines} left={chart.frame.left} letter={letter} />}
    </svg>
  );
}

/** Repeats by colour and shape; where several have lines, each is a button that shows its own. */
function Legend({ repeats, read, choose }: {
  repeats: readonly { repeat: number; readable: boolean }[];
  read: number | null;
  choose: (repeat: number) => void;
}) {
  const several = repeats.filter(({ readable }) => readable).length > 1;
  return (
    <ul class="legend">
      {repeats.map(({ repeat, readable }) => {
        const name = [<Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} />, ` ${words.repeatName(repeat)}`];
        return (
          <li key={repeat}>
            {several && readable ? (
              <button type="button" class="plain" aria-pressed={repeat === read} onClick={() => choose(repeat)}>
                {name}
              </button>
            ) : (
              name
            )}
          </li>
        );
      })}
      {read !== null && (
        <>
          <li>
            <Swatch path="M-10,0H10" class="fit" /> {words.lineReadOff}
          </li>
          <li>
            <Swatch path="M-10,0h7M3,0h7" class="fit" /> {words.lineExtended}
          </li>
        </>
      )}
    </ul>
  );
}

const NONE: readonly Sample[] = [];

export function OnceFigure({ view, traces, acting }: { view: OnceView; traces: Traces; acting: Acting }) {
  const [chosen, choose] = useState<number | null>(null);
  const { before_s, after_s } = view.plan.timing;
  const repeats = drawnRepeats(view.repeats);
  const withLines = (view.result?.repeats ?? []).flatMap(({ repeat, straight_lines: lines }) =>
    lines && repeats.some((one) => one.repeat === repeat) ? [{ repeat, lines }] : [],
  );
  const read = withLines.find(({ repeat }) => repeat === chosen) ?? withLines[withLines.length - 1] ?? null;
  const series = repeats.map(({ repeat, portions }) => ({
    repeat,
    samples: traces.get(repeat)?.samples ?? NONE,
    mixed_s: portions[0]?.time_s ?? null,
  }));
  const named = repeats.map(({ repeat }) => ({ repeat, readable: withLines.some((one) => one.repeat === repeat) }));
  return (
    <section class="figure">
      <h2 id="once-title">{words.onceChart}</h2>
      <Sized class="drawing" shape={0.45}>
        {(box) => <Readable planned_s={before_s + after_s} series={series} read={read} box={box} />}
      </Sized>
      <Legend repeats={named} read={read?.repeat ?? null} choose={choose} />
      <OnceFound view={view} acting={acting} />
    </section>
  );
}

/** The results, or the own reading that comes first. */
function OnceFound({ view, acting }: { view: OnceView; acting: Acting }) {
  const [again, setAgain] = useState(false);
  if (view.results.shown) {
    return (
      <>
        <OnceResultWords view={view} over={isOver(view)} />
        {view.state === "done" && <Compared view={view} />}
      </>
    );
  }
  if (mayRead(view) && (view.own_reading === null || again)) {
    return <OwnChange view={view} acting={acting} done={() => setAgain(false)} />;
  }
  return <Waiting view={view} change={mayRead(view) ? () => setAgain(true) : null} />;
}
