// The preparation of a class as the station gives it.

import type { Label } from "./planning";

export interface Section {
  head: string;
  steps: readonly string[];
  lines: readonly string[];
  labels: readonly (Label & { of: string })[];
}

export interface Lesson {
  minutes: number;
  head: string;
  parts: readonly { part: string; minutes: number }[];
  left: string;
}

/** `concentration_mol_dm3` is null where the class is to find it. */
export interface Bottle {
  name: string;
  formula: string;
  concentration_mol_dm3: number | null;
  label: Label;
  count: number;
}

export interface Sheet {
  practical: string;
  benches: number;
  first: string;
  sections: readonly Section[];
  lessons: readonly Lesson[];
  bottles: readonly Bottle[];
  /** Solutions that are made from a bottle, by name. */
  from_stock: readonly string[];
}
