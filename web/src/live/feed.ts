// Keeps the model up to date: one stream per browser where tabs can share it, polling where no stream comes through.
//
// Rules: a hidden page holds no stream and reloads the state when shown; whatever was missed is mended by a fresh
// state; a stream that is silent for 5 s is given up for polling, and tried again later.

import { base, get, randomId } from "./ask";
import type { Message, Sample, State, Told } from "./contract";
import { type Note, type Seat, type Step, heard, hidden, newSeat, shown, tick } from "./election";
import { remember } from "../words";
import { type Model, type Wanted, fold, nothingHeard, wantedTrace } from "./model";

const TICK_MS = 250;
const SILENCE_MS = 5000;
const POLL_MS = 1000;
const TRY_STREAM_AGAIN_MS = 30_000;

interface Letter {
  note?: Note;
  relay?: Message;
}

export class Feed {
  model: Model = nothingHeard;
  private seat: Seat = newSeat(randomId());
  private readonly channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(`station ${base()}`) : null;
  private stream: EventSource | null = null;
  private streamHeard_ms = 0;
  private tryStream_ms = 0;
  private loading = false;
  private loadFailed = false;
  private nextLoad_ms = 0;
  private loadingTrace = false;
  /** How often a whole state was loaded. */
  private loads = 0;
  private nextTrace_ms = 0;

  constructor(private readonly changed: (model: Model) => void) {}

  start(): void {
    this.channel?.addEventListener("message", (event: MessageEvent<Letter>) => this.onLetter(event.data));
    const look = () => (document.visibilityState === "visible" ? this.show() : this.hide());
    document.addEventListener("visibilitychange", look);
    window.addEventListener("pageshow", look);
    window.addEventListener("pagehide", () => this.hide());
    window.addEventListener("online", () => this.missed());
    setInterval(() => this.tick(), TICK_MS);
    look();
  }

  /** Take a message in, wherever it came from. */
  take(message: Message): void {
    remember("data" in message ? message.data : null);
    this.model = fold(this.model, message, performance.now());
    this.changed(this.model);
  }

  private show(): void {
    if (this.seat.role !== "hidden") return;
    this.missed();
    this.step(shown(this.seat, performance.now()));
    this.tick();
  }

  private hide(): void {
    this.step(hidden(this.seat));
    this.closeStream();
  }

  private missed(): void {
    this.model = { ...this.model, reload: true };
    this.nextLoad_ms = 0;
  }

  private step({ seat, send }: Step): void {
    this.seat = seat;
    if (seat.role !== "leader") this.closeStream();
    for (const kind of send) this.channel?.postMessage({ note: { kind, from: seat.id } } satisfies Letter);
  }

  private onLetter(letter: Letter): void {
    if (letter.note) this.step(heard(this.seat, letter.note, performance.now()));
    const listens = this.seat.role === "follower" || this.seat.role === "asking";
    if (letter.relay && listens) this.take(letter.relay);
  }

  /** A message the leader heard first-hand: taken in, and passed on to the other tabs. */
  private pass(message: Message): void {
    this.take(message);
    if (this.seat.role === "leader") this.channel?.postMessage({ relay: message } satisfies Letter);
  }

  private tick(): void {
    if (this.seat.role === "hidden") return;
    const now = performance.now();
    this.step(tick(this.seat, now));
    const silent = now - (this.model.heard_ms ?? 0) > SILENCE_MS;
    const polling = this.seat.role === "leader" ? this.stream === null : silent;
    if ((this.model.reload || polling) && !this.loading && now >= this.nextLoad_ms) void this.load();
    this.completeTraces(now);
    if (this.seat.role !== "leader") return;
    if (this.stream) {
      if (now - this.streamHeard_ms > SILENCE_MS) this.giveUpStream();
    } else if (!this.model.reload && now >= this.tryStream_ms) this.openStream();
  }

  private async load(): Promise<void> {
    this.loading = true;
    try {
      const known = this.model.view?.repeats_id;
      const asked = known === undefined ? "" : `?repeats_id=${encodeURIComponent(known)}`;
      const data = await get<Told<State>>(`${base()}/state${asked}`);
      this.loads += 1;
      this.pass({ kind: "state", data });
      if (this.loadFailed) this.tryStream_ms = 0; // the station is back
      this.loadFailed = false;
    } catch {
      this.loadFailed = true;
    } finally {
      this.loading = false;
      this.nextLoad_ms = performance.now() + POLL_MS * (0.9 + 0.2 * Math.random());
    }
  }

  private completeTraces(now: number): void {
    const { view, traces, opened, reload } = this.model;
    if (!view || reload || this.loadingTrace || now < this.nextTrace_ms) return;
    const wanted = wantedTrace(traces, view, opened);
    if (wanted) void this.loadTrace(wanted);
  }

  private async loadTrace({ repeat, started_s }: Wanted): Promise<void> {
    this.loadingTrace = true;
    const loads = this.loads;
    try {
      const { samples } = await get<{ samples: Sample[] }>(`${base()}/samples?repeat=${repeat}`);
      // Between this answer and a state that was loaded meanwhile samples may be missing: it is asked for again.
      if (loads !== this.loads || this.model.reload) return;
      this.take({ kind: "samples", data: { repeat, started_s, samples } });
    } catch {
      this.nextTrace_ms = performance.now() + POLL_MS;
    } finally {
      this.loadingTrace = false;
    }
  }

  private openStream(): void {
    const stream = new EventSource(`${base()}/stream?after=${this.model.seq}&repeats=changed`);
    this.stream = stream;
    this.streamHeard_ms = performance.now();
    for (const kind of ["happened", "view", "live", "reset"] as const) {
      stream.addEventListener(kind, (event) => {
        if (stream !== this.stream) return;
        this.streamHeard_ms = performance.now();
        const text = (event as MessageEvent<string>).data;
        this.pass((kind === "reset" ? { kind } : { kind, data: JSON.parse(text) }) as Message);
        if (kind === "reset") this.closeStream();
      });
    }
    stream.addEventListener("error", () => {
      // A refused stream stays closed; a broken one is reopened by the browser with the last event's id.
      if (stream === this.stream && stream.readyState === EventSource.CLOSED) this.giveUpStream();
    });
  }

  private giveUpStream(): void {
    this.closeStream();
    this.tryStream_ms = performance.now() + TRY_STREAM_AGAIN_MS;
    this.nextLoad_ms = 0;
  }

  private closeStream(): void {
    this.stream?.close();
    this.stream = null;
  }
}
