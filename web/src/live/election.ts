// Which tab of a browser holds the stream: a pure state machine, time and notes in, notes out.
//
// Web Locks would do it, but plain http has none. Every shown tab either leads (holds the stream and passes on what
// it hears) or follows. A leader sends a beat; a follower that misses it for too long stands up. Two leaders meet
// when their beats cross: the one with the larger id stands down.

export interface Note {
  kind: "ask" | "beat" | "bye";
  from: string;
}

type Role = "hidden" | "asking" | "leader" | "follower";

export interface Seat {
  id: string;
  role: Role;
  /** When to act next / ms on the page's clock: send a beat, or stand up. */
  due_ms: number;
}

export interface Step {
  seat: Seat;
  send: Note["kind"][];
}

const BEAT_MS = 1000;
const PATIENCE_MS = 2600;
const ASK_MS = 250;

/** A share of [0, 1) that differs between tabs, so that two followers seldom stand up at once. */
function jitter(id: string): number {
  let sum = 0;
  for (const letter of id) sum = (sum * 31 + letter.charCodeAt(0)) % 997;
  return sum / 997;
}

export function newSeat(id: string): Seat {
  return { id, role: "hidden", due_ms: Infinity };
}

/** The tab became visible: ask whether somebody leads. */
export function shown(seat: Seat, now_ms: number): Step {
  if (seat.role !== "hidden") return { seat, send: [] };
  return { seat: { ...seat, role: "asking", due_ms: now_ms + ASK_MS * (1 + jitter(seat.id)) }, send: ["ask"] };
}

/** The tab was hidden or closed: a leader says goodbye. */
export function hidden(seat: Seat): Step {
  return { seat: { ...seat, role: "hidden", due_ms: Infinity }, send: seat.role === "leader" ? ["bye"] : [] };
}

/** A note of another tab. */
export function heard(seat: Seat, note: Note, now_ms: number): Step {
  const silent = { seat, send: [] };
  if (seat.role === "hidden" || note.from === seat.id) return silent;
  const follow: Seat = { ...seat, role: "follower", due_ms: now_ms + PATIENCE_MS * (1 + jitter(seat.id) / 4) };
  if (note.kind === "beat") {
    if (seat.role === "leader" && seat.id < note.from) return { seat, send: ["beat"] };
    return { seat: follow, send: [] };
  }
  if (note.kind === "ask") return seat.role === "leader" ? { seat, send: ["beat"] } : silent;
  return seat.role === "follower"
    ? { seat: { ...seat, due_ms: now_ms + ASK_MS * jitter(seat.id) }, send: [] }
    : silent;
}

/** Time passed. */
export function tick(seat: Seat, now_ms: number): Step {
  if (seat.role === "hidden" || now_ms < seat.due_ms) return { seat, send: [] };
  return { seat: { ...seat, role: "leader", due_ms: now_ms + BEAT_MS }, send: ["beat"] };
}
