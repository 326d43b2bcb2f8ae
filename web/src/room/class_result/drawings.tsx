// Drawings of the class result: each bench's value as a dot, and the class's mean curve.

import { scaleLinear } from "d3-scale";
import { Axes, Sized } from "../../chart/axes";
import { type Box, frame, padded, through, tickTexts } from "../../chart/frame";
import { placesFor, rounded } from "../../format";
import { capital } from "../../phrases/quantities";
import { namedWithUnit, valueText } from "../../phrases/room";
import { phrase, said } from "../../words";
import type { ClassResult, Quantity } from "../contract";

// All benches' values of one quantity by one method as dots with their intervals, and the class's mean as a band.

interface Props {
  quantity: Quantity;
  names: Readonly<Record<string, string>>;
  odd: ReadonlySet<string>;
  /** Benches whose interval is not usable: their dot stands alone. */
  unsure: ReadonlySet<string>;
}

const ROW_LETTERS = 1.75;

/** Low to high, in which all values and ordinary intervals fit; one far wider than most is cut, and an arrow says so. */
function reach({ values, pooled }: Quantity): [number, number] {
  const middle = values.map(({ value }) => value);
  const [low, high] = [Math.min(...middle), Math.max(...middle)];
  const ordinary = values.map(({ u }) => u).sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0;
  const air = Math.max(0.08 * (high - low), 2.2 * ordinary);
  return [Math.min(low - air, pooled?.low ?? low), Math.max(high + air, pooled?.high ?? high)];
}

/** `pitch` is the height of a row in letters. */
export function PlotDrawing({ quantity, names, odd, unsure, box, pitch = ROW_LETTERS }: Props & { box: Box; pitch?: number }) {
  const { letter, width } = box;
  const rows = [...quantity.values].sort((one, other) => one.value - other.value);
  const longest = Math.max(4, ...rows.map(({ bench }) => (names[bench] ?? bench).length));
  const [left, right] = [Math.min(0.58 * longest * letter + 2 * letter, 0.4 * width), width - 2 * letter];
  const [low, high] = reach(quantity);
  const x = scaleLinear([low, high], [left, right]).nice(6);
  const across = x.ticks(Math.max(3, Math.min(8, Math.floor((right - left) / (5 * letter)))));
  const texts = tickTexts(across);
  const top = letter * 0.5;
  const bottom = top + (rows.length + (quantity.pooled ? 1 : 0)) * pitch * letter;
  const clip = (value: number) => Math.max(left, Math.min(right, x(value)));
  const { pooled } = quantity;
  const middle = bottom - 0.5 * pitch * letter;
  const arrow = 0.7 * letter;
  return (
    <svg
      width={width}
      height={bottom + 3 * letter}
      role="img"
      aria-label={phrase("page-room-plot-title", { quantity: capital(said(quantity.name)), method: phrase("page-room-methods", { which: quantity.method }) })}
      font-size={letter}
      class="class-plot"
    >
      {pooled && <rect class="band" x={clip(pooled.low)} width={clip(pooled.high) - clip(pooled.low)} y={top} height={bottom - top} />}
      {pooled && <path class="plot-mean" d={`M${clip(pooled.mean)},${top}V${bottom}`} />}
      <g class="axes">
        {across.map((value, index) => (
          <g key={value}>
            <line class="grid" x1={x(value)} x2={x(value)} y1={top} y2={bottom} />
            <text x={x(value)} y={bottom + 1.3 * letter} text-anchor="middle">
              {texts[index]}
            </text>
          </g>
        ))}
        <path class="axis" d={`M${left},${bottom}H${right}`} />
        <text class="quantity" x={right} y={bottom + 2.6 * letter} text-anchor="end">
          {namedWithUnit(quantity)}
        </text>
      </g>
      {rows.map((each, index) => {
        const y = top + (index + 0.5) * pitch * letter;
        const name = names[each.bench] ?? each.bench;
        return (
          <g key={each.bench} class={odd.has(each.bench) ? "plot-row is-odd" : "plot-row"}>
            <text x={left - 0.5 * letter} y={y + 0.35 * letter} text-anchor="end">
              {odd.has(each.bench) ? `▲ ${name}` : name}
            </text>
            {!unsure.has(each.bench) && <path class="plot-interval" d={`M${clip(each.low)},${y}H${clip(each.high)}`} />}
            {!unsure.has(each.bench) && x(each.low) < left && <path class="plot-dot" d={`M${left},${y}l${arrow},${-arrow / 2}v${arrow}z`} />}
            {!unsure.has(each.bench) && x(each.high) > right && <path class="plot-dot" d={`M${right},${y}l${-arrow},${-arrow / 2}v${arrow}z`} />}
            <circle class="plot-dot" cx={clip(each.value)} cy={y} r={0.38 * letter} />
          </g>
        );
      })}
      {pooled && (
        <g class="plot-row is-class">
          <text x={left - 0.5 * letter} y={middle + 0.35 * letter} text-anchor="end">
            {phrase("page-room-class-mean")}
          </text>
          <path class="plot-interval" d={`M${clip(pooled.low)},${middle}H${clip(pooled.high)}`} />
          <path class="plot-dot" d={`M${clip(pooled.mean)},${middle - 0.525 * letter}l${0.5 * letter},${0.525 * letter}l${-0.5 * letter},${0.525 * letter}l${-0.5 * letter},${-0.525 * letter}z`} />
        </g>
      )}
    </svg>
  );
}

/** The same in words, for who cannot see the drawing. */
function plotInWords({ quantity, names, unsure }: Omit<Props, "odd">): string[] {
  return quantity.values.map(({ bench, value, u, low, high }) => {
    const places = placesFor(u, quantity.places);
    if (unsure.has(bench)) return `${names[bench] ?? bench}: ${phrase("page-room-clash", { value: rounded(value, places) })}`;
    return phrase("page-room-plot-value", { name: names[bench] ?? bench, value: valueText(quantity, value, u), low: rounded(low, places), high: rounded(high, places) });
  });
}

export function ClassPlot(props: Props) {
  const { quantity } = props;
  return (
    <figure class="figure class-figure">
      <h3>{phrase("page-room-plot-title", { quantity: capital(said(quantity.name)), method: phrase("page-room-methods", { which: quantity.method }) })}</h3>
      <Sized class="drawing" shape={0.1} least={1}>
        {(box) => <PlotDrawing {...props} box={box} />}
      </Sized>
      <ul class="unseen">
        {plotInWords(props).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </figure>
  );
}

// The class's mean curve: change of temperature against alkali added, with the scatter between benches.

type Curve = ClassResult["curve"];

export function CurveDrawing({ curve, box }: { curve: Curve; box: Box }) {
  const { letter, width, height } = box;
  const last = curve[curve.length - 1]?.volume_cm3 ?? 1;
  const ends = curve.flatMap(({ change_c, sd_c }) => [change_c - (sd_c ?? 0), change_c + (sd_c ?? 0)]);
  const laid = frame([0, last], padded(ends, 1), box);
  const at = (volume_cm3: number, change_c: number) => [laid.x(volume_cm3), laid.y(change_c)] as const;
  return (
    <svg width={width} height={height} role="img" aria-label={phrase("page-room-curve-title")} class="class-curve">
      <Axes frame={laid} letter={letter} across={phrase("page-room-curve-across")} up={phrase("page-room-curve-up")} />
      <g class="series mean">
        <path d={through(curve.map(({ volume_cm3, change_c }) => at(volume_cm3, change_c)))} />
        {curve.map(({ portion, volume_cm3, change_c, sd_c }) => {
          const [x, y] = at(volume_cm3, change_c);
          const [, high] = at(volume_cm3, change_c + (sd_c ?? 0));
          const [, low] = at(volume_cm3, change_c - (sd_c ?? 0));
          const half = 0.3 * letter;
          return (
            <g key={portion}>
              <path d={`M${x},${low}V${high}M${x - half},${low}h${2 * half}M${x - half},${high}h${2 * half}`} />
              <circle class="plot-dot" cx={x} cy={y} r={0.28 * letter} />
            </g>
          );
        })}
      </g>
    </svg>
  );
}

export function ClassCurve({ curve }: { curve: Curve }) {
  if (curve.length < 2) return null;
  return (
    <figure class="figure class-figure">
      <h3>{phrase("page-room-curve-title")}</h3>
      <Sized class="drawing" shape={0.5}>
        {(box) => <CurveDrawing curve={curve} box={box} />}
      </Sized>
      <p class="remark">{phrase("page-room-curve-why", { count: Math.max(...curve.map(({ count }) => count)) })}</p>
    </figure>
  );
}
