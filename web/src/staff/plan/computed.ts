// Asking what the station computes from a plan, and the plan that goes along from page to page in one tab.

import { useEffect, useRef, useState } from "preact/hooks";
import { answered, get, post, randomId } from "../../live/ask";
import { type Session, isStaff } from "../../live/session";
import { keepInTab, keptInTab } from "../../live/tab";
import { phrase, said } from "../../words";
import type { Answer, PlanChecked, Plans, Promised } from "../contract";
import { type Values, formOf, valuesOf, withoutPrepared } from "./form";

const ANSWER_MS = 70_000;

/** Ask the station to compute. */
export async function compute<Found>(path: string, question: object): Promise<Answer<Found>> {
  const answer = await post(path, question, ANSWER_MS);
  const body = await answered<Found & { detail?: string; code?: string }>(answer);
  if (answer?.ok && body) return { found: body };
  return { found: null, code: body?.code ?? null, words: body?.detail ?? null };
}

const plansNow = (): Promise<Plans | null> => get<Plans>("/api/plans").catch(() => null);

const KEPT = "plan";

/** Keep the plan for the other pages of this tab; what staff made up only while staff are signed in. */
export function keepPlan(values: Values, staff: boolean): void {
  keepInTab(KEPT, staff ? values : withoutPrepared(values));
}

function keptPlan(staff: boolean): Values | null {
  const kept = keptInTab(KEPT) as Values | null;
  return kept && !staff ? withoutPrepared(kept) : kept;
}

/** The plan that this tab is about: what was chosen last, else the bench's; the bench's whole, also when what was chosen
 * is the same without what only staff know. */
export function planToBegin({ bench }: Plans, staff: boolean): Values {
  const kept = keptPlan(staff);
  const same = (one: Values, other: Values) => JSON.stringify(valuesOf(formOf(one))) === JSON.stringify(valuesOf(formOf(other)));
  return kept && !same(kept, withoutPrepared(bench)) ? kept : bench;
}

// Plans to choose from, as this device may see them.

interface Known {
  plans: Plans;
  staff: boolean;
}

/** Asked again when somebody signs in or out: what staff made up comes to staff alone. Null until it is there;
 * `silent` says that the station did not answer. */
export function usePlans(session: Session): { known: Known | null; silent: boolean } {
  const [known, know] = useState<Known | null>(null);
  const [silent, fall] = useState(false);
  const role = session.standing?.role;
  useEffect(() => {
    if (!role) return;
    void plansNow().then((plans) => {
      fall(plans === null);
      if (plans) know({ plans, staff: isStaff(role) });
    });
  }, [role]);
  return { known, silent };
}

// Asks the station about a plan whenever it changes: what is known at once, then what needs a fit.

/** So long nothing more is typed before the station is asked / ms. */
const PAUSE_MS = 250;

interface Computed {
  checked: PlanChecked | null;
  promise: Promised | null;
  busy: boolean;
  /** Why there is no prediction, in words. */
  refused: string;
  /** Ask for the comparison too; true when it came. */
  compare: () => Promise<boolean>;
}

export function useComputed(values: Values, staff: boolean): Computed {
  const [checked, check] = useState<PlanChecked | null>(null);
  const [promise, promised] = useState<Promised | null>(null);
  const [busy, wait] = useState(true);
  const [refused, refuse] = useState("");
  const [page] = useState(randomId);
  const newest = useRef(0);
  const key = JSON.stringify(values);

  const ask = async (turn: number) => {
    const answer = await compute<PlanChecked>("/api/plan", { plan: values });
    if (turn !== newest.current) return;
    check(answer.found);
    const why = answer.found ? "" : said(answer.words ?? "") || phrase("page-plan-no-answer");
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
    refuse(answer.found ? "" : said(answer.words ?? "") || phrase("page-plan-no-answer"));
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
