// Line drawings of what to do at the cup, one per instruction. They say nothing that the words do not: hidden from
// assistive technology. Colours and strokes are in styles/drawings.css.

import type { ComponentChildren } from "preact";

/** An insulated cup with a rim, standing on the bench; `level` is where the liquid stands. */
function Cup({ level = 58 }: { level?: number }) {
  return (
    <>
      <path class="liquid" d={`M${29.4 + (level - 44) * 0.1} ${level}H${66.6 - (level - 44) * 0.1}L63 85H33Z`} />
      <path d="M24 42H72M28 42l4.6 45h30.8L68 42" />
    </>
  );
}

const Probe = ({ x = 40, bend = 8 }: { x?: number; bend?: number }) => (
  <path class="probe-line" d={`M${x} 74V16q0-8 ${bend}-8h${bend}`} />
);

/** A measuring cylinder tipped to the left, its lip at (58, 30). */
const Cylinder = () => (
  <g>
    <path class="liquid" d="M58.500 26.500L69 17.500L84 20L68 33.500Z" />
    <path d="M55 29.500l-2.500-3L79 4l11.500 13.500L64 40l-4-4.500" />
    <path class="thin" d="M67 16.400l2.500 3M73 11.300l2.500 3" />
  </g>
);

const Lid = ({ y = 42 }: { y?: number }) => <path class="lid" d={`M22 ${y}v-6h52v6z`} />;

const Pouring = ({ children }: { children?: ComponentChildren }) => (
  <>
    <Cup />
    {children}
    <Cylinder />
    <path class="drops moves-down" d="M54 38v5M54 50v3" />
  </>
);

const Stirring = () => (
  <>
    <Cup />
    <Lid />
    <Probe x={37} bend={-8} />
    <path class="moves-round" d="M57 78L55 6" />
    <path d="M43 20q1 7 14 7 12 0 14-7m0 0l-7 1.500M71 20l2.500 7" />
  </>
);

const Clock = () => (
  <>
    <circle cx="78" cy="22" r="14" />
    <path d="M78 13v9l6 4" />
  </>
);

const Thermometer = ({ x = 34 }: { x?: number }) => (
  <>
    <path d={`M${x - 5} 68V13a5 5 0 0 1 10 0v55a10 10 0 1 1-10 0z`} />
    <circle class="hot" cx={x} cy="76" r="5.500" />
    <path class="hot-line" d={`M${x} 74V38`} />
    <path class="thin" d={[20, 28, 36, 44, 52, 60].map((y) => `M${x + 10} ${y}h${y % 3 ? 5 : 9}`).join("")} />
  </>
);

const Eye = () => (
  <>
    <path d="M56 38q15-16 30 0q-15 16-30 0z" />
    <circle class="solid" cx="71" cy="38" r="4.500" />
  </>
);

const DRAWN = {
  /** Fill the cup and stand the probe in it. */
  fill: () => (
    <Pouring>
      <Probe x={38} />
    </Pouring>
  ),
  /** Rinse what is dipped, and wipe it. */
  wipe: () => (
    <>
      <path class="probe-line" d="M48 66V6" />
      <path d="M70 6v8H62q-6 0-6 6v5M62 6h16" />
      <path class="drops moves-down" d="M56 32v8M58 46v6M40 72l-4 6M48 76v8M56 72l4 6" />
      <path d="M14 40q10-8 20 0v24q-10 8-20 0zM20 46h8M20 53h8" />
    </>
  ),
  /** Empty the cup. */
  empty: () => (
    <>
      <g class="tilted">
        <Cup level={66} />
      </g>
      <path class="drops moves-down" d="M18 60v7M14 74v7M20 84v6" />
      <path class="thin" d="M4 92h34" />
    </>
  ),
  dip: () => (
    <>
      <path class="liquid" d="M27 56h42v24q0 6-6 6H33q-6 0-6-6z" />
      <path d="M39 20h18M41 20v12q0 5-7 9-7 4-7 12v27q0 7 7 7h28q7 0 7-7V53q0-8-7-12-7-4-7-9V20" />
      <path class="probe-line" d="M48 76V6" />
    </>
  ),
  pour: () => <Pouring />,
  stir: Stirring,
  wait: () => (
    <>
      <Cup />
      <Lid />
      <Probe x={48} />
      <Clock />
    </>
  ),
  rinse: () => (
    <>
      <g class="tilted">
        <Cup level={66} />
      </g>
      <path d="M70 6v8H56q-6 0-6 6v5M62 6h16M45 25h10" />
      <path class="drops" d="M50 32v22" />
      <path class="drops moves-down" d="M20 62v6M14 74v7M22 82v5M78 64v6M83 76v6" />
    </>
  ),
  /** A weighed solid slides out of its boat. */
  tip: () => (
    <>
      <Cup />
      <Probe x={38} />
      <path d="M56 30L88 12l2 5-30 19z" />
      <path class="dots" d="M62 27h.1M67 24h.1M72 21h.1M77 18h.1M55 40h.1M53 47h.1M56 54h.1" />
    </>
  ),
  lid: () => (
    <>
      <Cup />
      <Lid y={22} />
      <path d="M48 24v11m0 0l-6-6m6 6l6-6" />
    </>
  ),
  read: () => (
    <>
      <Thermometer />
      <Eye />
      <path class="thin" d="M50 38h-2" />
    </>
  ),
  type: () => (
    <>
      <Thermometer x={24} />
      <rect x="50" y="16" width="38" height="64" rx="6" />
      <path d="M57 26h24v9H57z" />
      <path class="dots" d="M58 46h.1M69 46h.1M80 46h.1M58 57h.1M69 57h.1M80 57h.1M58 68h.1M69 68h.1M80 68h.1" />
    </>
  ),
  sketch: () => (
    <>
      <path d="M12 10v74h74" />
      <path class="hot-line" d="M18 74q20-6 30-34t34-6" />
      <path class="thin" d="M82 34l8-12-6-4-8 12-1 6z" />
    </>
  ),
  pause: () => (
    <>
      <circle cx="48" cy="48" r="38" />
      <path class="bars" d="M38 34v28M58 34v28" />
    </>
  ),
  done: () => (
    <>
      <path d="M24 84h48M30 84l4-42h28l4 42M32 42h32" />
      <circle class="badge" cx="68" cy="28" r="20" />
      <path d="M58 28l7 8 13-15" />
    </>
  ),
  probe_lost: () => (
    <>
      <path d="M4 48h16M20 36v24h10q12 0 12-12T30 36zM42 42h7M42 54h7" />
      <path d="M92 48H78M78 36v24H66q-6 0-6-6V42q0-6 6-6z" />
      <path class="drops" d="M52 20l-2 8M44 22l4 6M60 22l-6 6M52 76l-2-8M44 74l4-6M60 74l-6-6" />
    </>
  ),
} satisfies Record<string, () => ComponentChildren>;

export type Drawn = keyof typeof DRAWN;

/** Which drawing belongs to an instruction. */
const OF_CODE: Record<string, Drawn> = {
  begin: "fill",
  thermometer: "read",
  alkali: "dip",
  set_up_sketch: "sketch",
  set_up_alkali: "dip",
  set_up_alkali_typed: "type",
  set_up_probe: "wipe",
  set_up_empty: "empty",
  set_up_wash: "rinse",
  refill: "fill",
  start: "stir",
  pour: "pour",
  mix: "pour",
  tip: "tip",
  own_tip: "tip",
  clock_before: "type",
  clock_after: "type",
  settle: "wait",
  after: "stir",
  rinse: "rinse",
  paused: "pause",
  done: "done",
  probe_lost: "probe_lost",
  type_start: "type",
  type_reading: "type",
  own_start: "read",
  own_pour: "pour",
  own_reading_now: "read",
};

export const drawnFor = (code: string): Drawn => OF_CODE[code] ?? "wait";

export function Drawing({ of }: { of: Drawn }) {
  const Inside = DRAWN[of];
  return (
    <svg class={`drawn drawn-${of}`} viewBox="0 0 96 96" aria-hidden="true" focusable="false">
      <Inside />
    </svg>
  );
}
