// What staff tell the benches: all of them, or those that are chosen.

import { useState } from "preact/hooks";
import { said } from "../words";
import { roomWords as words } from "../words/room_topic";
import { tell } from "./ask";
import type { OrderLeft, Room } from "./contract";
import { PlanChoice, usePlanChoice } from "./plan_choice";
import { orderInWords } from "./tile";

const MOST_LEFT = 12;

export type Act = Readonly<Record<string, unknown>>;

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
    say(outcome.done ? words().told : said(outcome.words ?? "") || words().noAnswer);
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
        {words().newName}
        <input type="text" maxLength={24} autocomplete="off" value={name} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain">
        {words().rename}
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
        {words().whichRepeat}
        <select value={repeat} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {counted.map((each) => (
            <option key={each.repeat} value={each.repeat}>
              {words().repeatName(each.repeat)}
            </option>
          ))}
        </select>
      </label>
      <label>
        {words().why}
        <input type="text" maxLength={200} value={reason} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain" disabled={reason.trim() === ""}>
        {words().setAside}
      </button>
    </form>
  );
}

const SIMPLE: readonly (readonly [keyof ReturnType<typeof words>["acts"], Act])[] = [
  ["show", { act: "show_results", shown: true }],
  ["hold", { act: "show_results", shown: false }],
  ["pause", { act: "pause" }],
  ["resume", { act: "resume" }],
  ["quiet", { act: "quiet", silent: true }],
  ["loud", { act: "quiet", silent: false }],
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
        {words().newPractical}
      </button>
    </form>
  );
}

interface Left extends Omit<OrderLeft, "bench"> {
  benches: string[];
}

/** One line for all benches that did the same with an order. */
function grouped(orders: readonly OrderLeft[]): Left[] {
  const lines = new Map<string, Left>();
  for (const { bench, ...order } of orders) {
    const key = `${order.order} ${order.state} ${order.why}`;
    const line = lines.get(key) ?? { ...order, benches: [] };
    line.benches.push(bench);
    lines.set(key, line);
  }
  return [...lines.values()].slice(0, MOST_LEFT);
}

function LeftToDo({ room, send }: { room: Room; send: (path: string, body: object) => void }) {
  if (room.orders.length === 0) return null;
  const name = (bench: string) => room.tiles[bench]?.name ?? bench;
  const away = [...new Set(room.orders.filter(({ state }) => state === "pending").map(({ bench }) => bench))];
  return (
    <>
      <h3>{words().left}</h3>
      <ul class="orders-left">
        {grouped(room.orders).map(({ order, act, state, why, benches }) => (
          <li key={`${order} ${state} ${why}`}>{orderInWords(act, state, benches.map(name).join(", "), why)}</li>
        ))}
      </ul>
      {away.length > 0 && (
        <button type="button" class="plain" onClick={() => send("/api/room/orders/withdrawn", { benches: away })}>
          {words().takeBack}
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
    <section class="settings-part telling">
      <h2>{words().tellTitle}</h2>
      <p class="whom">
        {chosen === null ? words().toAll : words().toSome(benches.length)}{" "}
        <button type="button" class="plain" onClick={() => setChosen(chosen === null ? new Set() : null)}>
          {chosen === null ? words().chooseSome : words().chooseAll}
        </button>
      </p>
      <div class="tell-buttons">
        {SIMPLE.map(([name, act]) => (
          <button key={name} type="button" class="plain" disabled={benches.length === 0 || busy} onClick={() => give(act)}>
            {words().acts[name]}
          </button>
        ))}
      </div>
      {only && <Rename key={`name ${only}`} room={room} bench={only} give={give} />}
      {only && <SetAside key={`aside ${only}`} room={room} bench={only} give={give} />}
      {chosen !== null && benches.length > 0 && <NewPractical give={give} />}
      <p class="told" role="status">
        {told}
      </p>
      <LeftToDo room={room} send={(path, body) => void send(path, body)} />
    </section>
  );
}
