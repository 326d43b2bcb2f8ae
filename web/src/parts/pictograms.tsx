// The hazard pictograms that a school's reagents need: a black symbol on white in a red-edged square set on a point,
// as Annex V of Regulation (EC) No 1272/2008 (CLP) and the UN's GHS, annex 1, describe them. Drawn by hand here.

import type { ComponentChildren } from "preact";
import { words } from "../words";

const FLAME =
  "M41 70c-11-4-14-14-8-24 1 4 4 6 7 6-3-11 2-20 12-28 0 8 2 12 6 16 2-2 3-5 2-8 9 8 13 18 9 26-2 5-6 9-10 12 2-4 3-9 1-13-2 3-4 4-6 4 1-5-1-10-5-14 0 7-6 9-7 15-1 4 0 6 2 8z";
const FLAME_ON_RING =
  "M38 52c-5-8-1-16 6-22-1 5 1 8 3 10 0-8 3-13 9-18-1 7 3 11 5 15 1-1 2-3 1-6 5 7 5 15 0 21-3-5-8-8-12-8s-9 3-12 8z";
const STAR = "M50 44l3 8 8-4-4 8 8 3-8 3 4 8-8-4-3 8-3-8-8 4 4-8-8-3 8-3-4-8 8 4z";

const SYMBOLS: Record<string, () => ComponentChildren> = {
  GHS02: () => (
    <>
      <path d={FLAME} />
      <path class="symbol-line" d="M33 75h34" />
    </>
  ),
  GHS03: () => (
    <>
      <path d={FLAME_ON_RING} />
      <path class="symbol-line" d="M50 49a10.500 10.500 0 1 0 .1 0zM37 76h26" />
    </>
  ),
  GHS05: () => (
    <>
      <path class="symbol-tube" d="M50 17L37 31M71 32L60 42" />
      <path class="symbol-inside" d="M48 21L39 30.500M69 35.500L62 41.500" />
      <path d="M35 36q3 5 0 6-3-1 0-6zM34 45q3 5 0 6-3-1 0-6zM58 46q3 5 0 6-3-1 0-6z" />
      <path d="M20 56h10l2 4 2-2 3 3 2-5h9v7H20z" />
      <path d="M50 59q3-3 6-1l2 4 3-5q8-3 14 1l-2 8q-4 4-9 4h-9q-4 0-3-3h7v-2q-8 1-9-2z" />
      <path class="symbol-thin" d="M31 53l-3-4M41 53l2-5M55 55l-2-4" />
    </>
  ),
  GHS06: () => (
    <>
      <path d="M50 22c11 0 17 8 17 16 0 6-3 9-6 11v8H39v-8c-3-2-6-5-6-11 0-8 6-16 17-16z" />
      <path class="symbol-hole" d="M38 41a5 4.500 0 1 0 10 0 5 4.500 0 1 0-10 0zM52 41a5 4.500 0 1 0 10 0 5 4.500 0 1 0-10 0zM50 46l-2.500 5h5z" />
      <path class="symbol-gap" d="M45 53v4M50 53v4M55 53v4" />
      <path class="symbol-line" d="M31 60l35 14M69 60L34 74" />
      <path d="M26 60a3 3 0 1 1 4-3 3 3 0 1 1 0 6zM74 60a3 3 0 1 0-4-3 3 3 0 1 0 0 6zM34 78a3 3 0 1 1-2-5 3 3 0 1 1 5 2zM66 78a3 3 0 1 0 2-5 3 3 0 1 0-5 2z" />
    </>
  ),
  GHS07: () => (
    <>
      <path d="M50 21c5 0 8 3.500 7.500 8.500L54.500 57c-.4 4-2 5.500-4.500 5.500s-4.100-1.500-4.500-5.500l-3-27.500C42 24.500 45 21 50 21z" />
      <circle cx="50" cy="72" r="5.800" />
    </>
  ),
  GHS08: () => (
    <>
      <path d="M50 17c5 0 8 4 8 9 0 4-2 7-3 9v3c9 3 15 8 16 33H29c1-25 7-30 16-33v-3c-1-2-3-5-3-9 0-5 3-9 8-9z" />
      <path class="symbol-hole" d={STAR} />
    </>
  ),
  GHS09: () => (
    <>
      <path class="symbol-thin" d="M22 63h22q6 4 12 2M26 69h14" />
      <path d="M38 62V47l-8-9 1-1 7 7V27l1.500-3 1.500 3v13l7-8 1.500 1.500L41 45v17z" />
      <path d="M48 60q10-9 21-2l7-6-1 8 1 6-7-3q-11 5-21-3zM56 62" />
      <path class="symbol-gap" d="M52.500 58l3 3m0-3l-3 3" />
    </>
  ),
};

/** One pictogram, with what it stands for as its text; nothing for a code that is not known. */
export function Pictogram({ code }: { code: string }) {
  const Symbol = SYMBOLS[code];
  if (!Symbol) return null;
  return (
    <svg class="pictogram" viewBox="0 0 100 100" role="img" aria-label={words.guide.pictograms[code] ?? code}>
      <path class="pictogram-frame" d="M50 3.500L96.500 50L50 96.500L3.500 50Z" />
      <g transform="translate(50 50) scale(1.06) translate(-50 -49.5)">
        <Symbol />
      </g>
    </svg>
  );
}
