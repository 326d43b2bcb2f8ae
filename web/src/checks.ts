// The probe register and the check under way, as the station tells them; and what staff do about them.

import { useEffect, useRef, useState } from "preact/hooks";
import { get } from "./get";
import { type StaffAct, sendStaff } from "./session";

export type CheckKind = "ice" | "boiling" | "comparison" | "dip" | "cup";
export type Phase =
  | "prepare"
  | "settling"
  | "comparing"
  | "air"
  | "plunge"
  | "dipped"
  | "added"
  | "fill"
  | "warm"
  | "pour"
  | "mixed"
  | "weigh"
  | "found";
export type Rest = "" | "no_reading" | "too_short" | "moving" | "scattering" | "far";

/** What a check found: numbers by name; which there are depends on the check. */
export type Found = Readonly<Record<string, number>>;

export interface Check {
  check: CheckKind;
  probe_id: string | null;
  phase: Phase;
  why: Rest;
  left_s: number | null;
  /** As the probe says it, without any correction. */
  live: { time_s: number; temperature_c: number | null } | null;
  rest: { steady: boolean; temperature_c: number | null; u_c: number | null };
  moving_c_min: number | null;
  known_c: number | null;
  u_known_c: number | null;
  points: readonly { probe_c: number; reference_c: number }[];
  missing: string | null;
  found: Found | null;
}

interface Aged {
  day: string | null;
  clock_set: boolean;
  age_days: number | null;
}

export interface Checked extends Aged {
  number: number;
  check: CheckKind;
  withdrawn: boolean;
  used: boolean;
  values: Found;
}

export interface Probe {
  probe_id: string;
  at_work: boolean;
  /** Null: no good conversion was seen yet. */
  against: readonly string[] | null;
  samples: number;
  bad: Readonly<Record<string, number>>;
  checks: readonly Checked[];
}

export interface Cup extends Aged {
  label: string;
  values: Found;
}

export interface Checks {
  time_s: number;
  speed: number;
  probe_id: string | null;
  has_probe: boolean;
  under_way: boolean;
  check: Check | null;
  in_use: { text: string } | null;
  probes: readonly Probe[];
  cups: readonly Cup[];
}

const EVERY_MS = 1000;

export interface Watching {
  checks: Checks | null;
  /** When the newest answer came, by this page's own clock, ms. */
  at_ms: number;
  silent: boolean;
  again: () => void;
}

/** Ask once a second while the page is seen. */
export function useChecks(): Watching {
  const [watching, watch] = useState<Omit<Watching, "again">>({ checks: null, at_ms: 0, silent: false });
  const timer = useRef(0);
  const ask = async () => {
    clearTimeout(timer.current);
    if (document.visibilityState === "visible") {
      try {
        const checks = await get<Checks>("/api/checks");
        watch({ checks, at_ms: performance.now(), silent: false });
      } catch {
        watch((old) => ({ ...old, silent: true }));
      }
    }
    clearTimeout(timer.current);
    timer.current = window.setTimeout(() => void ask(), EVERY_MS);
  };
  useEffect(() => {
    void ask();
    return () => clearTimeout(timer.current);
  }, []);
  return { ...watching, again: () => void ask() };
}

/** Seconds since the newest sample; null without one. */
export function ageOf({ checks, at_ms }: Watching): number | null {
  const live = checks?.check?.live;
  if (!checks || !live) return null;
  return Math.max(0, (checks.time_s - live.time_s) / checks.speed) + (performance.now() - at_ms) / 1000;
}

/** Do it; resolves to words when it was refused, "" when it is done, null when there was no answer. */
export async function doIt(act: StaffAct): Promise<string | null> {
  const outcome = await sendStaff(act);
  return outcome.done ? "" : outcome.words;
}
