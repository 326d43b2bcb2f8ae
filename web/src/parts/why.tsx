// Why straight lines come out low, step by step, with this bench's own readings. Loaded when it is asked for.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { temperatureOn } from "../chart_volume";
import { keptTogether } from "../format";
import type { PortionsView } from "../plan";
import { type WhyData, firstAndLastRise, whyData } from "../why";
import { words } from "../words";
import { Sized } from "./sized";
import { WhyDrawing, WhyLegend } from "./why_drawing";

export interface WhyProps {
  view: PortionsView;
}

const STEPS = 5;
/** Differences below this are none / cm³. */
const SAME_CM3 = 0.05;

/** The text of each step; without data in words alone. */
function texts(data: WhyData | null, acid_cm3: number): string[] {
  const { why } = words;
  if (data === null) return [why.moreWords, why.bendWords, why.sameWords];
  const { crossing, end_point_cm3, u_end_point_cm3 } = data;
  const rises = firstAndLastRise(data, acid_cm3);
  const low_cm3 = end_point_cm3 - crossing.end_point_cm3;
  const beyond_c = Math.abs(temperatureOn(crossing.before, end_point_cm3) - temperatureOn(crossing.after, end_point_cm3));
  const last =
    low_cm3 > SAME_CM3
      ? why.low(end_point_cm3, u_end_point_cm3, low_cm3)
      : low_cm3 < -SAME_CM3
        ? why.high(end_point_cm3, u_end_point_cm3, -low_cm3)
        : why.agree(end_point_cm3, u_end_point_cm3);
  return [
    why.two(crossing.end_point_cm3, crossing.u_end_point_cm3),
    rises ? why.more(...rises) : why.moreWords,
    low_cm3 > SAME_CM3 ? why.bend(beyond_c) : why.bendWords,
    why.same(acid_cm3 + end_point_cm3),
    last,
  ];
}

export function Why({ view }: WhyProps) {
  const [step, setStep] = useState(1);
  const data = whyData(view);
  const acid_cm3 = view.plan.acid.volume_cm3;
  const told = texts(data, acid_cm3);
  const { why } = words;
  if (data === null) {
    return (
      <div class="why">
        <p class="remark">{why.notPossible}</p>
        {told.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
    );
  }
  const go = (to: number) => setStep(Math.min(STEPS, Math.max(1, to)));
  return (
    <div class="why">
      <Steady step={step} spoken>
        {(one) => (
          <>
            <p class="why-step">{why.step(one, STEPS)}</p>
            <h4>{why.names[one - 1]}</h4>
            <p>{keptTogether(told[one - 1] ?? "")}</p>
          </>
        )}
      </Steady>
      <Sized class="drawing" shape={0.45}>
        {(box) => <WhyDrawing data={data} acid_cm3={acid_cm3} step={step} box={box} />}
      </Sized>
      <Steady step={step}>{(one) => <WhyLegend step={one} />}</Steady>
      <div class="answers why-go">
        <button type="button" aria-disabled={step === 1} onClick={() => go(step - 1)}>
          {why.back}
        </button>
        <button type="button" class="strong" aria-disabled={step === STEPS} onClick={() => go(step + 1)}>
          {why.next}
        </button>
      </div>
      <p class="remark">{why.which(data.repeat)}</p>
    </div>
  );
}

/** What belongs to one step, with room for that of every other, so that nothing below moves. */
function Steady({ step, spoken = false, children }: { step: number; spoken?: boolean; children: (step: number) => ComponentChildren }) {
  const others = Array.from({ length: STEPS }, (_, index) => index + 1).filter((one) => one !== step);
  return (
    <div class="steady">
      <div class="steady-now" aria-live={spoken ? "polite" : undefined} aria-atomic={spoken ? "true" : undefined}>
        {children(step)}
      </div>
      {others.map((one) => (
        <div key={one} class="steady-room" aria-hidden="true">
          {children(one)}
        </div>
      ))}
    </div>
  );
}
