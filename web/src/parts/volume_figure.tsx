// Temperature (up) against volume added (across): all repeats, their mean, both lines and their crossing.

import { useMemo } from "preact/hooks";
import { type CrossingMarks, type VolumeData, drawnRepeats, volumeChart } from "../chart_volume";
import type { MeanPoint, Repeat } from "../contract";
import type { Box, Frame, Point } from "../frame";
import type { PortionsPlan } from "../plan";
import type { Crossing, PortionsResult } from "../results";
import { words } from "../words";
import { Axes } from "./axes";
import { Marks, Swatch, repeatClass, repeatMark } from "./marks";
import { ResultWords } from "./result";
import { Sized } from "./sized";

interface Props {
  plan: PortionsPlan;
  repeats: readonly Repeat[];
  mean: readonly MeanPoint[];
  result: PortionsResult | null;
  over: boolean;
}

const MARK_LETTERS = 0.85;

function meanMark(size: number): string {
  return `M${-size},0H${size}M0,${-size}V${size}`;
}

function segment([from, to]: readonly [Point, Point]): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

function CrossingDrawn({ marks, crossing, frame, letter }: {
  marks: CrossingMarks;
  crossing: Crossing;
  frame: Frame;
  letter: number;
}) {
  const [x, y] = marks.at;
  const [low, high] = marks.interval;
  const toRight = x < (frame.left + frame.right) / 2;
  const text = words.endPoint(crossing.end_point_cm3, crossing.u_end_point_cm3);
  return (
    <g class="crossing" font-size={1.25 * letter}>
      <rect class="band" x={low} width={Math.max(1, high - low)} y={frame.top} height={frame.bottom - frame.top} />
      <path class="fit fit-before" d={segment(marks.before)} />
      <path class="fit fit-after" d={segment(marks.after)} />
      <path class="drop" d={`M${x},${y}V${frame.bottom}`} />
      <circle cx={x} cy={y} r={0.5 * letter} />
      <text x={x + (toRight ? 0.6 : -0.6) * letter} y={frame.bottom - 0.6 * letter} text-anchor={toRight ? "start" : "end"}>
        {text}
      </text>
    </g>
  );
}

function Drawing({ data, box }: { data: VolumeData; box: Box }) {
  const chart = volumeChart(data, box);
  const { letter } = box;
  const count = chart.series.reduce((sum, series) => sum + series.points.length, 0);
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-labelledby="volume-title volume-text">
      <desc id="volume-text">{words.volumeChartText(count)}</desc>
      <Axes frame={chart.frame} letter={letter} across={words.volumeAxis} up={words.temperatureAxis} />
      {chart.crossing && data.crossing && (
        <CrossingDrawn marks={chart.crossing} crossing={data.crossing} frame={chart.frame} letter={letter} />
      )}
      {chart.series.map(({ repeat, points }) => (
        <Marks key={repeat} points={points} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
      ))}
      {/* The mean of one repeat is that repeat: nothing to show. */}
      {chart.series.length > 1 && <Marks points={chart.mean} path={meanMark(0.5 * letter)} class="series mean" />}
    </svg>
  );
}

function Legend({ repeats, mean, crossing }: { repeats: readonly Repeat[]; mean: boolean; crossing: boolean }) {
  return (
    <ul class="legend">
      {repeats.map(({ repeat }) => (
        <li key={repeat}>
          <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {words.repeatName(repeat)}
        </li>
      ))}
      {mean && (
        <li>
          <Swatch path={meanMark(7)} class="series mean" /> {words.mean}
        </li>
      )}
      {crossing && (
        <>
          <li>
            <Swatch path="M-10,0H10" class="fit fit-before" /> {words.lineBefore}
          </li>
          <li>
            <Swatch path="M-10,0H10" class="fit fit-after" /> {words.lineAfter}
          </li>
        </>
      )}
    </ul>
  );
}

export function VolumeFigure({ plan, repeats, mean, result, over }: Props) {
  const crossing = result?.straight_lines ?? null;
  // The same node is handed back while the readings stay the same: a sample a second must not redraw this.
  return useMemo(
    () => (
      <section class="figure">
        <h2 id="volume-title">{words.volumeChart}</h2>
        <Sized class="drawing" shape={0.4}>
          {(box) => <Drawing data={{ plan, repeats, mean, crossing }} box={box} />}
        </Sized>
        <Legend
          repeats={drawnRepeats(repeats)}
          mean={drawnRepeats(repeats).length > 1}
          crossing={crossing !== null}
        />
        <ResultWords result={result} repeats={repeats} over={over} />
      </section>
    ),
    [plan, repeats, mean, result, over],
  );
}
