// What staff see while they choose a plan, by the kind of practical.

import type { KindCode } from ".";
import type { PlanForm } from "./form";
import { onceForm } from "./once/form";
import { portionsForm } from "./portions/form";

export const FORMS: Readonly<Record<KindCode, PlanForm>> = { portions: portionsForm, once: onceForm };
