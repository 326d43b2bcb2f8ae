// The page of the kit: is it ready, where is it found, and what staff do with it.

export type Colour = "green" | "amber" | "red" | "unknown";

export const kit = {
  ready: "Is this kit ready?",
  verdict: {
    green: "Ready: nothing needs mending.",
    amber: "Usable. Mind what stands first below.",
    red: "Not ready. Mend what stands first below.",
  } satisfies Record<Exclude<Colour, "unknown">, string>,
  colour: { green: "in order", amber: "mind", red: "mend", unknown: "cannot be told" } satisfies Record<Colour, string>,
  looking: "Looking at the kit …",
  again: "Look again",
  age: (s: number) => `Looked at ${s} s ago.`,
  noAnswer: "The station did not answer. Try again.",
  beside: "While the station is at work only its own samples are judged; the probe is not read for this.",
  next: "Next:",
  figures: "Figures",
  inOrder: (n: number) => (n === 1 ? "1 thing is in order" : `${n} things are in order`),
  untold: (n: number) => (n === 1 ? "1 thing cannot be told here" : `${n} things cannot be told here`),
  names: {
    settings: "settings",
    plan: "plan",
    bus: "one-wire bus",
    probe: "probe",
    probe_power: "probe’s supply",
    probe_resolution: "probe’s resolution",
    probe_guard: "kernel’s check",
    probe_reads: "reads",
    probe_noise: "noise",
    conversion_time: "conversion",
    probe_kind: "chip",
    pins: "panel",
    storage: "storage",
    free_space: "free space",
    journal: "record",
    clock: "clock",
    power: "power",
    network: "network",
    port: "port",
    versions: "versions",
    check: "check",
  },
  checksHint: "Offset and age of the probe:",
  checks: "probe checks",

  address: "Where other devices find it",
  qr: (address: string) => `QR code of ${address}`,
  versions: "Versions",

  lamps: "Lamps and buzzer",
  lampsWhy: "Wait, act and attention light in turn, then all three, with one beep. The practical goes on meanwhile.",
  tryLamps: "Test the lamps",
  trying: "Look at the panel now.",

  records: "All records",
  recordsWhy: "Every practical of this station in one zip: samples, readings, spreadsheet and journal of each. Results that are held back are left out.",
  recordsLink: "Download all records",

  sending: "Working …",
};
