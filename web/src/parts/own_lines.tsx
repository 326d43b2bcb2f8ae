// The students place two straight lines through their mean readings, read the volume at which they cross, and
// commit to it: before the station says anything.

import { useState } from "preact/hooks";
import { type OwnChart, ownChart, ownRange_c } from "../chart_own";
import type { MeanPoint } from "../contract";
import type { Box } from "../frame";
import { type OwnLines as Lines, type Met, type Side, linesFrom, movedTo, startLines, whereTheyCross } from "../own_lines";
import type { PortionsView } from "../plan";
import { words } from "../words";
import type { Acting } from "./acting";
import { Axes } from "./axes";
import { Marks, Swatch, meanMark } from "./marks";
import { OwnHandle } from "./own_handle";
import { OwnFields, OwnVolume } from "./own_volume";
import { Sized } from "./sized";

export interface OwnLinesProps {
  view: PortionsView;
  acting: Acting;
  /** Called once a reading is kept. */
  done: () => void;
}

const SIDES: readonly Side[] = ["before", "after"];
const WHICH: readonly (0 | 1)[] = [0, 1];

/** A finger needs height to set a line well. */
const LEAST_LETTERS = 25;

/** All that the portions have together / cm³: planned, or what went in where that is more. */
function most(view: PortionsView): { portion_cm3: number; count: number; most_cm3: number } {
  const { volume_cm3, count } = view.plan.portions;
  const most_cm3 = Math.max(volume_cm3 * count, ...view.mean.map((point) => point.volume_cm3));
  return { portion_cm3: volume_cm3, count: Math.max(count, Math.round(most_cm3 / volume_cm3)), most_cm3 };
}

function useLines(view: PortionsView) {
  const { portion_cm3, count, most_cm3 } = most(view);
  const range_c = ownRange_c(view.mean);
  const [lines, setLines] = useState<Lines>(() => {
    const start = startLines(portion_cm3, count, range_c);
    const { before, after } = view.own_reading ?? {};
    return before && after ? linesFrom(start, before, after) : start;
  });
  const move = (side: Side, which: 0 | 1, temperature_c: number) =>
    setLines((old) => movedTo(old, side, which, temperature_c, range_c));
  return { lines, move, range_c, most_cm3, met: whereTheyCross(lines, most_cm3) };
}

function turnsUp(mean: readonly MeanPoint[]): boolean {
  const temperatures = mean.map(({ temperature_c }) => temperature_c);
  return Math.max(...temperatures) > (temperatures[0] ?? 0);
}

export function OwnLines({ view, acting, done }: OwnLinesProps) {
  const { lines, move, range_c, most_cm3, met } = useLines(view);
  return (
    <>
      <p>{turnsUp(view.mean) ? words.ownLines.task : words.ownLines.taskFalling}</p>
      <Sized class="drawing" shape={0.5} least={LEAST_LETTERS}>
        {(box) => (
          <Drawing
            chart={ownChart(view.mean, lines, met, most_cm3, box)}
            lines={lines}
            met={met}
            box={box}
            range_c={range_c}
            move={move}
          />
        )}
      </Sized>
      <p class={met ? "own-crossing" : "own-crossing own-apart"} role="status">
        {met ? words.ownLines.crossing(met.volume_cm3) : words.ownLines.noCrossing}
      </p>
      <ul class="legend">
        <li>
          <Swatch path={meanMark(7)} class="series mean" /> {words.ownLines.legendMean}
        </li>
        <li>
          <Swatch path="M-10,0H10" class="own own-before" /> {words.ownLines.legendBefore}
        </li>
        <li>
          <Swatch path="M-10,0H10" class="own own-after" /> {words.ownLines.legendAfter}
        </li>
      </ul>
      <OwnFields lines={lines} range_c={range_c} move={move} />
      <OwnVolume view={view} acting={acting} lines={lines} met={met} most_cm3={most_cm3} done={done} />
    </>
  );
}

interface DrawingProps {
  chart: OwnChart;
  lines: Lines;
  met: Met | null;
  box: Box;
  range_c: readonly [number, number];
  move: (side: Side, which: 0 | 1, temperature_c: number) => void;
}

function Drawing({ chart, lines, met, box, range_c, move }: DrawingProps) {
  const { frame } = chart;
  const { letter } = box;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="group" aria-label={words.ownLines.chart}>
      <desc>{words.ownLines.chartText(chart.points.length)}</desc>
      <clipPath id="own-clip">
        <rect x={frame.left} y={frame.top} width={Math.max(0, frame.right - frame.left)} height={Math.max(0, frame.bottom - frame.top)} />
      </clipPath>
      <Axes frame={frame} letter={letter} across={words.volumeAxis} up={words.temperatureAxis} />
      <g clip-path="url(#own-clip)">
        {SIDES.map((side) => {
          const [[x1, y1], [x2, y2]] = chart.lines[side].drawn;
          return <line key={side} class={`own own-${side}`} x1={x1} y1={y1} x2={x2} y2={y2} />;
        })}
      </g>
      <Marks points={chart.points} path={meanMark(0.5 * letter)} class="series mean" />
      {chart.met && met && (
        <g class="own-met" font-size={1.25 * letter}>
          <path class="drop" d={`M${chart.met[0]},${chart.met[1]}V${frame.bottom}`} />
          <circle cx={chart.met[0]} cy={chart.met[1]} r={0.5 * letter} />
        </g>
      )}
      {SIDES.map((side) =>
        WHICH.map((which) => (
          <OwnHandle
            key={`${side} ${which}`}
            side={side}
            handle={lines[side][which]}
            at={chart.lines[side].handles[which]}
            frame={frame}
            letter={letter}
            range_c={range_c}
            move={(temperature_c) => move(side, which, temperature_c)}
          />
        )),
      )}
    </svg>
  );
}
