// The class's mean curve: change of temperature against alkali added, with the scatter between benches.

import { Axes } from "../parts/axes";
import { Sized } from "../parts/sized";
import { type Box, frame, padded } from "../frame";
import { through } from "../path";
import { roomWords as words } from "../words/room_topic";
import type { ClassResult } from "./contract";

type Curve = ClassResult["curve"];

export function CurveDrawing({ curve, box }: { curve: Curve; box: Box }) {
  const { letter, width, height } = box;
  const last = curve[curve.length - 1]?.volume_cm3 ?? 1;
  const ends = curve.flatMap(({ change_c, sd_c }) => [change_c - (sd_c ?? 0), change_c + (sd_c ?? 0)]);
  const laid = frame([0, last], padded(ends, 1), box);
  const at = (volume_cm3: number, change_c: number) => [laid.x(volume_cm3), laid.y(change_c)] as const;
  return (
    <svg width={width} height={height} role="img" aria-label={words().curveTitle} class="class-curve">
      <Axes frame={laid} letter={letter} across={words().curveAcross} up={words().curveUp} />
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
      <h3>{words().curveTitle}</h3>
      <Sized class="drawing" shape={0.5}>
        {(box) => <CurveDrawing curve={curve} box={box} />}
      </Sized>
      <p class="remark">{words().curveWhy(Math.max(...curve.map(({ count }) => count)))}</p>
    </figure>
  );
}
