// What the charts' scales need of d3-interpolate, which also blends colours, dates and CSS transforms and is an eighth of
// the page: between numbers only. And what they import of d3-format, a twentieth of the page: the labels of axes are
// written by frame.ts in the reader's language, so nothing calls it. build.mjs puts this file in the place of both.

type Between = (t: number) => number;

export function interpolateNumber(from: number, to: number): Between {
  return (t) => from * (1 - t) + to * t;
}

export function interpolateRound(from: number, to: number): Between {
  return (t) => Math.round(from * (1 - t) + to * t);
}

/** Several stretches one after the other; `t` from 0 to 1 runs over all of them. */
export function piecewise(between: (from: number, to: number) => Between, values: readonly number[]): Between {
  const stretches = values.slice(1).map((to, index) => between(values[index] ?? to, to));
  return (t) => {
    const at = Math.max(0, Math.min(stretches.length - 1, Math.floor(t * stretches.length)));
    return stretches[at]?.(t * stretches.length - at) ?? values[0] ?? Number.NaN;
  };
}

export { interpolateNumber as interpolate };

function unused(): never {
  throw new Error("frame.ts writes the labels of axes");
}

export { unused as format, unused as formatPrefix, unused as formatSpecifier };
export { unused as precisionFixed, unused as precisionPrefix, unused as precisionRound };
