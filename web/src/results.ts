// What the station works out, by straight lines and by heat balance. A method that refuses is null, its reason beside it.

export type Interval = readonly [number, number];

export interface Refused {
  straight_lines?: string;
  heat_balance?: string;
}

/** What is said of one repeat beside its numbers. */
export interface RepeatRemarks {
  repeat: number;
  steps?: Steps;
  straight_lines?: unknown;
  heat_balance?: unknown;
  refused?: Refused;
  notes?: readonly string[];
}

/** One line of a calculation: in words, in symbols, with the numbers put in, and its result. */
export interface WorkedStep {
  text: string;
  formula: string;
  working: string;
  value: number;
  u: number;
  unit: string;
}

export interface Steps {
  straight_lines?: readonly WorkedStep[];
  heat_balance?: readonly WorkedStep[];
}

/** The value that books give. */
export interface Accepted {
  enthalpy_kj_mol: number;
  u: number;
  text: string;
  source: string;
}

/** Own moments against the station's: what the difference cost. */
export interface Judgement {
  repeats: readonly {
    repeat: number;
    portions: readonly {
      portion: number;
      own_s: number | null;
      own_c: number | null;
      station_s: number | null;
      station_c: number | null;
    }[];
  }[];
  own: { minutes: number; end_point_cm3: number | null };
  station: { minutes: number; end_point_cm3: number | null };
  waited_too_long_s: number;
  too_early: number;
  words: readonly string[];
}

interface Found {
  seq: number;
  steps?: Steps;
  accepted?: Accepted | null;
  judgement?: Judgement | null;
  refused: Refused;
  notes?: readonly string[];
}

/** T = intercept_c + slope_c_cm3 · V, fitted to the rows of `mean` named in `points`. */
export interface Line {
  slope_c_cm3: number;
  intercept_c: number;
  points: number[];
}

export interface EndPoint {
  end_point_cm3: number;
  u_end_point_cm3: number;
  interval_95_cm3: Interval;
}

/** The graph-paper method on the mean readings; its interval knows their scatter only. */
export interface Crossing extends EndPoint {
  temperature_c: number;
  /** How far off lines through raw readings are expected to be / cm³; negative: too low. */
  predicted_bias_cm3?: number | null;
  before: Line;
  after: Line;
}

/** The fit of the whole trace. */
export interface HeatBalance extends EndPoint {
  describes_trace: boolean;
  enthalpy_kj_mol?: number | null;
  u_enthalpy_kj_mol?: number | null;
  acid_mol_dm3?: number | null;
  u_acid_mol_dm3?: number | null;
}

/** Readings as they would be if every portion warmed the same heat capacity and nothing were lost. */
export interface Corrected {
  volume_cm3: readonly number[];
  temperature_c: readonly number[];
}

export interface PortionsResult extends Found {
  straight_lines: Crossing | null;
  heat_balance?: HeatBalance | null;
  repeats?: readonly RepeatRemarks[];
}

/** Change of temperature at the moment of mixing, heat given out (negative: taken in), enthalpy per mole. */
export interface Change {
  change_c: number;
  u_change_c: number;
  interval_95_c: Interval;
  heat_j: number;
  u_heat_j: number;
  /** Null where the amount that reacts is not known. */
  enthalpy_kj_mol: number | null;
  u_enthalpy_kj_mol: number | null;
}

/** A straight line over time: T = at_mixing_c + slope_c_s · (t − moment of mixing), through the samples from
 * `begin_s` to `end_s`; times since the repeat's start. */
export interface Stretch {
  begin_s: number;
  end_s: number;
  slope_c_s: number;
  at_mixing_c: number;
}

/** One repeat's lines, extended to the moment of mixing. */
export interface Extended extends Change {
  mixed_at_s: number;
  /** How far off this cup's lines are expected to be, by the heat balance / °C. */
  predicted_bias_c?: number | null;
  before: Stretch;
  after: Stretch;
  enthalpy_of: string | null;
}

export interface HeatOnce extends Change {
  describes_trace: boolean;
  enthalpy_of: string | null;
}

export interface OnceRepeat extends RepeatRemarks {
  straight_lines: Extended | null;
  heat_balance: HeatOnce | null;
}

export interface OnceResult extends Found {
  /** Means over the repeats. */
  straight_lines: Change | null;
  heat_balance: Change | null;
  repeats: readonly OnceRepeat[];
}

export type Result = PortionsResult | OnceResult;
