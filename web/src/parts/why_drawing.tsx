// The drawing of one step. Points keep their identity from step to step, so that the browser lets them glide; with
// reduced motion it sets them down at once.

import { type Segment, type WhyChart, whyChart } from "../chart_why";
import type { Box, Point } from "../frame";
import { type Rise, type WhyData, firstAndLastRise } from "../why";
import { words } from "../words";
import { Axes } from "./axes";
import { Swatch } from "./marks";

interface Props {
  data: WhyData;
  acid_cm3: number;
  step: number;
  box: Box;
}

const DOT = "M-6,0a6,6 0 1,0 12,0a6,6 0 1,0 -12,0";

/** What the marks of a step mean. */
export function WhyLegend({ step }: { step: number }) {
  const moved = step >= 4;
  return (
    <ul class="legend why-legend">
      <li>
        <Swatch path={DOT} class={moved ? "why-ghost" : "why-dot"} /> {words.why.measured}
      </li>
      {moved && (
        <li>
          <Swatch path={DOT} class="why-dot" /> {words.why.corrected}
        </li>
      )}
      {step === 2 && (
        <li>
          <Swatch path="M-5,-9h10v18h-10z" class="why-liquid" /> {words.why.liquid}
        </li>
      )}
    </ul>
  );
}

const px = (value: number) => value.toFixed(1);
const path = ([from, to]: Segment) => `M${px(from[0])},${px(from[1])}L${px(to[0])},${px(to[1])}`;
const through = (points: readonly Point[]) => `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join("L")}`;

/** What a step shows; a part that it does not show stays, unseen, so that the next step fades it in. */
const SHOWN = { lines: [1, 3, 5], liquid: [2], bent: [3], straight: [4, 5], endPoint: [3, 5], crossing: [1, 3, 5] };

function seen(part: keyof typeof SHOWN, step: number): string {
  return SHOWN[part].includes(step) ? "" : " unshown";
}

export function WhyDrawing({ data, acid_cm3, step, box }: Props) {
  const chart = whyChart(data, acid_cm3, box);
  const { letter, width, height } = box;
  return (
    <svg class="why-drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={words.why.chart}>
      <Axes frame={chart.frame} letter={letter} across={words.volumeAxis} up={words.temperatureAxis} />
      <Liquid chart={chart} rises={firstAndLastRise(data, acid_cm3)} letter={letter} name={`liquid${seen("liquid", step)}`} />
      <g class={`lines${seen("lines", step)}`}>
        <path class="fit fit-before" d={path(chart.before)} />
        <path class="fit fit-after" d={path(chart.after)} />
      </g>
      <path class={`bent${seen("bent", step)}`} d={through(chart.measured)} />
      {chart.bend && <path class={`straight${seen("straight", step)}`} d={through(chart.bend)} />}
      <Drop name={`at-crossing${seen("crossing", step)}`} at={chart.crossing} text={words.why.crossingName} chart={chart} letter={letter} left />
      <Drop
        name={`at-end-point${seen("endPoint", step)}`}
        at={[chart.endPoint, chart.bend?.[1][1] ?? chart.frame.top]}
        text={words.why.heatName}
        chart={chart}
        letter={letter}
      />
      <Dots chart={chart} moved={step >= 4} size={0.36 * letter} />
    </svg>
  );
}

function Dots({ chart, moved, size }: { chart: WhyChart; moved: boolean; size: number }) {
  return (
    <>
      <g class={`ghosts${moved ? "" : " unshown"}`}>
        {chart.measured.map(([x, y], index) => (
          <circle key={index} cx={x} cy={y} r={size} />
        ))}
      </g>
      <g class={moved ? "dots dots-moved" : "dots"}>
        {chart.measured.map((from, index) => {
          const [x, y] = moved ? (chart.corrected[index] ?? from) : from;
          return <circle key={index} r={size} style={{ transform: `translate(${px(x)}px, ${px(y)}px)` }} />;
        })}
      </g>
    </>
  );
}

function Liquid({ chart, rises, letter, name }: { chart: WhyChart; rises: readonly [Rise, Rise] | null; letter: number; name: string }) {
  const named = rises?.map(({ portion }) => portion) ?? [];
  return (
    <g class={name} font-size={letter}>
      {chart.liquid.map(({ portion, x, width, y, liquid_cm3 }) => (
        <g key={portion} class={named.includes(portion) ? "column column-named" : "column"}>
          <rect x={x} y={y} width={width} height={chart.frame.bottom - y} />
          {named.includes(portion) && (
            <text x={x + width / 2} y={chart.frame.bottom - 0.5 * letter} text-anchor="middle">
              {words.why.liquidAt(liquid_cm3)}
            </text>
          )}
        </g>
      ))}
      {rises?.map(({ portion, change_c }) => (
        <RiseDrawn key={portion} chart={chart} portion={portion} change_c={change_c} letter={letter} />
      ))}
    </g>
  );
}

/** What one portion did to the temperature: a step from the reading before it to its own. */
function RiseDrawn({ chart, portion, change_c, letter }: { chart: WhyChart; portion: number; change_c: number; letter: number }) {
  const [from, to] = [chart.measured[portion - 1], chart.measured[portion]];
  if (!from || !to) return null;
  // Below it no other reading is in the way; but at the foot stand the names of the columns.
  const below = Math.max(from[1], to[1]) + 1.2 * letter;
  const beside = (from[1] + to[1]) / 2 + 0.35 * letter;
  return (
    <g class="rise">
      <path d={`M${px(from[0])},${px(from[1])}H${px(to[0])}V${px(to[1])}`} />
      <text x={to[0] + 0.4 * letter} y={below < chart.frame.bottom - 2 * letter ? below : beside}>
        {words.why.change(change_c)}
      </text>
    </g>
  );
}

interface DropProps {
  name: string;
  at: Point;
  text: string;
  chart: WhyChart;
  letter: number;
  left?: boolean;
}

/** Letters that a name takes beside its line. */
const NAME_LETTERS = 7;

function Drop({ name, at: [x, y], text, chart, letter, left = false }: DropProps) {
  const { bottom, right } = chart.frame;
  // Without room to its right a name goes to the left, one row above the other's.
  const tight = !left && right - x < NAME_LETTERS * letter;
  return (
    <g class={`why-drop ${name}`} font-size={letter}>
      <path d={`M${px(x)},${px(y)}V${bottom}`} />
      <circle cx={x} cy={y} r={0.5 * letter} />
      <text
        x={x + (left || tight ? -0.5 : 0.5) * letter}
        y={bottom - (tight ? 2 : 0.6) * letter}
        text-anchor={left || tight ? "end" : "start"}
      >
        {text}
      </text>
    </g>
  );
}
