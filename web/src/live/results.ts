// What the station works out, by straight lines and by heat balance. A method that refuses is null, its reason beside it.

import type { BenchView, Crossing, OnceResult, PortionsRepeat } from "./contract.generated";

export type {
  Accepted,
  Arm as Line,
  CorrectedCurve as Corrected,
  Crossing,
  Extended,
  HeatBalance,
  HeatOnce,
  Judgement,
  OnceRepeat,
  OnceResult,
  PortionsResult,
  Steps,
  Stretch,
  WorkedStep,
} from "./contract.generated";

export type Interval = Crossing["interval_95_cm3"];
export type Result = NonNullable<BenchView["result"]>;
/** What is said of one repeat beside its numbers. */
export type RepeatRemarks = Omit<PortionsRepeat, "straight_lines" | "heat_balance"> & {
  straight_lines: unknown;
  heat_balance: unknown;
};
export type EndPoint = Pick<Crossing, "end_point_cm3" | "u_end_point_cm3" | "interval_95_cm3">;
/** Change of temperature at the moment of mixing, heat given out (negative: taken in), enthalpy per mole. */
export type Change = NonNullable<OnceResult["straight_lines"]>;
