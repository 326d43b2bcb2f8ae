// The register: every probe with its checks, failures and kind, and the cups that were tested.

import { useState } from "preact/hooks";
import { type Checked, type Checks, type Probe, doIt } from "../checks";
import { decimal, fixed } from "../format";
import { said } from "../words";
import { checkWords as words } from "../words/checks_topic";
import { FoundWords, sentences } from "./check_found";

interface Props {
  checks: Checks;
  staff: boolean;
  again: () => void;
}

export function Register(props: Props) {
  const { probes, cups, in_use } = props.checks;
  return (
    <section class="check-part">
      <h2>{words().register}</h2>
      {in_use && <p>{said(in_use.text)}</p>}
      {probes.length === 0 && <p>{words().none}</p>}
      {probes.map((probe) => (
        <OneProbe key={probe.probe_id} probe={probe} {...props} />
      ))}
      {cups.length > 0 && <h2>{words().cups}</h2>}
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
  const age = age_days === null ? words().ageUnknown : words().days(age_days);
  return [day, clock_set ? null : words().clockNotSet, age].filter((each) => each !== null).join(", ");
}

function failures({ samples, bad }: Probe): string {
  const kinds = Object.entries(bad).filter(([, n]) => n > 0);
  if (samples === 0 || kinds.length === 0) return words().noFailures(samples);
  const told = kinds.map(([kind, n]) => `${words().bad[kind] ?? kind} ${decimal(fixed((1000 * n) / samples, 1))}`);
  return words().failures(told.join(", "), samples);
}

function OneProbe({ probe, staff, again }: Props & { probe: Probe }) {
  const [why, say] = useState("");
  const withdraw = async (number: number) => {
    const refused = await doIt({ act: "check_withdraw", number });
    say(refused === null ? words().noAnswer : said(refused));
    again();
  };
  const { against, checks } = probe;
  const kind =
    against === null ? words().unseen : against.length === 0 ? words().genuine : words().copy + against.map(said).join("; ");
  return (
    <article>
      <h3>
        <code>{probe.probe_id}</code> {probe.at_work && <small>({words().atWork})</small>}
      </h3>
      <p>{kind}</p>
      <p>{failures(probe)}</p>
      {checks.length === 0 ? (
        <p>{words().unchecked}</p>
      ) : (
        <div class="check-table" tabIndex={0} role="group" aria-label={probe.probe_id}>
          <table>
            <thead>
              <tr>
                {Object.values(words().columns).map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {checks.map((each) => (
                <tr key={each.number}>
                  <th scope="row">{each.number}</th>
                  <td>{words().names[each.check]}</td>
                  <td>{ageInWords(each)}</td>
                  <td>{sentences(each.check, each.values).join(" ")}</td>
                  <td>
                    {each.withdrawn ? words().withdrawn : each.used ? words().inUse : words().kept}{" "}
                    {staff && !each.withdrawn && (
                      <button type="button" class="plain" onClick={() => void withdraw(each.number)}>
                        {words().withdraw(each.number)}
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
