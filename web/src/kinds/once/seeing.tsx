// What there is to see of one mixing. Fetched when the plan mixes once: most practicals go in portions.

import { useMemo, useRef, useState } from "preact/hooks";
import { Axes, Marks, Sized, Swatch, repeatClass, repeatMark } from "../../chart/axes";
import type { Box } from "../../chart/frame";
import {
  type OnceChart,
  OnceNumbers,
  type OnceSeries,
  type Segment,
  type StretchDrawn,
  onceChart,
  seriesOf,
} from "../../chart/once";
import { Moments } from "../../chart/reader";
import { drawnRepeats } from "../../chart/volume";
import { keptTogether, rounded, signed } from "../../format";
import type { Acting } from "../../live/acts";
import type { OnceView } from "../../live/contract";
import type { Traces } from "../../live/model";
import type { Change, Extended, OnceRepeat } from "../../live/results";
import { later } from "../../page/shared";
import { celsiusPlaces, joulePlaces, kilojoulePlaces, plusMinus } from "../../phrases/quantities";
import { changeIntervalText, linesKnowText, onceChartText } from "../../phrases/results";
import { momentOnceText } from "../../phrases/seeing";
import { Explained } from "../../page/terms";
import { marked, phrase, said, wordsVersion } from "../../words";
import { After, isOver, mayRead } from "../../bench/curves";
import type { SeeingProps } from "../seeing";
import { Answer, Compared, MethodCard, RemarkLine, Remarks, Waiting } from "../../bench/results";

export function Seeing({ view, model, acting }: SeeingProps<OnceView>) {
  return (
    <>
      {view.results.shown && isOver(view) && <Answer view={view} />}
      <OnceFigure view={view} traces={model.traces} acting={acting} />
      <OnceNumbers view={view} />
      <After view={view} />
    </>
  );
}

// Temperature (up) against time (across) of all repeats that mix once; of one of them both lines, extended to the
// moment of mixing, and the change read off between them.

const OwnChange = later(async () => (await import("../../bench/own/own_values")).OwnChange);

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
        {phrase("page-change", { change: signed(lines.change_c, celsiusPlaces(lines.u_change_c)) })}
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
                {phrase("page-mixed")}
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
  /** The repeat that stands out; the others are quiet. */
  single: number | null;
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
  const { series, read, single } = data;
  const chart = useMemo(() => onceChart(data, box), [useSame(series), data.planned_s, read?.lines, box, wordsVersion()]);
  const { frame } = chart;
  const own = series.find(({ repeat }) => repeat === single) ?? series[series.length - 1];
  const good = chart.traces.find(({ repeat }) => repeat === own?.repeat)?.good ?? [];
  return (
    <Moments
      frame={frame}
      box={box}
      good={good}
      text={(time_s, temperature_c) => {
        const mixed_s = own?.mixed_s ?? null;
        const since_s = mixed_s === null || time_s < mixed_s ? null : time_s - mixed_s;
        return momentOnceText(time_s, own?.repeat ?? 1, temperature_c, since_s);
      }}
    >
      <Drawing chart={chart} series={series} read={read} single={single} box={box} />
    </Moments>
  );
}

function Drawing({ chart, series, read, single, box }: Omit<DrawnProps, "planned_s"> & { chart: OnceChart }) {
  const { letter } = box;
  const change = read && phrase("page-change", { change: signed(read.lines.change_c, celsiusPlaces(read.lines.u_change_c)) });
  const labelled = single ?? series[series.length - 1]?.repeat;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-labelledby="once-title once-text">
      <desc id="once-text">{onceChartText(series.length, change)}</desc>
      <Axes frame={chart.frame} letter={letter} across={phrase("page-since-repeat-axis")} up={phrase("page-temperature-axis")} />
      <Mixing chart={chart} repeat={labelled} letter={letter} />
      {chart.traces.map(({ repeat, path: d, marks }) => (
        <g key={repeat} class={`once-trace${single !== null && repeat !== single ? " once-quiet" : ""}`}>
          <path class={repeatClass(repeat)} d={d} />
          <Marks points={marks} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
        </g>
      ))}
      {chart.read && read && <ReadOff read={chart.read} lines={read.lines} left={chart.frame.left} letter={letter} />}
    </svg>
  );
}

/** Repeats by colour and shape; where there are several, each is a button that singles it out, with its lines. */
function Legend({ repeats, single, lines, choose }: {
  repeats: readonly { repeat: number; readable: boolean }[];
  single: number | null;
  lines: boolean;
  choose: (repeat: number) => void;
}) {
  const several = repeats.filter(({ readable }) => readable).length > 1;
  return (
    <ul class="legend">
      {repeats.map(({ repeat, readable }) => {
        const name = [<Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} />, ` ${phrase("page-repeat-name", { repeat })}`];
        return (
          <li key={repeat}>
            {several && readable ? (
              <button type="button" class="plain" aria-pressed={repeat === single} onClick={() => choose(repeat)}>
                {name}
              </button>
            ) : (
              name
            )}
          </li>
        );
      })}
      {lines && (
        <>
          <li>
            <Swatch path="M-10,0H10" class="fit" /> {phrase("page-line-read-off")}
          </li>
          <li>
            <Swatch path="M-10,0h7M3,0h7" class="fit" /> {phrase("page-line-extended")}
          </li>
        </>
      )}
    </ul>
  );
}

function OnceFigure({ view, traces, acting }: { view: OnceView; traces: Traces; acting: Acting }) {
  const [chosen, choose] = useState<number | null>(null);
  const { before_s, after_s } = view.plan.timing;
  const repeats = drawnRepeats(view.repeats);
  const withLines = (view.result?.repeats ?? []).flatMap(({ repeat, straight_lines: lines }) =>
    lines && repeats.some((one) => one.repeat === repeat) ? [{ repeat, lines }] : [],
  );
  const read = withLines.find(({ repeat }) => repeat === chosen) ?? withLines[withLines.length - 1] ?? null;
  const series = repeats.map((one) => seriesOf(one, traces.get(one.repeat)?.samples));
  const named = repeats.map(({ repeat }) => ({ repeat, readable: withLines.length === 0 || withLines.some((one) => one.repeat === repeat) }));
  const single = read?.repeat ?? chosen;
  return (
    <section class={`figure${view.state === "done" ? " figure-large" : ""}`} data-testid="curve">
      <h2 id="once-title">{phrase("page-once-chart")}</h2>
      <Sized class="drawing" shape={0.45}>
        {(box) => <Readable planned_s={before_s + after_s} series={series} read={read} single={single} box={box} />}
      </Sized>
      <Legend repeats={named} single={single} lines={read !== null} choose={(repeat) => choose(repeat === chosen && read === null ? null : repeat)} />
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

// What one mixing gave by each method: change of temperature, heat, enthalpy per mole; or why there is none.

function inWords(value: Change) {
  return {
    number: phrase("page-change", { change: signed(value.change_c, celsiusPlaces(value.u_change_c)) }),
    interval: changeIntervalText(value.interval_95_c, value.u_change_c),
    plusMinus: marked("page-change-plus-minus", { u: plusMinus(value.u_change_c, celsiusPlaces(value.u_change_c)) }),
  };
}

function Worked({ value, of }: { value: Change; of: string | null }) {
  const { heat_j, u_heat_j, enthalpy_kj_mol, u_enthalpy_kj_mol } = value;
  return (
    <dl class="worked">
      <dt>{phrase("page-heat", { way: heat_j < 0 ? "in" : "out" })}</dt>
      <dd>
        <b class="heat">{keptTogether(phrase("page-joules", { heat: rounded(Math.abs(heat_j), joulePlaces(u_heat_j)) }))}</b>{" "}
        <span>{keptTogether(phrase("page-joules-plus-minus", { u: plusMinus(u_heat_j, joulePlaces(u_heat_j)) }))}</span>
      </dd>
      {enthalpy_kj_mol !== null && u_enthalpy_kj_mol !== null && of !== null && (
        <>
          <dt><Explained text={marked("page-enthalpy-of", { what: said(of) })} /></dt>
          <dd>
            <b class="enthalpy">{keptTogether(phrase("page-enthalpy", { enthalpy: signed(enthalpy_kj_mol, kilojoulePlaces(u_enthalpy_kj_mol)) }))}</b>{" "}
            <span>{keptTogether(phrase("page-enthalpy-plus-minus", { u: plusMinus(u_enthalpy_kj_mol, kilojoulePlaces(u_enthalpy_kj_mol)) }))}</span>
          </dd>
        </>
      )}
    </dl>
  );
}

/** What both had to guess; a weighed solid brings hardly any heat of its own along. */
function guessed({ plan, alkali_temperature_c }: OnceView): string[] {
  const { mass_g, temperature_c, name } = plan.addition;
  const known = mass_g !== null || alkali_temperature_c !== null || temperature_c !== null;
  return known ? [] : [phrase("page-added-unknown", { name: said(name) })];
}

/** Mean over the repeats whose bias is known / °C. */
export function expectedBias(repeats: readonly OnceRepeat[]): number | null {
  const known = repeats.flatMap(({ straight_lines: lines }) => lines?.predicted_bias_c ?? []);
  return known.length === 0 ? null : known.reduce((sum, bias_c) => sum + bias_c, 0) / known.length;
}

/** `over` tells whether a repeat has just ended; only then are refusals and remarks of a method news. */
function OnceResultWords({ view, over }: { view: OnceView; over: boolean }) {
  const { result } = view;
  if (!result) return over ? <p class="remark">{phrase("page-own-lines-computing")}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused, repeats } = result;
  const found = repeats.flatMap((repeat) => repeat.heat_balance ?? []);
  const of = [...repeats.flatMap((repeat) => repeat.straight_lines ?? []), ...found][0]?.enthalpy_of ?? null;
  const described = found.every((balance) => balance.describes_trace);
  const guess = guessed(view);
  return (
    <>
      <div class="results">
        {lines && (
          <MethodCard name={phrase("page-by-extended-lines")} method="lines" {...inWords(lines)} brief={!over}>
            <Worked value={lines} of={of} />
            <RemarkLine text={[linesKnowText(lines.change_c, expectedBias(repeats)), ...guess].join(" ")} />
          </MethodCard>
        )}
        {heat && (
          <MethodCard name={marked("page-by-heat-balance")} method="heat" {...inWords(heat)} brief={!over}>
            <Worked value={heat} of={of} />
            <RemarkLine text={[described ? phrase("page-heat-once-knows") : phrase("page-not-described"), ...guess].join(" ")} />
          </MethodCard>
        )}
        {over && !lines && refused.straight_lines && <RemarkLine text={phrase("page-refused-change", { reason: said(refused.straight_lines) })} />}
        {over && !heat && refused.heat_balance && <RemarkLine text={phrase("page-refused-heat", { reason: said(refused.heat_balance) })} />}
      </div>
      <Remarks view={view} result={result} repeats={view.repeats} />
    </>
  );
}
