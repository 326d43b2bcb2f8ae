// A long trace for a narrow screen: at most the lowest and the highest sample of each column of pixels. What a
// person sees is the same curve; what the browser draws is bounded by the width, not by the length of the lesson.

import type { Sample } from "../live/contract";

/** A sample with a temperature: time / s, temperature / °C. */
export type Good = readonly [number, number];

/** Samples with a temperature. */
export function goodOnes(samples: readonly Sample[]): Good[] {
  return samples.filter((sample): sample is Good => sample[1] !== null);
}

/** The lowest and the highest sample of each `column_s` seconds, in order of time; a bad sample stays, as a gap.
 * Few samples a column come back as they are. */
export function thinned(samples: readonly Sample[], column_s: number): readonly Sample[] {
  const first = samples[0];
  const last = samples[samples.length - 1];
  if (!first || !last || samples.length <= (2 * (last[0] - first[0])) / column_s) return samples;
  const kept: Sample[] = [];
  let column = Number.NaN;
  let low: Good | null = null;
  let high: Good | null = null;
  const flush = () => {
    if (low && high) kept.push(...(low === high ? [low] : low[0] < high[0] ? [low, high] : [high, low]));
    low = high = null;
  };
  for (const sample of samples) {
    const own = Math.floor(sample[0] / column_s);
    if (own !== column || sample[1] === null) flush();
    column = own;
    if (sample[1] === null) {
      kept.push(sample);
      continue;
    }
    const good = sample as Good;
    if (low === null || good[1] < (low as Good)[1]) low = good;
    if (high === null || good[1] > (high as Good)[1]) high = good;
  }
  flush();
  return kept;
}
