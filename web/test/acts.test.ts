import assert from "node:assert/strict";
import { test } from "node:test";
import { Keys, readAnswer } from "../src/live/acts";
import { stateWith } from "./example";

function counting(): () => string {
  let count = 0;
  return () => `key ${++count}`;
}

test("an act without an answer keeps its key, so that pressing again adds nothing twice", () => {
  const keys = new Keys(counting());
  const act = { act: "portion_added", portion: 3 };
  assert.equal(keys.of(act), "key 1");
  assert.equal(keys.of({ ...act }), "key 1");
  assert.equal(keys.of({ ...act, portion: 4 }), "key 2");
});

test("an answered act gets a new key when it is meant anew", () => {
  const keys = new Keys(counting());
  keys.of({ act: "pause" });
  keys.answered({ act: "pause" });
  assert.equal(keys.of({ act: "pause" }), "key 2");
});

test("an accepted act brings the new state", async () => {
  const outcome = await readAnswer(Response.json({ accepted: true, seq: 11, state: stateWith({ seq: 11 }) }));
  assert.equal(outcome.kind === "accepted" && outcome.state.seq, 11);
});

test("a refusal brings the station's own words and its state", async () => {
  const body = { title: "Not now", detail: "Portion 3 is already in.", state: stateWith() };
  const outcome = await readAnswer(Response.json(body, { status: 409 }));
  assert.ok(outcome.kind === "refused");
  assert.equal(outcome.words, "Portion 3 is already in.");
  assert.equal(outcome.state?.seq, 10);
});

test("a refusal without a body still says something", async () => {
  const outcome = await readAnswer(new Response("", { status: 403, statusText: "Forbidden" }));
  assert.ok(outcome.kind === "refused" && outcome.words === "403 Forbidden");
});

test("a fault of the station is no answer: the act may have been recorded", async () => {
  assert.equal((await readAnswer(new Response("oops", { status: 502 }))).kind, "unanswered");
  assert.equal((await readAnswer(new Response("<html>", { status: 200 }))).kind, "unanswered");
});
