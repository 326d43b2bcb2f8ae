// Staff choose a check and type what it needs beforehand.

import { useState } from "preact/hooks";
import { type CheckKind, doIt } from "../checks";
import { typedNumber } from "../typed";
import { said } from "../words";
import { checkWords as words } from "../words/checks_topic";

const KINDS: readonly CheckKind[] = ["ice", "comparison", "boiling", "dip", "cup"];

type Typed = Record<"pressure" | "altitude" | "reference" | "label", string>;

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
    values[name] = value;
  }
  return values;
}

export function ChooseCheck({ again }: { again: () => void }) {
  const [kind, choose] = useState<CheckKind>("ice");
  const [water, fill] = useState("distilled");
  const [typed, type] = useState<Typed>({ pressure: "", altitude: "", reference: "0.1", label: "" });
  const [why, say] = useState("");
  const begin = async (event: Event) => {
    event.preventDefault();
    const values = valuesOf(kind, typed, water);
    if (values === null) return say(words().badNumber);
    const refused = await doIt({ act: "check_begin", check: kind, values });
    say(refused === null ? words().noAnswer : said(refused));
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
        <legend>{words().choose}</legend>
        {KINDS.map((each) => (
          <label key={each}>
            <input type="radio" name="check" value={each} checked={each === kind} onChange={() => choose(each)} />
            <span>
              <strong>{words().names[each]}</strong> {words().about[each]}
            </span>
          </label>
        ))}
      </fieldset>
      {kind === "ice" && (
        <label>
          {words().water}
          <select value={water} onChange={(event) => fill(event.currentTarget.value)}>
            <option value="distilled">{words().waters.distilled}</option>
            <option value="tap">{words().waters.tap}</option>
          </select>
        </label>
      )}
      {kind === "boiling" && (
        <>
          {field("pressure", words().pressure)}
          {field("altitude", words().altitude)}
          <p>{words().pressureHint}</p>
        </>
      )}
      {kind === "comparison" && field("reference", words().reference)}
      {kind === "cup" && field("label", words().cupLabel, false)}
      <p class="caution">{words().caution[kind]}</p>
      <button type="submit" class="strong">
        {words().begin}
      </button>
      <p class="why-not" aria-live="assertive">
        {why}
      </p>
    </form>
  );
}
