// One act at a time: sends it, keeps the words of a refusal, hands the new state on. An act of a device that has not
// given the bench's code yet is held until it has.

import { useRef, useState } from "preact/hooks";
import { type Act, Keys, sendAct } from "../acts";
import type { Message } from "../contract";
import { randomId } from "../random";
import type { Admission } from "../session";
import { said, words } from "../words";
import type { Session } from "./signing";

export interface Acting {
  busy: boolean;
  /** Why the last act was not taken, in words; null when there is nothing to say. */
  trouble: string | null;
  /** Send an act; true when the station took it. A press while another act is under way does nothing. */
  send: (act: Act) => Promise<boolean>;
  dismiss: () => void;
  /** True while an act waits for the bench's code. */
  asksCode: boolean;
  /** Give the code; the act that waits is done when it is right. */
  giveCode: (code: string) => Promise<Admission>;
  /** Leave the act that waits undone. */
  leaveCode: () => void;
}

interface Held {
  act: Act;
  settle: (taken: boolean) => void;
}

export function useActing(take: (message: Message) => void, session: Session): Acting {
  const keys = useRef<Keys>(new Keys(randomId));
  const sending = useRef(false);
  const held = useRef<Held | null>(null);
  const [busy, setBusy] = useState(false);
  const [asksCode, askCode] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  function hold(act: Act): Promise<boolean> {
    held.current?.settle(false);
    askCode(true);
    return new Promise((settle) => {
      held.current = { act, settle };
    });
  }

  async function transmit(act: Act): Promise<boolean> {
    if (sending.current) return false;
    sending.current = true;
    setBusy(true);
    setTrouble(null);
    const outcome = await sendAct(act, keys.current);
    sending.current = false;
    setBusy(false);
    if (outcome.kind !== "unanswered" && outcome.state) take({ kind: "state", data: outcome.state });
    if (outcome.kind === "refused" && outcome.code === "needs_code") {
      session.refresh();
      return hold(act);
    }
    if (outcome.kind === "refused") setTrouble(said(outcome.words));
    if (outcome.kind === "unanswered") setTrouble(words.unanswered);
    return outcome.kind === "accepted";
  }

  async function giveCode(code: string): Promise<Admission> {
    const admission = await session.signIn({ code });
    const waiting = held.current;
    if (admission.admitted && waiting) {
      held.current = null;
      askCode(false);
      waiting.settle(await transmit(waiting.act));
    }
    return admission;
  }

  return {
    busy,
    trouble,
    send: (act) => (session.standing?.needs_code ? hold(act) : transmit(act)),
    dismiss: () => setTrouble(null),
    asksCode,
    giveCode,
    leaveCode: () => {
      held.current?.settle(false);
      held.current = null;
      askCode(false);
    },
  };
}
