// What a bottle's label says of hazards, or that there is nothing to say.

import type { Label } from "../planning";
import { planWords } from "../words/plan_topic";
import { Hazards } from "./hazards";

export function HazardLabel({ label }: { label: Label }) {
  return label.classified ? <Hazards of={label} /> : <p>{planWords().notClassified}</p>;
}
