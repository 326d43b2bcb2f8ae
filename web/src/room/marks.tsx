// Shapes beside the words: how a bench stands, and how much it needs somebody.

import type { Need, Standing } from "./feed";

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
