// The curve so far, small, over the class's: whose is odd is seen by its not lying on the other.

import { through } from "../chart/frame";
import type { Tile } from "./contract";

const [WIDTH, HEIGHT, AIR] = [120, 36, 3];

interface Props {
  tile: Tile;
  /** The class's curve as text: pairs of volume and change since the start, from `usualCurve`. */
  usual: string;
}

export function Sparkline({ tile, usual }: Props) {
  const [start] = tile.curve;
  const own = start ? tile.curve.map(([x, c]) => [x, c - start[1]] as const) : [];
  const others = tile.curve_to === null ? [] : (JSON.parse(usual) as [number, number][]);
  const all = [...own, ...others];
  const changes = all.map(([, c]) => c);
  const [low, high] = [Math.min(0, ...changes), Math.max(0.5, ...changes)];
  const to = tile.curve_to ?? Math.max(1, ...own.map(([x]) => x));
  const at = ([x, c]: readonly [number, number]) =>
    [AIR + ((WIDTH - 2 * AIR) * x) / to, HEIGHT - AIR - ((HEIGHT - 2 * AIR) * (c - low)) / (high - low)] as const;
  const last = own[own.length - 1];
  return (
    <svg class="spark" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      {others.length > 1 && <path class="spark-usual" d={through(others.map(at))} />}
      {own.length > 1 && <path class="spark-own" d={through(own.map(at))} />}
      {last && <path class="spark-last" d={`M${at(last).join(",")}h0.01`} />}
    </svg>
  );
}
