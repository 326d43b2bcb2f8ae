// The states that a browser's sound goes through. iOS's "interrupted" (screen locked, a call) exists in no browser on
// this machine: here a stand-in goes through it as WebKit does; the browser tests use the real thing for the rest.

import assert from "node:assert/strict";
import { test } from "node:test";
import { Sound, type Sounding } from "../src/page/sound";

interface StandIn extends Sounding {
  state: string;
  tones: number;
  wakes: boolean;
  change: () => void;
}

function standIn(wakes = true): StandIn {
  const one = {
    state: "suspended",
    tones: 0,
    wakes,
    change: () => undefined,
    currentTime: 0,
    destination: {},
    addEventListener: (_: string, listener: () => void) => {
      one.change = listener as () => undefined;
    },
    resume: async () => {
      if (one.wakes) one.state = "running";
      else throw new Error("interrupted");
    },
    close: async () => {
      one.state = "closed";
    },
    createGain: () => ({
      gain: { setValueAtTime: () => undefined, linearRampToValueAtTime: () => undefined },
      connect: (to: unknown) => to,
    }),
    createOscillator: () => ({
      frequency: { value: 0 },
      connect: (to: unknown) => to,
      start: () => {
        one.tones += 1;
      },
      stop: () => undefined,
    }),
  };
  return one as unknown as StandIn;
}

function soundOf(...contexts: StandIn[]) {
  let wanted = false;
  let opened = 0;
  const memory = { wanted: () => wanted, keep: (now: boolean) => (wanted = now) };
  const sound = new Sound(() => contexts[opened++] ?? assert.fail("one context too many"), memory);
  return { sound, opened: () => opened, remember: () => (wanted = true) };
}

test("it is off until somebody wants it, and off again when pressed again", async () => {
  const context = standIn();
  const { sound, opened } = soundOf(context);
  assert.equal(sound.hearing, "off");
  await sound.wake();
  assert.equal(opened(), 0, "a tap elsewhere opens nothing while no sound is wanted");
  await sound.press();
  assert.equal(sound.hearing, "on");
  assert.equal(context.tones, 2, "it says that it is on");
  await sound.press();
  assert.equal(sound.hearing, "off");
  assert.equal(context.state, "closed");
});

test("a page that was loaded again is asleep until a tap, and sounds nothing", async () => {
  const context = standIn();
  const { sound, remember } = soundOf(context);
  remember();
  assert.equal(sound.hearing, "asleep");
  sound.tone();
  await sound.wake(false);
  assert.equal(sound.hearing, "asleep", "without a tap nothing is opened");
  await sound.wake();
  assert.equal(sound.hearing, "on");
});

test("an interruption is told, and ends with the next tap", async () => {
  const context = standIn();
  const { sound } = soundOf(context);
  await sound.press();
  let told = 0;
  sound.onChange(() => (told += 1));
  context.state = "interrupted";
  context.change();
  assert.equal(told, 1);
  assert.equal(sound.hearing, "asleep");
  sound.tone();
  assert.equal(context.tones, 2, "no tone while nobody could hear it");
  await sound.wake();
  assert.equal(sound.hearing, "on");
});

test("a context that does not come back from an interruption is given up for a new one", async () => {
  const [lost, fresh] = [standIn(), standIn()];
  const { sound, opened } = soundOf(lost, fresh);
  await sound.press();
  lost.state = "interrupted";
  lost.wakes = false;
  await sound.wake();
  assert.equal(lost.state, "closed");
  assert.equal(opened(), 2);
  assert.equal(sound.hearing, "on");
});

test("a browser that stays silent is said to be asleep", async () => {
  const context = standIn(false);
  const { sound } = soundOf(context);
  await sound.press();
  assert.equal(sound.hearing, "asleep");
  assert.equal(context.tones, 0);
});
