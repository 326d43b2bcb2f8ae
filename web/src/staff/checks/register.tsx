// The register: every probe with its checks, failures and kind, and the cups that were tested.

import { useEffect, useRef, useState } from "preact/hooks";
import { decimal, fixed, placesFor, rounded } from "../../format";
import { get } from "../../live/ask";
import { type StaffAct, sendStaff } from "../../live/session";
import { slopeText } from "../../phrases/checks";
import { phrase, said } from "../../words";
import type { CheckKind, Checked, Checks, Found, Point, Probe } from "../contract";

const COLUMNS = ["number", "check", "day", "found", "use"] as const;

interface Props {
  checks: Checks;
  staff: boolean;
  again: () => void;
}

export function Register(props: Props) {
  const { probes, cups, in_use } = props.checks;
  return (
    <section class="check-part">
      <h2>{phrase("page-checks-register")}</h2>
      {in_use && <p>{said(in_use.text)}</p>}
      {probes.length === 0 && <p>{phrase("page-checks-none")}</p>}
      {probes.map((probe) => (
        <OneProbe key={probe.probe_id} probe={probe} {...props} />
      ))}
      {cups.length > 0 && <h2>{phrase("page-checks-cups")}</h2>}
      {cups.map((cup, at) => (
        <article key={at}>
          <h3>{cup.label}</h3>
          <p>{ageInWords(cup)}</p>
          <FoundWords check="cup" found={cup.values} />
        </article>
      ))}
    </section>
  );
}

function ageInWords({ day, clock_set, age_days }: Pick<Checked, "day" | "clock_set" | "age_days">): string {
  const age = age_days === null ? phrase("page-checks-age-unknown") : phrase("page-checks-days", { n: age_days });
  return [day, clock_set ? null : phrase("page-checks-clock-not-set"), age].filter((each) => each !== null).join(", ");
}

function failures({ samples, bad }: Probe): string {
  const kinds = Object.entries(bad).filter(([, n]) => n > 0);
  if (samples === 0 || kinds.length === 0) return phrase("page-checks-no-failures", { samples });
  const told = kinds.map(([kind, n]) => `${phrase("page-checks-bad", { which: kind })} ${decimal(fixed((1000 * n) / samples, 1))}`);
  return phrase("page-checks-failures", { bad: told.join(", "), samples });
}

function OneProbe({ probe, staff, again }: Props & { probe: Probe }) {
  const [why, say] = useState("");
  const withdraw = async (number: number) => {
    const refused = await doIt({ act: "check_withdraw", number });
    say(refused === null ? phrase("page-checks-no-answer") : said(refused));
    again();
  };
  const { against, checks } = probe;
  const kind =
    against === null ? phrase("page-checks-unseen") : against.length === 0 ? phrase("page-checks-genuine") : phrase("page-checks-copy") + against.map(said).join("; ");
  return (
    <article>
      <h3>
        <code>{probe.probe_id}</code> {probe.at_work && <small>({phrase("page-checks-at-work")})</small>}
      </h3>
      <p>{kind}</p>
      <p>{failures(probe)}</p>
      {checks.length === 0 ? (
        <p>{phrase("page-checks-unchecked")}</p>
      ) : (
        <div class="check-table" tabIndex={0} role="group" aria-label={probe.probe_id}>
          <table>
            <thead>
              <tr>
                {COLUMNS.map((column) => (
                  <th key={column} scope="col">
                    {phrase("page-checks-columns", { which: column })}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {checks.map((each) => (
                <tr key={each.number}>
                  <th scope="row">{each.number}</th>
                  <td>{phrase("page-checks-names", { which: each.check })}</td>
                  <td>{ageInWords(each)}</td>
                  <td>{sentences(each.check, each.values).join(" ")}</td>
                  <td>
                    {each.withdrawn ? phrase("page-checks-withdrawn") : each.used ? phrase("page-checks-in-use") : phrase("page-checks-kept")}{" "}
                    {staff && !each.withdrawn && (
                      <button type="button" class="plain" onClick={() => void withdraw(each.number)}>
                        {phrase("page-checks-withdraw", { number: each.number })}
                      </button>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p class="why-not" aria-live="assertive">
        {why}
      </p>
    </article>
  );
}

// What a check found, in words with ±.

/** A value to the place of its u, and u to the same place. */
function both(value: number, u: number, most = 3): [string, string] {
  const places = placesFor(u, most);
  return [rounded(value, places), rounded(u, places)];
}

/** The sentences of a result; numbers are taken as they come from the station. */
function sentences(check: CheckKind, found: Found): string[] {
  const of = (name: string) => found[name] ?? 0;
  if (check === "dip") {
    const [fast, uFast] = both(of("fast_s"), of("u_fast_s"), 1);
    const [slow, uSlow] = both(of("slow_s"), of("u_slow_s"), 1);
    return [
      phrase("page-checks-dip", { fast, uFast, share: Math.round(100 * of("fast_share")), slow, uSlow }),
      phrase("page-checks-follows", { t63: fixed(of("t63_s"), 1), t90: fixed(of("t90_s"), 0) }),
    ];
  }
  if (check === "cup") {
    const [c, uC] = both(of("heat_capacity_j_k"), of("u_heat_capacity_j_k"), 1);
    const [loss, uLoss] = both(of("loss_w_k"), of("u_loss_w_k"));
    return [phrase("page-checks-cup", { c, uC, loss, uLoss }), phrase("page-checks-cup-assumes")];
  }
  const [c, u] = both(Math.abs(of("correction_c")), of("u_correction_c"), 2);
  const off = Number(c) === 0 ? phrase("page-checks-right", { u }) : of("correction_c") < 0 ? phrase("page-checks-high", { c, u }) : phrase("page-checks-low", { c, u });
  const beyond = Math.abs(of("correction_c")) > 0.5 + 2 * of("u_correction_c") ? [phrase("page-checks-beyond")] : [];
  if (check !== "comparison") return [off, ...beyond];
  const { points = [] } = found;
  const mean = (value: (point: Point) => number) => points.reduce((sum, each) => sum + value(each), 0) / points.length;
  const at_c = fixed(mean((each) => each.probe_c), 2);
  const reference_c = fixed(mean((each) => each.reference_c), 2);
  const [slope, uSlope] = both(100 * Math.abs(of("slope")), 100 * of("u_slope"), 2);
  const within = found.slope_95 === undefined ? null : rounded(100 * found.slope_95, 2);
  const each = slopeText(at_c, slope, uSlope, within, of("slope") < 0 ? "large" : "small");
  return [phrase("page-checks-mean", { n: points.length, probe: at_c, reference: reference_c }), off, each, ...beyond];
}

export function FoundWords({ check, found }: { check: CheckKind; found: Found }) {
  const capacity = fixed(found.heat_capacity_j_k ?? 0, 1);
  const u = fixed(found.u_heat_capacity_j_k ?? 0, 1);
  return (
    <>
      {sentences(check, found).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {check === "cup" && (
        <>
          <p>{phrase("page-checks-plan-lines")}</p>
          <pre class="check-plan">{`[cup]\nheat_capacity_j_k = ${capacity}\nu_heat_capacity_j_k = ${u}`}</pre>
        </>
      )}
    </>
  );
}

// The probe register and the check under way, as the station tells them; and what staff do about them.

const EVERY_MS = 1000;

export interface Watching {
  checks: Checks | null;
  /** When the newest answer came, by this page's own clock, ms. */
  at_ms: number;
  silent: boolean;
  again: () => void;
}

/** Ask once a second while the page is seen. */
export function useChecks(): Watching {
  const [watching, watch] = useState<Omit<Watching, "again">>({ checks: null, at_ms: 0, silent: false });
  const timer = useRef(0);
  const ask = async () => {
    clearTimeout(timer.current);
    if (document.visibilityState === "visible") {
      try {
        const checks = await get<Checks>("/api/checks");
        watch({ checks, at_ms: performance.now(), silent: false });
      } catch {
        watch((old) => ({ ...old, silent: true }));
      }
    }
    clearTimeout(timer.current);
    timer.current = window.setTimeout(() => void ask(), EVERY_MS);
  };
  useEffect(() => {
    void ask();
    return () => clearTimeout(timer.current);
  }, []);
  return { ...watching, again: () => void ask() };
}

/** Seconds since the newest sample; null without one. */
export function ageOf({ checks, at_ms }: Watching): number | null {
  const live = checks?.check?.live;
  if (!checks || !live) return null;
  return Math.max(0, (checks.time_s - live.time_s) / checks.speed) + (performance.now() - at_ms) / 1000;
}

/** Do it; resolves to words when it was refused, "" when it is done, null when there was no answer. */
export async function doIt(act: StaffAct): Promise<string | null> {
  const outcome = await sendStaff(act);
  return outcome.done ? "" : outcome.words;
}
