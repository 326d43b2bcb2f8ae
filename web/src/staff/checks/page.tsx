// Checks of the probe and of cups, one instruction at a time, and the register of probes.

import { useState } from "preact/hooks";
import { typedNumber } from "../../format";
import { isStaff, useSession } from "../../live/session";
import { phrase, said } from "../../words";
import type { CheckKind } from "../contract";
import { Frame, startPage } from "../frame";
import { StaffSignIn } from "../sign_in";
import { Register, doIt, useChecks } from "./register";
import { RunCheck } from "./run";

function ChecksPage() {
  const watching = useChecks();
  const session = useSession();
  const { checks, silent, again } = watching;
  const staff = isStaff(session.standing?.role);
  const free = checks && !checks.check;
  return (
    <Frame here="/checks">
      <p>{phrase("page-checks-intro")}</p>
      <p class="caution">{phrase("page-checks-first")}</p>
      {silent && <p class="connecting">{phrase("page-checks-silent")}</p>}
      {checks?.check && <RunCheck watching={watching} staff={staff} />}
      {free && checks.under_way && <p class="check-part">{phrase("page-checks-waits")}</p>}
      {free && !checks.has_probe && <p class="check-part">{phrase("page-checks-no-probe")}</p>}
      {free && staff && !checks.under_way && checks.has_probe && <ChooseCheck again={again} />}
      {session.standing && !staff && (
        <section class="settings-part">
          <h2>{phrase("page-checks-staff")}</h2>
          <StaffSignIn session={session} />
        </section>
      )}
      {checks && <Register checks={checks} staff={staff} again={again} />}
    </Frame>
  );
}

// Staff choose a check and type what it needs beforehand.

const KINDS: readonly CheckKind[] = ["ice", "comparison", "boiling", "dip", "cup"];

type Typed = Record<"pressure" | "altitude" | "reference" | "label", string>;

/** Above this an air pressure is meant in hPa, as barometers and weather services give it; no place has 200 kPa. */
const MOST_KPA = 200;
const inKpa = (typed: number): number => (typed > MOST_KPA ? typed / 10 : typed);

/** The values of a check as the station takes them; null when something typed is no number. */
function valuesOf(kind: CheckKind, typed: Typed, water: string): Record<string, unknown> | null {
  const numbers: Record<string, string> =
    kind === "boiling"
      ? { pressure_kpa: typed.pressure, altitude_m: typed.altitude }
      : kind === "comparison"
        ? { u_reference_c: typed.reference }
        : {};
  const values: Record<string, unknown> = kind === "ice" ? { water } : kind === "cup" ? { label: typed.label } : {};
  for (const [name, text] of Object.entries(numbers)) {
    if (text.trim() === "") continue;
    const value = typedNumber(text);
    if (value === null) return null;
    values[name] = name === "pressure_kpa" ? inKpa(value) : value;
  }
  return values;
}

function ChooseCheck({ again }: { again: () => void }) {
  const [kind, choose] = useState<CheckKind>("ice");
  const [water, fill] = useState("distilled");
  const [typed, type] = useState<Typed>({ pressure: "", altitude: "", reference: "0.1", label: "" });
  const [why, say] = useState("");
  const begin = async (event: Event) => {
    event.preventDefault();
    const values = valuesOf(kind, typed, water);
    if (values === null) return say(phrase("page-checks-bad-number"));
    const refused = await doIt({ act: "check_begin", check: kind, values });
    say(refused === null ? phrase("page-checks-no-answer") : said(refused));
    again();
  };
  const field = (name: keyof Typed, label: string, numeric = true) => (
    <label>
      {label}
      <input
        type="text"
        inputMode={numeric ? "decimal" : "text"}
        autocomplete="off"
        maxLength={40}
        required={!numeric}
        value={typed[name]}
        onInput={(event) => type({ ...typed, [name]: event.currentTarget.value })}
      />
    </label>
  );
  return (
    <form class="check-part" onSubmit={(event) => void begin(event)}>
      <fieldset class="check-kinds">
        <legend>{phrase("page-checks-choose")}</legend>
        {KINDS.map((each) => (
          <label key={each}>
            <input type="radio" name="check" value={each} checked={each === kind} onChange={() => choose(each)} />
            <span>
              <strong>{phrase("page-checks-names", { which: each })}</strong> {phrase("page-checks-about", { which: each })}
            </span>
          </label>
        ))}
      </fieldset>
      {kind === "ice" && (
        <label>
          {phrase("page-checks-water")}
          <select value={water} onChange={(event) => fill(event.currentTarget.value)}>
            <option value="distilled">{phrase("page-checks-waters-distilled")}</option>
            <option value="tap">{phrase("page-checks-waters-tap")}</option>
          </select>
        </label>
      )}
      {kind === "boiling" && (
        <>
          {field("pressure", phrase("page-checks-pressure"))}
          {field("altitude", phrase("page-checks-altitude"))}
          <p>{phrase("page-checks-pressure-hint")}</p>
        </>
      )}
      {kind === "comparison" && field("reference", phrase("page-checks-reference"))}
      {kind === "cup" && field("label", phrase("page-checks-cup-label"), false)}
      <p class="caution">{phrase("page-checks-caution", { which: kind })}</p>
      <button type="submit" class="strong">
        {phrase("page-checks-begin")}
      </button>
      <p class="why-not" aria-live="assertive">
        {why}
      </p>
    </form>
  );
}

startPage(ChecksPage);
