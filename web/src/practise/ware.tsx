// The glassware that a person measures with in practice, drawn to be read: a syringe that lies along its scale, or a
// measuring cylinder with what an eye level with the liquid sees of its scale.

import type { ComponentChildren } from "preact";
import { fixed } from "../format";
import type { Practice } from "../live/contract";
import { phrase, said } from "../words";
import type { Measured } from "./hands";

type Hands = Practice["hands"];

interface Shown {
  in_cm3: number;
  capacity_cm3: number;
  division_cm3: number;
}

export function Glassware({ measured, of }: { measured: Measured; of: Hands }) {
  const { ware, capacity_cm3, division_cm3 } = of.ware;
  const shown = { in_cm3: Math.max(0, measured.drawn_cm3 - measured.poured_cm3), capacity_cm3, division_cm3 };
  return (
    <Meter shown={shown} of={of}>
      {ware === "cylinder" ? <Cylinder {...shown} /> : <Syringe {...shown} />}
      {ware === "cylinder" && <p>{phrase("page-practise-lowest-point")}</p>}
    </Meter>
  );
}

/** What a screen reader reads from the scale: to its lines, as an eye does. */
function Meter({ shown: { in_cm3, capacity_cm3, division_cm3 }, of, children }: { shown: Shown; of: Hands; children: ComponentChildren }) {
  const read = fixed(Math.round(in_cm3 / division_cm3) * division_cm3, division_cm3 < 1 ? 1 : 0);
  return (
    <div
      class="ware"
      role="meter"
      aria-label={phrase("page-practise-ware", { which: of.ware.ware, reagent: said(of.alkali) })}
      aria-valuemin={0}
      aria-valuemax={capacity_cm3}
      aria-valuenow={Number(in_cm3.toFixed(1))}
      aria-valuetext={phrase("page-volume", { volume: read })}
    >
      {children}
    </div>
  );
}

/** Each tenth line is the longest and has its number, each fifth is longer than the others. */
const FIFTH = 5;
const TENTH = 10;
const lengthOf = (line: number) => (line % TENTH === 0 ? 2 : line % FIFTH === 0 ? 1 : 0);

// The syringe lies with its tip on the left; its scale counts what is in it.

const WIDE = 320;
const HIGH = 44;
const [LEFT, RIGHT] = [14, 296];
const SYRINGE_LINES = [5, 9, 13];

function Syringe({ in_cm3, capacity_cm3, division_cm3 }: Shown) {
  const x = (volume_cm3: number) => LEFT + ((RIGHT - LEFT) * volume_cm3) / capacity_cm3;
  const lines = Array.from({ length: Math.round(capacity_cm3 / division_cm3) + 1 }, (_, line) => line);
  const marks = lines.map((line) => `M${x(line * division_cm3).toFixed(2)} 8v${SYRINGE_LINES[lengthOf(line)]}`);
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true" preserveAspectRatio="xMidYMid meet">
      <path class="ware-liquid" d={`M${LEFT} 8H${x(in_cm3).toFixed(2)}V32H${LEFT}z`} />
      <path class="ware-glass" d={`M2 17h${LEFT - 2}v-9H${RIGHT + 4}M2 23h${LEFT - 2}v9H${RIGHT + 4}M${RIGHT + 4} 3v34`} />
      <path class="ware-marks" d={marks.join("")} />
      <path class="ware-plunger" d={`M${x(in_cm3).toFixed(2)} 9h5v22h-5zM${(x(in_cm3) + 5).toFixed(2)} 20H${WIDE - 4}`} />
      {lines.map((line) => line % TENTH === 0 && <text key={line} x={x(line * division_cm3)} y={42}>{Math.round(line * division_cm3)}</text>)}
    </svg>
  );
}

// The cylinder stands small on the left. Beside it is the piece of its scale around the liquid's surface, as large as it
// must be to read between two lines: the eye goes up and down with the liquid, and the lowest point of its surface is in
// the middle. The liquid climbs the wall by a part of a division, so that its edge reads too much.

const CYLINDER = { wide: 176, high: 64 };
const TALL = { left: 10, right: 24, top: 8, foot: 57 };
const EYE = { left: 42, right: 148, middle: 0.5 * CYLINDER.high };
const LINE_PX = 9;
const CLIMB_PX = 5;
const EYE_LINES = [26, 38, 50];
/** The surface, from one wall down to the lowest point and up to the other. */
const SURFACE = `q14 ${CLIMB_PX} 53 ${CLIMB_PX}q39 0 53 -${CLIMB_PX}`;

function Cylinder({ in_cm3, capacity_cm3, division_cm3 }: Shown) {
  const y = (volume_cm3: number) => EYE.middle - (LINE_PX * (volume_cm3 - in_cm3)) / division_cm3;
  const level = TALL.foot - ((TALL.foot - TALL.top - 5) * in_cm3) / capacity_cm3;
  const last = Math.round(capacity_cm3 / division_cm3);
  const around = Math.round(in_cm3 / division_cm3);
  const reach = Math.ceil(EYE.middle / LINE_PX);
  const lines = Array.from({ length: 2 * reach + 1 }, (_, index) => around - reach + index).filter((line) => line >= 0 && line <= last);
  const marks = lines.map((line) => `M${EYE.right} ${y(line * division_cm3).toFixed(2)}h-${EYE_LINES[lengthOf(line)]}`);
  const bottom = Math.min(y(0), CYLINDER.high);
  const rim = EYE.middle - CLIMB_PX;
  return (
    <svg viewBox={`0 0 ${CYLINDER.wide} ${CYLINDER.high}`} aria-hidden="true" preserveAspectRatio="xMidYMid meet">
      <path class="ware-liquid" d={`M${TALL.left} ${level.toFixed(2)}H${TALL.right}V${TALL.foot}H${TALL.left}z`} />
      <path class="ware-glass" d={`M${TALL.left - 4} ${TALL.top - 5}l4 5V${TALL.foot}H${TALL.right}V${TALL.top}l2-3M5 ${TALL.foot + 4}H29`} />
      <path class="ware-sight" d={`M${TALL.right + 2} ${level.toFixed(2)}L${EYE.left - 3} ${EYE.middle}`} />
      {in_cm3 > 0 && <path class="ware-liquid" d={`M${EYE.left} ${rim}${SURFACE}V${bottom.toFixed(2)}H${EYE.left}z`} />}
      {in_cm3 > 0 && <path class="ware-surface" d={`M${EYE.left} ${rim}${SURFACE}`} />}
      <path class="ware-glass" d={`M${EYE.left} 0V${bottom.toFixed(2)}M${EYE.right} 0V${bottom.toFixed(2)}${bottom < CYLINDER.high ? `H${EYE.left}` : ""}`} />
      <path class="ware-marks" d={marks.join("")} />
      {lines.map(
        (line) =>
          line % FIFTH === 0 && (
            <text key={line} x={EYE.right + 14} y={y(line * division_cm3) + 4}>
              {fixed(line * division_cm3, (FIFTH * division_cm3) % 1 === 0 ? 0 : 1)}
            </text>
          ),
      )}
    </svg>
  );
}
