// Is the kit ready: the verdict, then what is to be mended, worst first; what is in order is folded away.

import { type Finding, type Looking, told, words } from "./kit_looking";

const nameOf = (name: string): string => words().names[name as keyof ReturnType<typeof words>["names"]] ?? name;

export function KitFindings({ looking }: { looking: Looking }) {
  const { kit, busy, failed } = looking;
  const of = (colour: Finding["colour"]) => kit?.findings.filter((each) => each.colour === colour) ?? [];
  return (
    <section class="kit-part">
      <h2>{words().ready}</h2>
      <p class="kit-verdict" data-status={kit?.status} aria-live="polite">
        {kit && !busy ? words().verdict[kit.status] : failed && !busy ? words().noAnswer : words().looking}
      </p>
      <p class="kit-again">
        <button type="button" class="in-head" aria-disabled={busy} onClick={() => busy || looking.again()}>
          {words().again}
        </button>
        {kit && <small>{words().age(Math.round(kit.age_s))}</small>}
      </p>
      {kit && (
        <>
          <ol class="kit-findings">{[...of("red"), ...of("amber")].map((each) => <Open key={each.name} found={each} />)}</ol>
          <Folded found={of("unknown")} title={words().untold} />
          <Folded found={of("green")} title={words().inOrder} />
          <p class="remark">
            {words().beside} {words().checksHint} <a href="/checks">{words().checks}</a>.
          </p>
        </>
      )}
    </section>
  );
}

function Open({ found }: { found: Finding }) {
  return (
    <li data-colour={found.colour}>
      <Told found={found} />
    </li>
  );
}

function Folded({ found, title }: { found: readonly Finding[]; title: (n: number) => string }) {
  if (found.length === 0) return null;
  return (
    <details>
      <summary>{title(found.length)}</summary>
      <ul class="kit-findings">
        {found.map((each) => (
          <li key={each.name} data-colour={each.colour}>
            <Told found={each} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Told({ found }: { found: Finding }) {
  const values = Object.entries(found.values).filter(([, value]) => value !== null);
  return (
    <>
      <p>
        <strong>
          {nameOf(found.name)} – {words().colour[found.colour]}:
        </strong>{" "}
        {told(found.text)}
      </p>
      {found.remedy && (
        <p>
          <strong>{words().next}</strong> {told(found.remedy)}
        </p>
      )}
      {values.length > 0 && (
        <details>
          <summary>
            {words().figures} <span class="unseen">({nameOf(found.name)})</span>
          </summary>
          <dl class="kit-values">
            {values.map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{typeof value === "string" ? value : JSON.stringify(value)}</dd>
              </div>
            ))}
          </dl>
        </details>
      )}
    </>
  );
}
