// What there is to see below the instrument, by the kind of practical.

import { parts } from "@kinds/seeing";
import type { SeeingProps } from "../kinds/seeing";

export function Seeing(props: SeeingProps) {
  const Part = parts[props.view.plan.kind];
  return <Part {...props} />;
}
