// Axes with quantity and unit, and a quiet grid.

import type { Frame } from "../frame";

interface Props {
  frame: Frame;
  letter: number;
  across: string;
  up: string;
}

export function Axes({ frame, letter, across, up }: Props) {
  const { left, right, top, bottom } = frame;
  return (
    <g class="axes" font-size={letter}>
      {frame.yTicks.map(({ at, text }) => (
        <g key={text}>
          <line class="grid" x1={left} x2={right} y1={at} y2={at} />
          <text x={left - 0.5 * letter} y={at + 0.35 * letter} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {frame.xTicks.map(({ at, text }) => (
        <g key={text}>
          <line class="tick" x1={at} x2={at} y1={bottom} y2={bottom + 0.35 * letter} />
          <text x={at} y={bottom + 1.35 * letter} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path class="axis" d={`M${left},${top}V${bottom}H${right}`} />
      <text class="quantity" x={0} y={letter}>
        {up}
      </text>
      <text class="quantity" x={right} y={bottom + 2.7 * letter} text-anchor="end">
        {across}
      </text>
    </g>
  );
}
