// What teacher and technician may do to this bench.

import { useState } from "preact/hooks";
import type { Message, View } from "../contract";
import { type StaffAct, sendStaff } from "../session";
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

/** The pages of staff; a new practical begins with a plan on the first. */
function StaffPages() {
  return (
    <ul class="legend">
      {Object.entries(words.settings.pages).map(([address, name]) => (
        <li key={address}>
          <a class="to-bench" href={address}>
            {name}
          </a>
        </li>
      ))}
    </ul>
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
      <StaffPages />
      <p>{shown ? words.settings.resultsShown : words.settings.resultsHeld}</p>
      <button type="button" class="plain" onClick={() => send({ act: "show_results", shown: !shown })}>
        {shown ? words.settings.hideResults : words.settings.showResults}
      </button>
      <p>{quiet ? words.settings.isQuiet : words.settings.isLoud}</p>
      <button type="button" class="plain" onClick={() => send({ act: "quiet", silent: !quiet })}>
        {quiet ? words.settings.loud : words.settings.quiet}
      </button>
      <Rename key={view.bench.name} name={view.bench.name} send={send} />
      <SetAside view={view} send={send} />
      <p class="told" role="status">
        {told}
      </p>
    </section>
  );
}
