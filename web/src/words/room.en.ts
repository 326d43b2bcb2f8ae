// The room's page: board, lessons, class result.

import { ageParts } from "../age";
import { fixed, placesFor, rounded } from "../format";
import type { Code, Method, Need, QuantityName, Reason, StepName, Tile } from "../room/contract";

/** "40 s", "3 min" */
function lasting(seconds: number): string {
  return seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
}

const UNITS = { end_point_cm3: "cm³", enthalpy_kj_mol: "kJ/mol", change_c: "°C" } satisfies Record<QuantityName, string>;

export const room = {
  connecting: "Asking the room …",
  lost: "Nothing heard from the room for some seconds. What you see may be out of date.",
  fault: (reason: string) => `The room cannot collect just now: ${reason}`,
  none: "No bench has been heard yet. Benches appear here by themselves.",
  lesson: (label: string, began: string) => (label ? `${label}, since ${began}` : `Lesson since ${began}`),
  noLesson: "No lesson is under way.",
  counts: (help: number, look: number, all: number) =>
    help + look === 0 ? `All ${all} benches are well.` : `${help} need help, ${look} to look at, of ${all} benches.`,
  needs: { 0: "", 1: "", 2: "Have a look", 3: "Needs help" } satisfies Record<Need, string>,
  states: {
    ready: "not begun",
    alkali: "alkali’s temperature",
    start: "start temperature",
    pour: "to add a portion",
    settle: "settling",
    rinse: "rinsing",
    paused: "paused",
    done: "done",
    unknown: "nothing known yet",
  } satisfies Record<StepName, string>,
  where: ({ repeat, repeats_planned, portion, portions_planned }: Tile) =>
    `repeat ${repeat}/${repeats_planned}, portion ${portion}/${portions_planned}`,
  celsius: (temperature_c: number) => `${fixed(temperature_c, 1)} °C`,
  noTemperature: "– °C",
  age: (age_s: number) => {
    const { unit, count } = ageParts(age_s);
    return unit === "now" ? "now" : `${count} ${unit} ago`;
  },
  waits: (waits_s: number, usual_s: number | null) =>
    usual_s === null ? lasting(waits_s) : `${lasting(waits_s)} (class ${lasting(usual_s)})`,
  reasons: {
    trouble: ({ text = "" }) => text,
    unreadable: () => "Its record makes no sense here: begin a new practical on it.",
    silent: ({ seconds = 0 }) => `Nothing heard for ${lasting(seconds)}.`,
    probe_lost: () => "The probe does not answer.",
    bad_readings: ({ count = 0 }) => `${count} of the last readings failed: check the plug.`,
    not_begun: () => "Has not begun.",
    stuck: ({ seconds = 0 }) => `Nothing has happened for ${lasting(seconds)}.`,
    slow: ({ seconds = 0 }) => `Takes long: ${lasting(seconds)} at this step.`,
    paused: ({ seconds = 0 }) => `Paused for ${lasting(seconds)}.`,
    behind: () => "Behind the class.",
    question: ({ text = "" }) => `Open question: ${text}`,
    started_again: ({ count = 0 }) => `${count} repeats set aside.`,
    set_aside: ({ text = "" }) => `Started a repeat again: ${text}`,
  } satisfies Record<Code, (reason: Omit<Reason, "need" | "code">) => string>,
  open: (name: string) => `Open the page of ${name}`,
  choose: (name: string) => `Choose ${name}`,
  projector: "For the projector",
  noProjector: "Back to the board",
  boardTitle: "Benches",

  tellTitle: "Tell benches",
  toAll: "All benches",
  toSome: (count: number) => (count === 1 ? "One bench chosen" : `${count} benches chosen`),
  chooseSome: "Choose some",
  chooseAll: "All again",
  acts: {
    show: "Show the results",
    hold: "Hold the results back",
    quiet: "Silence the buzzers",
    loud: "Let the buzzers sound",
    pause: "Pause",
    resume: "Go on",
  },
  rename: "Rename",
  newName: "New name of the bench",
  setAside: "Set a repeat aside",
  whichRepeat: "Which repeat",
  repeatName: (repeat: number) => `Repeat ${repeat}`,
  why: "Why",
  told: "Told. A bench that is away does it when it is back.",
  noAnswer: "The room did not answer. Nothing was told; try again.",
  left: "Not done yet",
  leftPending: (act: string, benches: string) => `${act}: ${benches} (away)`,
  leftRefused: (act: string, bench: string, why: string) => `${act}: ${bench} did not: ${why}`,
  orderNames: {
    choose_plan: "New practical",
    show_results: "Results",
    quiet: "Buzzer",
    rename: "Rename",
    set_aside: "Set aside",
    pause: "Pause",
    resume: "Go on",
  } as Record<string, string>,
  takeBack: "Take back what is not done yet",

  lessonTitle: "Lesson",
  begin: "Begin a lesson",
  beginWhy: "Every bench begins a new practical; what was measured before is kept. A bench in the middle of a repeat goes on; tell it again when it has finished.",
  label: "Class (a label, no names)",
  plan: "Plan",
  ownPlan: "the one each bench has",
  planInFile: "from a file",
  planFile: "Plan (plan.toml)",
  confirm: "If a solution is above 1.0 mol/dm³: I have checked it against the school’s risk assessment.",
  newPractical: "Begin a new practical",
  noPlan: "This file cannot be a plan: it is too large or cannot be read.",
  end: "End the lesson",
  lessonsTitle: "Lessons",
  noLessons: "No lesson yet.",
  lessonHead: { began: "Began", label: "Class", benches: "Benches", result: "Class result" },
  toResult: "Open",
  underWay: "under way",

  address: "Other devices find the room at",
  qr: (address: string) => `QR code of ${address}`,

  classTitle: "Class result",
  withheld: "The class result is held back until every bench shows its own: it would tell those that do not.",
  waitsFor: (benches: string) => `Still held back on: ${benches}.`,
  nobody: "No bench has begun yet.",
  calculating: "Being computed …",
  meaning: "What it says",
  quantities: {
    end_point_cm3: "End-point",
    enthalpy_kj_mol: "Enthalpy",
    change_c: "Temperature change",
  } satisfies Record<QuantityName, string>,
  methods: { heat_balance: "heat balance", straight_lines: "straight lines" } satisfies Record<Method, string>,
  inUnit: (quantity: QuantityName) => UNITS[quantity],
  value: (value: number, u: number) => {
    const places = placesFor(u, 2);
    return `${rounded(value, places)} ± ${rounded(u, places)}`;
  },
  plotTitle: (quantity: string, method: string) => `${quantity} by ${method}`,
  plotWhy: "A dot is a bench’s value, its line the 95 % interval; an arrow: it goes on. The band is the class’s mean with its 95 % interval.",
  plotValue: (name: string, value: string, low: string, high: string) => `${name}: ${value} (95 %: ${low} to ${high})`,
  classMean: "class",
  tableTitle: "All benches",
  bench: "Bench",
  repeats: "Repeats",
  noValue: "none",
  notPooled: "other plan",
  oddTitle: "Benches that stand off",
  oddWhy: "Nothing is left out by itself.",
  noOdd: "No bench stands off the others.",
  curveTitle: "Mean curve of the class",
  curveAcross: "alkali added / cm³",
  curveUp: "change since the start / °C",
  curveWhy: (count: number) => `Mean of ${count} benches; bars are the scatter between benches (one standard deviation).`,
  files: "To take away",
  fileNames: {
    sheet: "Everything as a spreadsheet",
    results: "Results of all benches",
    resultsComma: "Results, decimal comma",
    readings: "Readings of all benches",
    readingsComma: "Readings, decimal comma",
    events: "Every event of every bench",
  },
  print: "Print the class sheet",
  printHint: "One side of A4.",
  fileTitle: (label: string, day: string) => `${label || "class"} ${day}`,
};
