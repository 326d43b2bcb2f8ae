// The technician's page: every kit in one table, what all of them are asked at once, and the ice point of all probes.

import { useEffect, useState } from "preact/hooks";
import { get } from "../live/ask";
import { TableFrame } from "../page/shared";
import { short, signed } from "../format";
import { phrase, said } from "../words";
import type { KitFinding, KitRow } from "./contract";
import { useTelling } from "./telling";

const PATH = "/api/room/kits";
const EVERY_MS = 2000;
/** What a pre-flight finds that has a column of its own. */
const COLUMNS = ["free_space", "clock", "power"] as const;
const MARKS = { green: "●", amber: "▲", red: "■", unknown: "?" } as const;

function useKits(): readonly KitRow[] | null {
  const [kits, know] = useState<readonly KitRow[] | null>(null);
  useEffect(() => {
    const ask = () => get<{ kits: KitRow[] }>(PATH).then((answer) => know(answer.kits), () => undefined);
    void ask();
    const timer = setInterval(() => void ask(), EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return kits;
}

interface Hands {
  /** The kits that are asked. */
  chosen: readonly KitRow[];
  busy: boolean;
  ask: (benches: readonly KitRow[], more: Readonly<Record<string, string | boolean>>) => void;
}

export function KitsPage() {
  const kits = useKits();
  const { told, send, busy } = useTelling();
  const [left, leave] = useState<ReadonlySet<string>>(new Set());
  if (!kits) return <p class="connecting">{phrase("page-room-connecting")}</p>;
  if (kits.length === 0) return <p>{phrase("page-kits-none")}</p>;
  const chosen = kits.filter(({ bench, here }) => here && !left.has(bench));
  const ask: Hands["ask"] = (some, more) => void send(PATH, { benches: some.map(({ bench }) => bench), ...more });
  const hands = { chosen, busy, ask };
  const turn = (bench: string) => {
    const next = new Set(left);
    if (!next.delete(bench)) next.add(bench);
    leave(next);
  };
  return (
    <>
      <section class="kit-part kits-hands">
        <p>{phrase("page-kits-intro", { count: chosen.length })}</p>
        <div class="kits-buttons">
          <button type="button" class="strong" disabled={busy || chosen.length === 0} onClick={() => ask(chosen, { do: "look" })}>
            {phrase("page-kits-check-all")}
          </button>
          <a class="plain" href="/api/room/backups.zip" download>
            {phrase("page-kits-backups")}
          </a>
        </div>
        <p class="remark">{phrase("page-kits-backups-why")}</p>
        <p class="told" role="status">
          {told}
        </p>
      </section>
      <KitsTable kits={kits} left={left} turn={turn} />
      <IceForAll {...hands} />
      <MoreForAll {...hands} />
    </>
  );
}

// The table: one row a kit, which a phone shows as cards.

function KitsTable({ kits, left, turn }: { kits: readonly KitRow[]; left: ReadonlySet<string>; turn: (bench: string) => void }) {
  const heads = ["kit", "check", "probe", ...COLUMNS, "version", "asked"] as const;
  return (
    <TableFrame name={phrase("page-kits-title")}>
      <table class="kits-table">
        <caption class="unseen">{phrase("page-kits-title")}</caption>
        <thead>
          <tr>
            {heads.map((which) => (
              <th scope="col" key={which}>
                {phrase("page-kits-head", { which })}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {kits.map((kit) => (
            <Row key={kit.bench} kit={kit} chosen={kit.here && !left.has(kit.bench)} turn={() => turn(kit.bench)} />
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}

function Row({ kit, chosen, turn }: { kit: KitRow; chosen: boolean; turn: () => void }) {
  const { bench, name, here, version, address, findings } = kit;
  const named = (which: string) => findings.find((each) => each.name === which);
  return (
    <tr data-bench={bench} data-testid="kit-row">
      <th scope="row">
        <label>
          <input type="checkbox" checked={chosen} disabled={!here} onChange={turn} /> <span>{name}</span>
        </label>
        {address && (
          <small>
            <a href={`${address}kit`}>{phrase("page-kits-own-page")}</a>
          </small>
        )}
      </th>
      <td data-head={phrase("page-kits-head", { which: "check" })}>
        <Verdict kit={kit} />
      </td>
      <td data-head={phrase("page-kits-head", { which: "probe" })}>
        <Probe kit={kit} />
      </td>
      {COLUMNS.map((which) => (
        <td key={which} data-head={phrase("page-kits-head", { which })}>
          <Found found={named(which)} whole={which === "free_space"} />
        </td>
      ))}
      <td data-head={phrase("page-kits-head", { which: "version" })}>{version || "–"}</td>
      <td data-head={phrase("page-kits-head", { which: "asked" })}>
        <Asked kit={kit} />
      </td>
    </tr>
  );
}

function Verdict({ kit: { here, status, looked_s, findings } }: { kit: KitRow }) {
  if (!here) return <span>{phrase("page-kits-away")}</span>;
  if (status === null || looked_s === null) return <span>{phrase("page-kits-not-looked")}</span>;
  const open = findings.filter(({ colour }) => colour === "red" || colour === "amber");
  const mark = (
    <>
      <b class="kits-mark" data-colour={status}>
        <span aria-hidden="true">{MARKS[status]}</span> {phrase("page-kit-colour", { which: status })}
      </b>{" "}
      <small>{phrase("page-kits-looked", { min: Math.round(looked_s / 60) })}</small>
    </>
  );
  if (open.length === 0) return <p>{mark}</p>;
  return (
    <details>
      <summary>{mark}</summary>
      <ul>
        {open.map(({ name, text, remedy }) => (
          <li key={name}>
            {said(text)} {said(remedy)}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A word; what is behind it stands below the verdict. `whole`: what was found itself. */
function Found({ found, whole }: { found: KitFinding | undefined; whole: boolean }) {
  if (!found) return <>–</>;
  return (
    <span class="kits-found" data-colour={found.colour} title={said(found.text)}>
      {found.colour !== "green" && <span aria-hidden="true">{MARKS[found.colour]} </span>}
      {whole ? said(found.text) : phrase("page-kit-colour", { which: found.colour })}
    </span>
  );
}

function Probe({ kit: { probe_id, probe_checked, ice } }: { kit: KitRow }) {
  return (
    <>
      <code>{probe_id ?? "–"}</code>
      <small>
        {ice
          ? iceInWords(ice)
          : probe_checked
            ? phrase("page-kits-probe-checked", { check: probe_checked.check, day: probe_checked.day ?? "–" })
            : phrase("page-kits-probe-unchecked")}
      </small>
    </>
  );
}

function Asked({ kit: { asked, state, told } }: { kit: KitRow }) {
  if (asked === null || (asked === "look" && state === "done")) return <>–</>;
  return (
    <span data-state={state}>
      {phrase("page-kits-asked", { which: asked })}: {state === "waits" ? phrase("page-kits-waits") : said(told)}
    </span>
  );
}

// The ice point: one bath, one instruction, every probe.

function iceInWords({ phase, far, temperature_c, correction_c }: NonNullable<KitRow["ice"]>): string {
  const now = temperature_c === null ? "–" : short(temperature_c, 4);
  if (correction_c !== null) return phrase("page-kits-ice-found", { correction: signed(correction_c, 2) });
  return phrase("page-kits-ice", { which: far ? "far" : phase === "settling" ? "settling" : "other", now });
}

function IceForAll({ chosen, busy, ask }: Hands) {
  const probes = chosen.filter(({ probe_id }) => probe_id !== null);
  const begun = probes.filter(({ ice }) => ice !== null);
  const found = begun.filter(({ ice }) => ice?.correction_c !== null);
  const rest = probes.filter(({ ice }) => ice === null);
  return (
    <section class="kit-part">
      <h2>{phrase("page-kits-ice-title")}</h2>
      <p>{phrase("page-kits-ice-how")}</p>
      <p class="remark">{phrase("page-kits-ice-count", { probes: probes.length, begun: begun.length, found: found.length })}</p>
      <div class="kits-buttons">
        <button type="button" class="strong" disabled={busy || rest.length === 0} onClick={() => ask(rest, { do: "ice-begin" })}>
          {phrase("page-kits-ice-begin", { count: rest.length })}
        </button>
        <button type="button" class="strong" disabled={busy || found.length === 0} onClick={() => ask(found, { do: "ice-save" })}>
          {phrase("page-kits-ice-save", { count: found.length })}
        </button>
        <button type="button" class="plain" disabled={busy || begun.length === 0} onClick={() => ask(begun, { do: "ice-discard" })}>
          {phrase("page-kits-ice-discard", { count: begun.length })}
        </button>
      </div>
    </section>
  );
}

// What the kits' helper does: record, version, power.

const MORE = ["restart", "shut-down", "backup", "update", "restore", "wipe"] as const;

const PLACES = ["card", "stick"] as const;

function MoreForAll({ chosen, busy, ask }: Hands) {
  const [which, choose] = useState<(typeof MORE)[number]>("restart");
  const [word, type] = useState("");
  const [place, put] = useState<(typeof PLACES)[number]>("card");
  const [sure, tick] = useState(false);
  const typed = which === "update" || which === "restore";
  const submit = (event: Event) => {
    event.preventDefault();
    const more = which === "update" ? { sha256: word.trim() } : which === "restore" ? { place, file: word.trim() } : {};
    ask(chosen, { do: which, sure, ...more });
    tick(false);
  };
  return (
    <section class="kit-part">
      <h2>{phrase("page-kits-more")}</h2>
      <form class="kit-machine" onSubmit={submit}>
        <label>
          {phrase("page-kits-do")}
          <select value={which} onChange={(event) => choose(event.currentTarget.value as (typeof MORE)[number])}>
            {MORE.map((each) => (
              <option key={each} value={each}>
                {phrase("page-kits-asked", { which: each })}
              </option>
            ))}
          </select>
        </label>
        <p class="remark">{phrase("page-kits-do-what", { which })}</p>
        {which === "restore" && (
          <label>
            {phrase("page-kits-place")}
            <select value={place} onChange={(event) => put(event.currentTarget.value as (typeof PLACES)[number])}>
              {PLACES.map((each) => (
                <option key={each} value={each}>
                  {phrase("page-kits-places", { which: each })}
                </option>
              ))}
            </select>
          </label>
        )}
        {typed && (
          <label>
            {phrase("page-kits-typed", { which })}
            <input type="text" autocomplete="off" maxLength={80} value={word} onInput={(event) => type(event.currentTarget.value)} />
          </label>
        )}
        <label class="kit-sure">
          <input type="checkbox" checked={sure} onChange={(event) => tick(event.currentTarget.checked)} />{" "}
          {phrase("page-kits-sure", { count: chosen.length })}
        </label>
        <button type="submit" class="in-head" disabled={busy || !sure || chosen.length === 0 || (typed && word.trim() === "")}>
          {phrase("page-kits-asked", { which })}
        </button>
      </form>
    </section>
  );
}
