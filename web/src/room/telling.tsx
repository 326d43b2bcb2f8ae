// What staff tell the benches: all of them, or those that are chosen.

import { useEffect, useState } from "preact/hooks";
import { answered, get, post } from "../live/ask";
import { BottleForm } from "../page/bottle";
import { textOf } from "../page/forms";
import { type Which, phrase, said } from "../words";
import type { OrderLeft, Room } from "./contract";

const MOST_LEFT = 12;

type Act = Readonly<Record<string, unknown>>;

interface Props {
  room: Room;
  chosen: ReadonlySet<string> | null;
  setChosen: (chosen: ReadonlySet<string> | null) => void;
}

/** Sends, and keeps in words what came of it. */
export function useTelling(): { told: string; send: (path: string, body: object) => Promise<boolean>; busy: boolean } {
  const [told, say] = useState("");
  const [busy, wait] = useState(false);
  const send = async (path: string, body: object) => {
    if (busy) return false;
    wait(true);
    const outcome = await tell(path, body);
    wait(false);
    say(outcome.done ? phrase("page-room-told") : said(outcome.words ?? "") || phrase("page-room-no-answer"));
    return outcome.done;
  };
  return { told, send, busy };
}

function Rename({ room, bench, give }: { room: Room; bench: string; give: (act: Act) => void }) {
  const [name, type] = useState(room.tiles[bench]?.name ?? "");
  const submit = (event: Event) => {
    event.preventDefault();
    give({ act: "rename", name: name.trim() || null });
  };
  return (
    <form onSubmit={submit}>
      <label>
        {phrase("page-room-new-name")}
        <input type="text" maxLength={24} autocomplete="off" value={name} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain">
        {phrase("page-room-rename")}
      </button>
    </form>
  );
}

function SetAside({ room, bench, give }: { room: Room; bench: string; give: (act: Act) => void }) {
  const counted = (room.tiles[bench]?.repeats ?? []).filter(({ status }) => status !== "set aside");
  const [repeat, choose] = useState(counted[counted.length - 1]?.repeat ?? 0);
  const [reason, type] = useState("");
  if (counted.length === 0) return null;
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.trim()) give({ act: "set_aside", repeat, reason: reason.trim() });
  };
  return (
    <form onSubmit={submit}>
      <label>
        {phrase("page-room-which-repeat")}
        <select value={repeat} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {counted.map((each) => (
            <option key={each.repeat} value={each.repeat}>
              {phrase("page-room-repeat-name", { repeat: each.repeat })}
            </option>
          ))}
        </select>
      </label>
      <label>
        {phrase("page-room-why")}
        <input type="text" maxLength={200} value={reason} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain" disabled={reason.trim() === ""}>
        {phrase("page-room-set-aside")}
      </button>
    </form>
  );
}

/** The benches to choose from, by their names. */
function WhichBenches({ room, chosen, setChosen }: Props & { chosen: ReadonlySet<string> }) {
  const choose = (bench: string) => {
    const next = new Set(chosen);
    if (!next.delete(bench)) next.add(bench);
    setChosen(next);
  };
  return (
    <fieldset class="choice">
      <legend class="unseen">{phrase("page-room-choose-some")}</legend>
      {room.order.map((bench) => (
        <label key={bench}>
          <input type="checkbox" checked={chosen.has(bench)} onChange={() => choose(bench)} />
          <span>{room.tiles[bench]?.name ?? bench}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** Repeats that were set aside, each to count again; of all benches, or of those that are chosen. */
function Restore({ room, benches, send }: { room: Room; benches: readonly string[]; send: (body: object) => void }) {
  const aside = benches.flatMap((bench) => {
    const tile = room.tiles[bench];
    return (tile?.repeats ?? []).filter(({ restorable }) => restorable).map(({ repeat }) => ({ bench, name: tile?.name ?? bench, repeat }));
  });
  return (
    <>
      {aside.map(({ bench, name, repeat }) => (
        <p key={`${bench} ${repeat}`}>
          <button type="button" class="plain" onClick={() => send({ benches: [bench], act: { act: "restore", repeat } })}>
            {phrase("page-room-restore", { name, repeat })}
          </button>
        </p>
      ))}
    </>
  );
}

const SIMPLE: readonly (readonly [Which<"page-room-acts">, Act])[] = [
  ["pause", { act: "pause" }],
  ["resume", { act: "resume" }],
  ["quiet", { act: "quiet", silent: true }],
  ["loud", { act: "quiet", silent: false }],
  ["helped", { act: "call_over" }],
];

/** A new practical on the benches that are chosen, in the lesson under way. */
function NewPractical({ give }: { give: (act: Act) => void }) {
  const choice = usePlanChoice("neutralisation");
  const submit = (event: Event) => {
    event.preventDefault();
    if (choice.given) give({ act: "choose_plan", ...choice.chosen });
  };
  return (
    <form onSubmit={submit}>
      <PlanChoice choice={choice} own={false} />
      {choice.wrong && <p class="why-not">{choice.wrong}</p>}
      <button type="submit" class="plain" disabled={!choice.given}>
        {phrase("page-room-new-practical")}
      </button>
    </form>
  );
}

interface Left extends Omit<OrderLeft, "bench"> {
  benches: string[];
}

/** One line for all benches that did the same with an order; a refusal stands alone, with the bench's own words. */
function grouped(orders: readonly OrderLeft[]): Left[] {
  const lines = new Map<string, Left>();
  for (const { bench, ...order } of orders) {
    const key = `${order.order} ${order.state} ${order.state === "refused" ? bench : ""}`;
    const line = lines.get(key) ?? { ...order, benches: [] };
    line.benches.push(bench);
    lines.set(key, line);
  }
  return [...lines.values()].slice(0, MOST_LEFT);
}

function Answers({ room, send }: { room: Room; send: (path: string, body: object) => void }) {
  if (room.orders.length === 0) return null;
  const name = (bench: string) => room.tiles[bench]?.name ?? bench;
  const away = [...new Set(room.orders.filter(({ state }) => state === "pending").map(({ bench }) => bench))];
  return (
    <>
      <h3>{phrase("page-room-left")}</h3>
      <ul class="orders-left">
        {grouped(room.orders).map(({ order, act, state, why, benches }) => (
          <li key={`${order} ${state} ${benches[0]}`} data-state={state}>
            <span>
              {phrase("page-room-left-line", {
                act: phrase("page-room-order-names", { which: act }),
                benches: benches.map(name).join(", "),
                state,
                why: said(why ?? ""),
              })}
            </span>
            {state === "refused" && (
              <button type="button" class="plain" onClick={() => send("/api/room/orders/dismissed", { order, bench: benches[0] })}>
                {phrase("page-room-dismiss")}
              </button>
            )}
          </li>
        ))}
      </ul>
      {away.length > 0 && (
        <button type="button" class="plain" onClick={() => send("/api/room/orders/withdrawn", { benches: away })}>
          {phrase("page-room-take-back")}
        </button>
      )}
    </>
  );
}

export function Telling({ room, chosen, setChosen }: Props) {
  const { told, send, busy } = useTelling();
  const benches = chosen === null ? room.order : room.order.filter((bench) => chosen.has(bench));
  const give = (act: Act) => void send("/api/room/orders", { benches, act });
  const [only] = chosen !== null && benches.length === 1 ? benches : [];
  return (
    <section class="telling">
      <h2>{phrase("page-room-tell-title")}</h2>
      <p class="whom">
        {chosen === null ? phrase("page-room-to-all") : phrase("page-room-to-some", { count: benches.length })}{" "}
        <button type="button" class="plain" onClick={() => setChosen(chosen === null ? new Set() : null)}>
          {chosen === null ? phrase("page-room-choose-some") : phrase("page-room-choose-all")}
        </button>
      </p>
      {chosen !== null && <WhichBenches room={room} chosen={chosen} setChosen={setChosen} />}
      <div class="tell-buttons">
        {SIMPLE.map(([name, act]) => (
          <button key={name} type="button" class="plain" disabled={benches.length === 0 || busy} onClick={() => give(act)}>
            {phrase("page-room-acts", { which: name })}
          </button>
        ))}
      </div>
      <BottleForm
        known={null}
        able={benches.length > 0 && !busy}
        show={(prepared_mol_dm3) => give({ act: "show_results", shown: true, prepared_mol_dm3 })}
      />
      {only && <Rename key={`name ${only}`} room={room} bench={only} give={give} />}
      {only && <SetAside key={`aside ${only}`} room={room} bench={only} give={give} />}
      <Restore room={room} benches={benches} send={(body) => void send("/api/room/orders", body)} />
      {chosen !== null && benches.length > 0 && <NewPractical give={give} />}
      <p class="told" role="status">
        {told}
      </p>
      <Answers room={room} send={(path, body) => void send(path, body)} />
    </section>
  );
}

// Which plan benches are to begin with: the one they have, one that ships with the station, or one in a file.

/** What goes into the order: nothing, a plan's values, or the text of a file. */
type Chosen = { plan?: object; plan_toml?: string; confirmed?: boolean };

interface Ready {
  name: string;
  plan: { title: string };
}

interface Choice {
  chosen: Chosen;
  /** Whether a plan was chosen at all. */
  given: boolean;
  wrong: string;
  ready: readonly Ready[];
  at: string;
  /** The chosen plan's name, "" where it stands in a file. */
  name: string;
  choose: (at: string) => void;
  /** That staff stand for a plan in a file whatever its concentrations. */
  confirmed: boolean;
  confirm: (confirmed: boolean) => void;
  pick: (input: HTMLInputElement) => Promise<void>;
}

/** The room takes a body of 16 KiB; a plan has hundreds of letters. */
const LONGEST_PLAN = 12_000;
export const OWN = "own";
const FILE = "file";

export function usePlanChoice(first: string): Choice {
  const [ready, know] = useState<readonly Ready[]>([]);
  const [at, choose] = useState(first);
  const [text, read] = useState<string | null>(null);
  const [wrong, say] = useState("");
  const [confirmed, confirm] = useState(false);
  useEffect(() => {
    get<{ plans: Ready[] }>("/api/room/plans").then(({ plans }) => know(plans), () => undefined);
  }, []);
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    const found = !file || file.size > LONGEST_PLAN ? null : await textOf(file).catch(() => null);
    say(file && found === null ? phrase("page-room-no-plan") : "");
    confirm(false);
    read(found);
  };
  const plan = ready.find(({ name }) => name === at)?.plan;
  const chosen: Chosen = plan ? { plan } : at === FILE && text !== null ? { plan_toml: text, confirmed } : {};
  return { chosen, given: Object.keys(chosen).length > 0, wrong, ready, at, name: plan ? said(plan.title) : "", choose, confirmed, confirm, pick };
}

export function PlanChoice({ choice, own }: { choice: Choice; own: boolean }) {
  const { ready, at, choose, confirmed, confirm, pick } = choice;
  return (
    <>
      <label>
        {phrase("page-room-plan")}
        <select value={at} onChange={(event) => choose(event.currentTarget.value)}>
          {own && <option value={OWN}>{phrase("page-room-own-plan")}</option>}
          {ready.map(({ name, plan }) => (
            <option key={name} value={name}>
              {said(plan.title)}
            </option>
          ))}
          <option value={FILE}>{phrase("page-room-plan-in-file")}</option>
        </select>
      </label>
      {at === FILE && (
        <>
          <label>
            {phrase("page-room-plan-file")}
            <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
          </label>
          <label class="plan-confirm">
            <input type="checkbox" checked={confirmed} onChange={(event) => confirm(event.currentTarget.checked)} />
            <span>{phrase("page-room-confirm")}</span>
          </label>
        </>
      )}
    </>
  );
}

// Telling the room something; the answer's words say why it would not.

type Outcome = { done: true } | { done: false; words: string | null };

const ANSWER_MS = 8000;

async function tell(path: string, body: object): Promise<Outcome> {
  const answer = await post(path, body, ANSWER_MS);
  if (answer?.ok) return { done: true };
  const problem = await answered<{ detail?: string }>(answer);
  return { done: false, words: problem?.detail ?? null };
}
