// Which plan benches are to begin with: the one they have, one that ships with the station, or one in a file.

import { useEffect, useState } from "preact/hooks";
import { get } from "../get";
import { textOf } from "../text_of";
import { said } from "../words";
import { roomWords as words } from "../words/room_topic";

/** What goes into the order: nothing, a plan's values, or the text of a file. */
export type Chosen = { plan?: object; plan_toml?: string; confirmed?: boolean };

interface Ready {
  name: string;
  plan: { title: string };
}

export interface Choice {
  chosen: Chosen;
  /** Whether a plan was chosen at all. */
  given: boolean;
  wrong: string;
  ready: readonly Ready[];
  at: string;
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
    say(file && found === null ? words().noPlan : "");
    confirm(false);
    read(found);
  };
  const plan = ready.find(({ name }) => name === at)?.plan;
  const chosen: Chosen = plan ? { plan } : at === FILE && text !== null ? { plan_toml: text, confirmed } : {};
  return { chosen, given: Object.keys(chosen).length > 0, wrong, ready, at, choose, confirmed, confirm, pick };
}

export function PlanChoice({ choice, own }: { choice: Choice; own: boolean }) {
  const { ready, at, choose, confirmed, confirm, pick } = choice;
  return (
    <>
      <label>
        {words().plan}
        <select value={at} onChange={(event) => choose(event.currentTarget.value)}>
          {own && <option value={OWN}>{words().ownPlan}</option>}
          {ready.map(({ name, plan }) => (
            <option key={name} value={name}>
              {said(plan.title)}
            </option>
          ))}
          <option value={FILE}>{words().planInFile}</option>
        </select>
      </label>
      {at === FILE && (
        <>
          <label>
            {words().planFile}
            <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
          </label>
          <label class="plan-confirm">
            <input type="checkbox" checked={confirmed} onChange={(event) => confirm(event.currentTarget.checked)} />
            <span>{words().confirm}</span>
          </label>
        </>
      )}
    </>
  );
}
