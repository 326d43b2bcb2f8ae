// Temperature (up) against time (across) of one whole repeat, with every pour and every settled reading.

import { useEffect, useMemo, useState } from "preact/hooks";
import { type TraceChart, portionAtTime, traceChart } from "../chart_trace";
import { drawnRepeats } from "../chart_volume";
import type { Message, Repeat, Sample } from "../contract";
import type { Box } from "../frame";
import type { PortionsView } from "../plan";
import type { Traces } from "../traces";
import { words } from "../words";
import { Axes } from "./axes";
import { Swatch, repeatClass, repeatMark } from "./marks";
import { Reader } from "./reader";
import { Sized } from "./sized";

export interface TraceFigureProps {
  view: PortionsView;
  traces: Traces;
  take: (message: Message) => void;
}

const NONE: readonly Sample[] = [];

export function TraceFigure({ view, traces, take }: TraceFigureProps) {
  const [chosen, choose] = useState<number | null>(null);
  const repeats = drawnRepeats(view.repeats);
  const repeat = repeats.find((one) => one.repeat === chosen) ?? repeats[repeats.length - 1];
  const number = repeat?.repeat ?? null;
  useEffect(() => {
    take({ kind: "open", data: { repeat: number } });
    return () => take({ kind: "open", data: { repeat: null } });
  }, [number]);
  if (!repeat) return null;
  const trace = traces.get(repeat.repeat);
  return (
    <>
      {repeats.length > 1 && <Choice repeats={repeats} chosen={repeat.repeat} choose={choose} />}
      <Sized class="drawing" shape={0.4}>
        {(box) => <Readable repeat={repeat} samples={trace?.samples ?? NONE} whole={trace?.whole ?? false} box={box} />}
      </Sized>
      <Legend unsettled={repeat.readings.some(({ settled }) => !settled)} />
    </>
  );
}

function Choice({ repeats, chosen, choose }: { repeats: readonly Repeat[]; chosen: number; choose: (repeat: number) => void }) {
  return (
    <div class="choice" role="group" aria-label={words.seeing.whichRepeat}>
      {repeats.map(({ repeat }) => (
        <button key={repeat} type="button" class="plain" aria-pressed={repeat === chosen} onClick={() => choose(repeat)}>
          <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {words.repeatName(repeat)}
        </button>
      ))}
    </div>
  );
}

function Readable({ repeat, samples, whole, box }: { repeat: Repeat; samples: readonly Sample[]; whole: boolean; box: Box }) {
  const { portions, readings } = repeat;
  const chart = useMemo(() => traceChart({ samples, portions, readings }, box), [samples, portions, readings, box]);
  const { frame, good } = chart;
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
        const { portion, since_s } = portionAtTime(portions, time_s);
        return words.seeing.moment(time_s, temperature_c, portion, since_s);
      }}
    >
      <Drawing chart={chart} repeat={repeat} whole={whole} box={box} />
    </Reader>
  );
}

function Drawing({ chart, repeat, whole, box }: { chart: TraceChart; repeat: Repeat; whole: boolean; box: Box }) {
  const { frame, good } = chart;
  const { letter } = box;
  const size = 0.42 * letter;
  const last_s = good[good.length - 1]?.[0] ?? 0;
  const spoken = whole ? words.seeing.traceText(repeat.portions.length, last_s / 60) : words.seeing.loading;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={words.seeing.traceChart(repeat.repeat)} aria-describedby="trace-text">
      <desc id="trace-text">{spoken}</desc>
      <Axes frame={frame} letter={letter} across={words.sinceRepeatAxis} up={words.temperatureAxis} />
      <g class="pours" font-size={0.9 * letter}>
        {chart.pours.map(({ portion, x, named }) => (
          <g key={portion}>
            <path d={`M${x.toFixed(1)},${frame.top}V${frame.bottom}`} />
            {named && (
              <text x={x + 0.2 * letter} y={frame.top + 0.8 * letter}>
                {portion}
              </text>
            )}
          </g>
        ))}
      </g>
      <path class={`trace ${repeatClass(repeat.repeat)}`} d={chart.path} />
      <g class="settled-marks">
        {chart.settled.map(([x, y], index) => (
          <circle key={index} cx={x} cy={y} r={size} />
        ))}
      </g>
      <g class="unsettled-marks">
        {chart.unsettled.map(([x, y], index) => (
          <path key={index} d={cross(x, y, size)} />
        ))}
      </g>
    </svg>
  );
}

function cross(x: number, y: number, size: number): string {
  return `M${x - size},${y - size}l${2 * size},${2 * size}M${x - size},${y + size}l${2 * size},${-2 * size}`;
}

function Legend({ unsettled }: { unsettled: boolean }) {
  return (
    <ul class="legend">
      <li>
        <Swatch path="M-10,0H10" class="series" /> {words.seeing.wholeTrace}
      </li>
      <li>
        <Swatch path="M0,-10V10" class="pour-swatch" /> {words.seeing.pour}
      </li>
      <li>
        <Swatch path="M-6,0a6,6 0 1,0 12,0a6,6 0 1,0 -12,0" class="settled-swatch" /> {words.seeing.settledReading}
      </li>
      {unsettled && (
        <li>
          <Swatch path={cross(0, 0, 6)} class="unsettled-swatch" /> {words.seeing.unsettledReading}
        </li>
      )}
    </ul>
  );
}
