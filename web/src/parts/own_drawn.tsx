// The students' own two lines, as they stand in a chart.

import type { PlacedLine } from "../contract";
import type { Frame, Point } from "../frame";

/** A line from edge to edge of the frame. */
function across({ slope_c_cm3, intercept_c }: PlacedLine, { x, y }: Frame): readonly [Point, Point] {
  const [low_cm3, high_cm3] = x.domain() as [number, number];
  const at = (volume_cm3: number): Point => [x(volume_cm3), y(intercept_c + slope_c_cm3 * volume_cm3)];
  return [at(low_cm3), at(high_cm3)];
}

function path([from, to]: readonly [Point, Point]): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

interface Props {
  before: PlacedLine;
  after: PlacedLine;
  frame: Frame;
  /** Of the clip path: one page may hold two charts. */
  id: string;
}

export function OwnDrawn({ before, after, frame, id }: Props) {
  const { left, right, top, bottom } = frame;
  return (
    <g class="own-drawn" clip-path={`url(#${id})`}>
      <clipPath id={id}>
        <rect x={left} y={top} width={Math.max(0, right - left)} height={Math.max(0, bottom - top)} />
      </clipPath>
      <path class="own own-before" d={path(across(before, frame))} />
      <path class="own own-after" d={path(across(after, frame))} />
    </g>
  );
}
