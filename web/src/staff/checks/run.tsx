// The check under way: one instruction, the live reading with its age, what is missing, and in the end the result.

import { useState } from "preact/hooks";
import { decimal, fixed, placesFor, rounded, typedNumber } from "../../format";
import type { StaffAct } from "../../live/session";
import { NumberField } from "../../page/forms";
import { phrase, said } from "../../words";
import type { Check } from "../contract";
import { FoundWords, type Watching, ageOf, doIt } from "./register";

const FIRST = { ice: "in", boiling: "in", comparison: "in", dip: "hung", cup: "in_added" } as const;
const NEXT = { fill: "filled", pour: "poured" } as const;

const instructionOf = ({ check, phase }: Check): string => phrase("page-checks-instruction", { step: `${check}-${phase}` });

export function RunCheck({ watching, staff }: { watching: Watching; staff: boolean }) {
  const check = watching.checks?.check;
  if (!check) return null;
  return (
    <section class="check-part check-run" data-phase={check.phase}>
      <h2>{phrase("page-checks-names", { which: check.check })}</h2>
      <p class="check-instruction" aria-live="polite">
        {instructionOf(check)}
      </p>
      {check.phase !== "found" && <p class="caution">{phrase("page-checks-caution", { which: check.check })}</p>}
      <Live check={check} watching={watching} />
      {check.points.length > 0 && (
        <>
          <h3>{phrase("page-checks-points")}</h3>
          <ol class="check-points">
            {check.points.map(({ probe_c, reference_c }, at) => (
              <li key={at}>{phrase("page-checks-point", { probe: fixed(probe_c, 2), reference: fixed(reference_c, 2) })}</li>
            ))}
          </ol>
        </>
      )}
      {check.found && (
        <div class="check-result">
          <h3>{phrase("page-checks-found")}</h3>
          <FoundWords check={check.check} found={check.found} />
          <p>{phrase("page-checks-standard")}</p>
        </div>
      )}
      {check.missing && (check.points.length > 0 || check.check === "dip") && <p>{said(check.missing)}</p>}
      {staff ? <Acts check={check} again={watching.again} /> : <p>{phrase("page-checks-staff-go-on")}</p>}
    </section>
  );
}

function Live({ check, watching }: { check: Check; watching: Watching }) {
  const celsius = check.live?.temperature_c ?? null;
  const age_s = ageOf(watching);
  const judged = ["settling", "comparing", "added", "air"].includes(check.phase);
  const moving = check.moving_c_min;
  // There is a reading again, if too few of them yet: nobody need look at the plug.
  const why = check.why === "no_reading" && celsius !== null ? "too_short" : check.why;
  return (
    <div class="check-live">
      <p>
        {phrase("page-checks-live")} <strong>{celsius === null ? phrase("page-checks-no-live") : decimal(`${fixed(celsius, 2)} °C`)}</strong>{" "}
        {age_s !== null && <small>{phrase("page-checks-age", { s: Math.round(age_s) })}</small>}
      </p>
      <p>
        {judged && phrase("page-checks-rest", { which: why || "steady" })}{" "}
        {judged && why === "moving" && moving !== null && phrase("page-checks-moving", { perMin: fixed(moving, 2) })}
        {check.left_s !== null && check.left_s > 0 && phrase("page-checks-left", { s: Math.ceil(check.left_s) })}
      </p>
      {check.known_c !== null && check.u_known_c !== null && (
        <p>
          {phrase("page-checks-known", { known: rounded(check.known_c, placesFor(check.u_known_c, 2)), u: rounded(check.u_known_c, placesFor(check.u_known_c, 2)) })}
        </p>
      )}
      <small>{phrase("page-checks-raw")}</small>
    </div>
  );
}

function Acts({ check, again }: { check: Check; again: () => void }) {
  const [why, say] = useState("");
  const act = async (made: StaffAct) => {
    const refused = await doIt(made);
    say(refused === null ? phrase("page-checks-no-answer") : said(refused));
    again();
    return refused === "";
  };
  const step = (name: string, values: object = {}) => act({ act: "check_step", step: name, values });
  const next = check.phase === "prepare" ? FIRST[check.check] : NEXT[check.phase as keyof typeof NEXT];
  return (
    <div class="check-acts">
      {next && (
        <button type="button" class="strong" onClick={() => void step(next)}>
          {phrase("page-checks-step", { which: next })}
        </button>
      )}
      {check.phase === "comparing" && <Compare steady={check.rest.steady} step={step} say={say} />}
      {check.phase === "comparing" && check.points.length > 0 && (
        <button type="button" class="plain" onClick={() => void step("comparison_undone")}>
          {phrase("page-checks-step", { which: "comparison_undone" })}
        </button>
      )}
      {check.phase === "weigh" && <Weigh step={step} say={say} />}
      {check.found && (
        <button type="button" class="strong" onClick={() => void act({ act: "check_save" })}>
          {phrase("page-checks-save")}
        </button>
      )}
      <button type="button" class="plain" onClick={() => void act({ act: "check_discard" })}>
        {phrase("page-checks-discard")}
      </button>
      <p class="why-not" aria-live="assertive">
        {why}
      </p>
    </div>
  );
}

interface Typing {
  step: (name: string, values?: object) => Promise<boolean>;
  say: (why: string) => void;
}

function Compare({ steady, step, say }: Typing & { steady: boolean }) {
  const [typed, type] = useState("");
  const submit = async (event: Event) => {
    event.preventDefault();
    const reference_c = typedNumber(typed);
    if (reference_c === null) return say(phrase("page-checks-bad-number"));
    if (await step("compared", { reference_c })) type("");
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <NumberField label={phrase("page-checks-reference-says")} value={typed} change={type} />
      <button type="submit" class={steady ? "strong" : "plain"}>
        {phrase("page-checks-step", { which: "compared" })}
      </button>
    </form>
  );
}

function Weigh({ step, say }: Typing) {
  const [warm, typeWarm] = useState("");
  const [added, typeAdded] = useState("");
  const submit = (event: Event) => {
    event.preventDefault();
    const [warm_g, added_g] = [typedNumber(warm), typedNumber(added)];
    if (warm_g === null || added_g === null) return say(phrase("page-checks-bad-number"));
    void step("weighed", { warm_g, added_g });
  };
  return (
    <form onSubmit={submit}>
      <NumberField label={phrase("page-checks-warm-mass")} value={warm} change={typeWarm} />
      <NumberField label={phrase("page-checks-added-mass")} value={added} change={typeAdded} />
      <button type="submit" class="strong">
        {phrase("page-checks-step", { which: "weighed" })}
      </button>
    </form>
  );
}
