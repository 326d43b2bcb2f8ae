// One act at a time: sends it, keeps the words of a refusal, hands the new state on.

import { useRef, useState } from "preact/hooks";
import { type Act, Keys, sendAct } from "../acts";
import type { Message } from "../contract";
import { randomId } from "../random";
import { words } from "../words";

export interface Acting {
  busy: boolean;
  /** Why the last act was not taken, in words; null when there is nothing to say. */
  trouble: string | null;
  /** Send an act; true when the station took it. A press while another act is under way does nothing. */
  send: (act: Act) => Promise<boolean>;
  dismiss: () => void;
}

export function useActing(take: (message: Message) => void): Acting {
  const keys = useRef<Keys>(new Keys(randomId));
  const sending = useRef(false);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  async function send(act: Act): Promise<boolean> {
    if (sending.current) return false;
    sending.current = true;
    setBusy(true);
    setTrouble(null);
    const outcome = await sendAct(act, keys.current);
    sending.current = false;
    setBusy(false);
    if (outcome.kind !== "unanswered" && outcome.state) take({ kind: "state", data: outcome.state });
    if (outcome.kind === "refused") setTrouble(outcome.words);
    if (outcome.kind === "unanswered") setTrouble(words.unanswered);
    return outcome.kind === "accepted";
  }
  return { busy, trouble, send, dismiss: () => setTrouble(null) };
}
