// Asks the station about a plan whenever it changes: what is known at once, then what needs a fit.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Values } from "../plan_form";
import { type Checked, type Promised, compute } from "../planning";
import { randomId } from "../random";
import { said } from "../words";
import { planWords as words } from "../words/plan_topic";

/** So long nothing more is typed before the station is asked / ms. */
const PAUSE_MS = 250;

export interface Computed {
  checked: Checked | null;
  promise: Promised | null;
  busy: boolean;
  /** Why there is no prediction, in words. */
  refused: string;
  /** Ask for the comparison too; true when it came. */
  compare: () => Promise<boolean>;
}

export function useComputed(values: Values, staff: boolean): Computed {
  const [checked, check] = useState<Checked | null>(null);
  const [promise, promised] = useState<Promised | null>(null);
  const [busy, wait] = useState(true);
  const [refused, refuse] = useState("");
  const [page] = useState(randomId);
  const newest = useRef(0);
  const key = JSON.stringify(values);

  const ask = async (turn: number) => {
    const answer = await compute<Checked>("/api/plan", { plan: values });
    if (turn !== newest.current) return;
    check(answer.found);
    const why = answer.found ? "" : said(answer.words ?? "") || words().noAnswer;
    if (!answer.found?.plan) {
      refuse(why);
      wait(false);
      return;
    }
    await predict(turn, false);
  };

  const predict = async (turn: number, compare: boolean): Promise<boolean> => {
    const answer = await compute<Promised>("/api/plan/prediction", { plan: values, page, compare });
    if (turn !== newest.current) return false;
    wait(false);
    const problem = answer.found?.refused_plan;
    // What only the fit finds out stands beside its field like all else.
    if (problem) check((old) => old && { ...old, problems: [problem] });
    else if (answer.found) promised(answer.found);
    else if (!compare) promised(null);
    refuse(answer.found ? "" : said(answer.words ?? "") || words().noAnswer);
    return answer.found !== null;
  };

  useEffect(() => {
    newest.current += 1;
    const turn = newest.current;
    wait(true);
    const timer = setTimeout(() => void ask(turn), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [key, staff]);

  return { checked, promise, busy, refused, compare: () => predict(newest.current, true) };
}
