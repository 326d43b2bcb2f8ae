// Why straight lines come out low, step by step, with this bench's own readings. Loaded when it is asked for.

import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Axes, Sized, Swatch } from "../../chart/axes";
import type { Box, Point } from "../../chart/frame";
import { temperatureOn } from "../../chart/volume";
import { fixed, keptTogether, short, signed } from "../../format";
import type { PortionsView } from "../../live/contract";
import { Explained } from "../../page/terms";
import { roundedCm3 } from "../../phrases/quantities";
import { moreLiquidText } from "../../phrases/why";
import { marked, phrase } from "../../words";
import { type Rise, type Segment, type WhyChart, type WhyData, firstAndLastRise, whyChart, whyData } from "./points";

interface WhyProps {
  view: PortionsView;
}

const STEPS = 5;
/** Differences below this are none / cm³. */
const SAME_CM3 = 0.05;

/** The text of each step; without data in words alone. */
function texts(data: WhyData | null, acid_cm3: number): string[] {
  if (data === null) return [phrase("page-why-more-words"), phrase("page-why-bend-words"), phrase("page-why-same-words")];
  const { crossing, end_point_cm3, u_end_point_cm3 } = data;
  const rises = firstAndLastRise(data, acid_cm3);
  const low_cm3 = end_point_cm3 - crossing.end_point_cm3;
  const beyond_c = Math.abs(temperatureOn(crossing.before, end_point_cm3) - temperatureOn(crossing.after, end_point_cm3));
  const last =
    low_cm3 > SAME_CM3
      ? marked("page-why-low", { endPoint: roundedCm3(end_point_cm3, u_end_point_cm3), apart: fixed(low_cm3, 1) })
      : low_cm3 < -SAME_CM3
        ? marked("page-why-high", { endPoint: roundedCm3(end_point_cm3, u_end_point_cm3), apart: fixed(-low_cm3, 1) })
        : marked("page-why-agree", { endPoint: roundedCm3(end_point_cm3, u_end_point_cm3) });
  return [
    marked("page-why-two", { crossing: roundedCm3(crossing.end_point_cm3, crossing.u_end_point_cm3) }),
    rises ? moreLiquidText(...rises) : phrase("page-why-more-words"),
    low_cm3 > SAME_CM3 ? phrase("page-why-bend", { above: fixed(beyond_c, 2) }) : phrase("page-why-bend-words"),
    phrase("page-why-same", { liquid: short(Math.round(acid_cm3 + end_point_cm3)) }),
    last,
  ];
}

/** How the two methods differ, and why their end-points do. */
export function Differ({ view }: WhyProps) {
  const { straight_lines: lines = null, heat_balance: heat = null } = view.result ?? {};
  const low = (lines?.end_point_cm3 ?? 0) < (heat?.end_point_cm3 ?? 0);
  return (
    <div class="differ">
      <h3>{phrase("page-differ-title")}</h3>
      <p><Explained text={marked("page-differ-lines")} /></p>
      <p><Explained text={marked("page-differ-heat")} /></p>
      <h3>{low ? phrase("page-why-open-low") : phrase("page-why-open")}</h3>
      <Why view={view} />
    </div>
  );
}

function Why({ view }: WhyProps) {
  const [step, setStep] = useState(1);
  const [over, setOver] = useState(false);
  const again = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The button that was pressed is gone: the keyboard stays near by.
    if (over) again.current?.focus({ preventScroll: true });
  }, [over]);
  const data = whyData(view);
  const acid_cm3 = view.plan.acid.volume_cm3;
  const told = texts(data, acid_cm3);
  if (data === null) {
    return (
      <div class="why">
        <p class="remark">{phrase("page-why-not-possible")}</p>
        {told.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
    );
  }
  if (over) {
    return (
      <button type="button" ref={again} class="plain" onClick={() => (setStep(1), setOver(false))}>
        {phrase("page-why-again")}
      </button>
    );
  }
  const go = (to: number) => setStep(Math.min(STEPS, Math.max(1, to)));
  return (
    <div class="why">
      <Steady step={step} spoken>
        {(one) => (
          <>
            <p class="why-step">{phrase("page-why-step", { step: one, of: STEPS })}</p>
            <h4>{phrase("page-why-names", { which: one - 1 })}</h4>
            <p><Explained text={keptTogether(told[one - 1] ?? "")} /></p>
          </>
        )}
      </Steady>
      <Sized class="drawing" shape={0.45}>
        {(box) => <WhyDrawing data={data} acid_cm3={acid_cm3} step={step} box={box} />}
      </Sized>
      <Steady step={step}>{(one) => <WhyLegend step={one} />}</Steady>
      <div class="answers why-go">
        <button type="button" aria-disabled={step === 1} onClick={() => go(step - 1)}>
          {phrase("page-why-back")}
        </button>
        <button type="button" class="strong" onClick={() => (step === STEPS ? setOver(true) : go(step + 1))}>
          {step === STEPS ? phrase("page-why-done") : phrase("page-why-next")}
        </button>
      </div>
      <p class="remark">{data.repeat === null ? phrase("page-why-with-mean") : phrase("page-why-with-repeat", { repeat: data.repeat })}</p>
    </div>
  );
}

/** What belongs to one step, with room for that of every other, so that nothing below moves. */
function Steady({ step, spoken = false, children }: { step: number; spoken?: boolean; children: (step: number) => ComponentChildren }) {
  const others = Array.from({ length: STEPS }, (_, index) => index + 1).filter((one) => one !== step);
  return (
    <div class="steady">
      <div class="steady-now" aria-live={spoken ? "polite" : undefined} aria-atomic={spoken ? "true" : undefined}>
        {children(step)}
      </div>
      {others.map((one) => (
        <div key={one} class="steady-room" aria-hidden="true">
          {children(one)}
        </div>
      ))}
    </div>
  );
}

// The drawing of one step. Points keep their identity from step to step, so that the browser lets them glide; with
// reduced motion it sets them down at once.

interface Props {
  data: WhyData;
  acid_cm3: number;
  step: number;
  box: Box;
}

const DOT = "M-6,0a6,6 0 1,0 12,0a6,6 0 1,0 -12,0";

/** What the marks of a step mean. */
function WhyLegend({ step }: { step: number }) {
  const moved = step >= 4;
  return (
    <ul class="legend why-legend">
      <li>
        <Swatch path={DOT} class={moved ? "why-ghost" : "why-dot"} /> {phrase("page-why-measured")}
      </li>
      {moved && (
        <li>
          <Swatch path={DOT} class="why-dot" /> {phrase("page-why-corrected")}
        </li>
      )}
      {step === 2 && (
        <li>
          <Swatch path="M-5,-9h10v18h-10z" class="why-liquid" /> {phrase("page-why-liquid")}
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

function WhyDrawing({ data, acid_cm3, step, box }: Props) {
  const chart = whyChart(data, acid_cm3, box);
  const { letter, width, height } = box;
  return (
    <svg class="why-drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={phrase("page-why-chart")}>
      <Axes frame={chart.frame} letter={letter} across={phrase("page-volume-axis")} up={phrase("page-temperature-axis")} />
      <Liquid chart={chart} rises={firstAndLastRise(data, acid_cm3)} letter={letter} name={`liquid${seen("liquid", step)}`} />
      <g class={`lines${seen("lines", step)}`}>
        <path class="fit fit-before" d={path(chart.before)} />
        <path class="fit fit-after" d={path(chart.after)} />
      </g>
      <path class={`bent${seen("bent", step)}`} d={through(chart.measured)} />
      {chart.bend && <path class={`straight${seen("straight", step)}`} d={through(chart.bend)} />}
      <Drop name={`at-crossing${seen("crossing", step)}`} at={chart.crossing} text={phrase("page-why-crossing-name")} chart={chart} letter={letter} left />
      <Drop
        name={`at-end-point${seen("endPoint", step)}`}
        at={[chart.endPoint, chart.bend?.[1][1] ?? chart.frame.top]}
        text={phrase("page-why-heat-name")}
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
          <rect x={x} y={y} width={Math.max(0, width)} height={Math.max(0, chart.frame.bottom - y)} />
          {named.includes(portion) && (
            <text x={x + width / 2} y={chart.frame.bottom - 0.5 * letter} text-anchor="middle">
              {phrase("page-why-liquid-at", { liquid: short(Math.round(liquid_cm3)) })}
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
        {phrase("page-why-change", { change: signed(change_c, 2) })}
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
