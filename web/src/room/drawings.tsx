// The board's small drawings: shapes beside the words, and the curve so far.

import { through } from "../chart/frame";
import type { Tile } from "./contract";
import type { Need, Standing } from "./feed";

// How a bench stands, and how much it needs somebody.

const STANDING: Readonly<Record<Standing, string>> = {
  // a ring: nothing in it yet · a filled drop: at work · two bars · bars in a ring: held · a tick
  idle: "M12 4a8 8 0 1 0 .01 0z",
  works: "M12 3c4 5 6 8 6 11a6 6 0 0 1-12 0c0-3 2-6 6-11z",
  paused: "M8 5v14M16 5v14",
  held: "M12 2a10 10 0 1 0 .01 0zM9.5 8v8M14.5 8v8",
  done: "M4 13l5 6L20 5",
};

export function StateMark({ standing }: { standing: Standing }) {
  return (
    <svg class={`state-mark mark-${standing}`} viewBox="0 0 24 24" aria-hidden="true">
      <path d={STANDING[standing]} />
    </svg>
  );
}

const NEEDS: Readonly<Record<2 | 3, string>> = { 2: "M12 3a9 9 0 1 0 .01 0zM12 7v6M12 16v1", 3: "M12 3L22 21H2zM12 9v6M12 17v1" };

export function Mark({ need }: { need: Need }) {
  if (need < 2) return null;
  return (
    <svg class="tile-mark" viewBox="0 0 24 24" aria-hidden="true">
      <path d={NEEDS[need as 2 | 3]} />
    </svg>
  );
}

// The curve so far, small, over the class's: whose is odd is seen by its not lying on the other.

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
