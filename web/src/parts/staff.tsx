// What teacher and technician may do to this bench.

import { useState } from "preact/hooks";
import type { Message, View } from "../contract";
import { type StaffAct, sendStaff } from "../session";
import { textOf } from "../text_of";
import { said, words } from "../words";
import { ReasonField, useReason } from "./reason";

interface Props {
  view: View;
  take: (message: Message) => void;
}

type Send = (act: StaffAct) => void;

function Rename({ name, send }: { name: string; send: Send }) {
  const [typed, type] = useState(name);
  const submit = (event: Event) => {
    event.preventDefault();
    send({ act: "rename", name: typed.trim() || null });
  };
  return (
    <form onSubmit={submit}>
      <label>
        {words.settings.benchName}
        <input type="text" maxLength={24} autocomplete="off" value={typed} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain">
        {words.settings.rename}
      </button>
    </form>
  );
}

function SetAside({ view, send }: { view: View; send: Send }) {
  const counted = view.repeats.filter(({ status }) => status !== "set aside");
  const [chosen, choose] = useState<number | null>(null);
  const reason = useReason(view.plan);
  const repeat = counted.find((each) => each.repeat === chosen) ?? counted[counted.length - 1];
  if (!repeat) return null;
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.told) send({ act: "set_aside", repeat: repeat.repeat, reason: reason.told });
  };
  return (
    <form onSubmit={submit}>
      <h3>{words.settings.setAside}</h3>
      <label>
        {words.whichRepeat}
        <select value={repeat.repeat} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {counted.map((each) => (
            <option key={each.repeat} value={each.repeat}>
              {words.repeatName(each.repeat)}
            </option>
          ))}
        </select>
      </label>
      <ReasonField reason={reason} />
      <button type="submit" class="plain" disabled={reason.told === ""}>
        {words.settings.setAsideNow}
      </button>
    </form>
  );
}

/** The station takes a body of 16 KiB; a plan has hundreds of letters. */
const LONGEST_PLAN = 12_000;

/** A new practical begins with the plan in a file; what is wrong with it the station says. */
function ChoosePlan({ send, tell }: { send: Send; tell: (words: string) => void }) {
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    const text = file.size > LONGEST_PLAN ? null : await textOf(file).catch(() => null);
    input.value = "";
    if (text === null) tell(words.settings.noPlan);
    else send({ act: "choose_plan", plan_toml: text });
  };
  return (
    <label>
      {words.settings.choosePlan}
      <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
    </label>
  );
}

export function StaffControls({ view, take }: Props) {
  const [told, tell] = useState("");
  const send: Send = (act) =>
    void sendStaff(act).then((outcome) => {
      if (outcome.done) take({ kind: "state", data: outcome.state });
      tell(outcome.done ? words.settings.done : said(outcome.words ?? "") || words.doing.noAnswer);
    });
  const { shown } = view.results;
  const quiet = view.silent === true;
  return (
    <section class="settings-part">
      <h2>{words.settings.staffTitle}</h2>
      <p>{shown ? words.settings.resultsShown : words.settings.resultsHeld}</p>
      <button type="button" class="plain" onClick={() => send({ act: "show_results", shown: !shown })}>
        {shown ? words.settings.hideResults : words.settings.showResults}
      </button>
      <p>{quiet ? words.settings.isQuiet : words.settings.isLoud}</p>
      <button type="button" class="plain" onClick={() => send({ act: "quiet", silent: !quiet })}>
        {quiet ? words.settings.loud : words.settings.quiet}
      </button>
      <ChoosePlan send={send} tell={tell} />
      <Rename key={view.bench.name} name={view.bench.name} send={send} />
      <SetAside view={view} send={send} />
      <p class="told" role="status">
        {told}
      </p>
    </section>
  );
}
