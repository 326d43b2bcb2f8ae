// Temperature (up) against time since the pour (across): the curve of this portion as it grows.

import { timeChart } from "../chart_time";
import type { Portion, Reading, Sample } from "../contract";
import { words } from "../words";
import { Axes } from "./axes";
import { Sized } from "./sized";

interface Props {
  samples: readonly Sample[];
  poured_s: number;
  portions: readonly Portion[] | undefined;
  readings: readonly Reading[] | undefined;
}

export function TimeFigure({ samples, poured_s, portions = [], readings = [] }: Props) {
  const portion = portions[portions.length - 1]?.portion ?? 0;
  const reading = readings.find((one) => one.portion === portion);
  const settled_c = reading?.settled ? reading.temperature_c : null;
  return (
    <section class="figure">
      <h2 id="time-title">{words.timeChart(portion)}</h2>
      <Sized class="drawing" shape={0.22}>
        {(box) => {
          const chart = timeChart(samples, poured_s, settled_c, box);
          const { frame } = chart;
          return (
            <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-labelledby="time-title">
              <Axes
                frame={frame}
                letter={box.letter}
                across={portion === 0 ? words.sinceStartAxis : words.sincePourAxis}
                up={words.temperatureAxis}
              />
              {chart.settled !== null && settled_c !== null && (
                <g class="settled" font-size={box.letter}>
                  <path d={`M${frame.left},${chart.settled}H${frame.right}`} />
                  <text x={frame.right} y={chart.settled - 0.5 * box.letter} text-anchor="end">
                    {words.settledAt(settled_c)}
                  </text>
                </g>
              )}
              <path class="trace" d={chart.path} />
              {chart.newest && <circle class="newest" cx={chart.newest[0]} cy={chart.newest[1]} r={0.35 * box.letter} />}
            </svg>
          );
        }}
      </Sized>
    </section>
  );
}
