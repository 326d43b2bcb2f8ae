// What staff see of a kind of practical while they choose its plan.

import type { ComponentChildren } from "preact";
import type { Promised } from "../staff/contract";
import type { ChoicesProps } from "../staff/plan/fields";
import type { Values } from "../staff/plan/form";

export interface PromiseProps<Of extends Promised = Promised> {
  promise: Of;
  plan: Values;
  /** Ask for the comparison with other plans, where the kind has one. */
  compare: () => Promise<boolean>;
}

export interface PlanForm<Of extends Promised = Promised> {
  Ingredients(props: ChoicesProps): ComponentChildren;
  /** How a repeat goes. */
  Timing(props: ChoicesProps): ComponentChildren;
  Promised(props: PromiseProps<Of>): ComponentChildren;
}
