// Staff test the lamps and the buzzer of the panel.

import { useState } from "preact/hooks";
import { said } from "../words";
import { words } from "./kit_looking";

export function LampsTest() {
  const [told, tell] = useState("");
  const test = async () => {
    tell(words().sending);
    const answer = await fetch("/api/kit/lamps", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: "{}",
    }).catch(() => null);
    const problem = answer?.ok ? null : ((await answer?.json().catch(() => null)) as { detail?: string } | null);
    tell(answer?.ok ? words().trying : said(problem?.detail ?? "") || words().noAnswer);
  };
  return (
    <section class="kit-part">
      <h2>{words().lamps}</h2>
      <p>{words().lampsWhy}</p>
      <p>
        <button type="button" class="in-head" onClick={() => void test()}>
          {words().tryLamps}
        </button>
      </p>
      <p class="told" aria-live="polite">
        {told}
      </p>
    </section>
  );
}
