import assert from "node:assert/strict";
import { test } from "node:test";
import { type Seat, type Step, heard, hidden, newSeat, shown, tick } from "../src/live/election";

/** Tabs of one browser: notes reach every other tab before the next step. */
class Browser {
  seats = new Map<string, Seat>();
  now_ms = 0;

  private apply(id: string, step: Step): void {
    this.seats.set(id, step.seat);
    for (const kind of step.send) {
      for (const other of this.seats.keys()) {
        if (other === id) continue;
        this.apply(other, heard(this.seat(other), { kind, from: id }, this.now_ms));
      }
    }
  }

  seat(id: string): Seat {
    return this.seats.get(id) ?? newSeat(id);
  }

  show(id: string): void {
    this.apply(id, shown(this.seat(id), this.now_ms));
  }

  hide(id: string): void {
    this.apply(id, hidden(this.seat(id)));
  }

  /** The tab is gone without a word. */
  crash(id: string): void {
    this.seats.delete(id);
  }

  wait(ms: number): void {
    for (const end = this.now_ms + ms; this.now_ms < end; this.now_ms += 50) {
      for (const id of [...this.seats.keys()]) this.apply(id, tick(this.seat(id), this.now_ms));
    }
  }

  roles(role: string): string[] {
    return [...this.seats.values()].filter((seat) => seat.role === role).map((seat) => seat.id);
  }
}

const TABS = ["a1", "b2", "c3", "d4", "e5", "f6", "g7"];

function sevenTabs(): Browser {
  const browser = new Browser();
  for (const id of TABS) browser.show(id);
  browser.wait(2000);
  return browser;
}

test("a tab alone leads within half a second", () => {
  const browser = new Browser();
  browser.show("a1");
  browser.wait(500);
  assert.deepEqual(browser.roles("leader"), ["a1"]);
});

test("of seven tabs shown at once, exactly one leads and six follow", () => {
  const browser = sevenTabs();
  assert.equal(browser.roles("leader").length, 1);
  assert.equal(browser.roles("follower").length, 6);
});

test("a tab that comes later follows at once", () => {
  const browser = new Browser();
  browser.show("z9");
  browser.wait(1000);
  browser.show("a1");
  assert.equal(browser.seat("a1").role, "follower");
});

test("when the leader is hidden another tab leads within half a second", () => {
  const browser = sevenTabs();
  const [leader = ""] = browser.roles("leader");
  browser.hide(leader);
  assert.equal(browser.seat(leader).role, "hidden");
  browser.wait(500);
  assert.equal(browser.roles("leader").length, 1);
});

test("when the leader crashes another tab leads within four seconds, and one only", () => {
  const browser = sevenTabs();
  browser.crash(browser.roles("leader")[0] ?? "");
  browser.wait(4000);
  assert.equal(browser.roles("leader").length, 1);
  assert.equal(browser.roles("follower").length, 5);
});

test("two leaders end as one: the smaller id stays", () => {
  const browser = new Browser();
  browser.seats.set("a1", { id: "a1", role: "leader", due_ms: 0 });
  browser.seats.set("b2", { id: "b2", role: "leader", due_ms: 0 });
  browser.wait(1500);
  assert.deepEqual(browser.roles("leader"), ["a1"]);
});

test("a hidden tab hears nothing and does nothing", () => {
  const seat = newSeat("a1");
  assert.deepEqual(heard(seat, { kind: "beat", from: "b2" }, 0), { seat, send: [] });
  assert.deepEqual(tick(seat, 1e9), { seat, send: [] });
});
