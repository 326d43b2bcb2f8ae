// The curve that a plan promises, in the frame of the bench's own charts.

import { type Box, type Frame, type Point, frame, padded } from "../frame";
import { through } from "../path";
import type { OncePromise, PortionsPromise } from "../planning";
import { words } from "../words";
import { planWords } from "../words/plan_topic";
import { Axes } from "./axes";
import { Marks, repeatClass, repeatMark } from "./marks";
import { Sized } from "./sized";

const LEAST_SPAN_C = 4;
const MARK_LETTERS = 0.85;

interface DrawnProps {
  laid: Frame;
  box: Box;
  points: readonly Point[];
  across: string;
  text: string;
  /** A moment or volume to mark, with its words. */
  marked: readonly [at: number, text: string];
  marks: boolean;
}

function Drawn({ laid, box, points, across, text, marked: [at, name], marks }: DrawnProps) {
  const { letter } = box;
  const x = laid.x(at);
  const toRight = x < (laid.left + laid.right) / 2;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={planWords().curve} aria-describedby="curve-text">
      <desc id="curve-text">{text}</desc>
      <Axes frame={laid} letter={letter} across={across} up={words.temperatureAxis} />
      <g class="crossing" font-size={1.25 * letter}>
        <path class="drop" d={`M${x.toFixed(1)},${laid.top}V${laid.bottom}`} />
        <text x={x + (toRight ? 0.6 : -0.6) * letter} y={laid.bottom - 0.6 * letter} text-anchor={toRight ? "start" : "end"}>
          {name}
        </text>
      </g>
      <path class="trace" d={through(points)} />
      {marks && <Marks points={points} path={repeatMark(1, MARK_LETTERS * letter)} class={repeatClass(1)} />}
    </svg>
  );
}

export function PortionsCurve({ promise }: { promise: PortionsPromise }) {
  const curve = promise.curve ?? [];
  const most_cm3 = Math.max(promise.end_point_cm3, ...curve.map(({ volume_cm3 }) => volume_cm3));
  return (
    <Sized class="drawing" shape={0.45}>
      {(box) => {
        const laid = frame([0, most_cm3], padded(curve.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C), box);
        return (
          <Drawn
            laid={laid}
            box={box}
            points={curve.map(({ volume_cm3, temperature_c }): Point => [laid.x(volume_cm3), laid.y(temperature_c)])}
            across={words.volumeAxis}
            text={planWords().curveOf(curve.length)}
            marked={[promise.end_point_cm3, planWords().expectedEndPoint(promise.end_point_cm3)]}
            marks
          />
        );
      }}
    </Sized>
  );
}

export function OnceCurve({ promise, mixed_s }: { promise: OncePromise; mixed_s: number }) {
  const curve = promise.curve ?? [];
  const last_s = curve[curve.length - 1]?.time_s ?? 0;
  return (
    <Sized class="drawing" shape={0.45}>
      {(box) => {
        const laid = frame([0, Math.max(last_s, mixed_s)], padded(curve.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C), box);
        return (
          <Drawn
            laid={laid}
            box={box}
            points={curve.map(({ time_s, temperature_c }): Point => [laid.x(time_s), laid.y(temperature_c)])}
            across={words.sinceRepeatAxis}
            text={planWords().onceCurveOf(planWords().celsius(promise.change_c ?? 0))}
            marked={[mixed_s, planWords().mixed]}
            marks={false}
          />
        );
      }}
    </Sized>
  );
}
