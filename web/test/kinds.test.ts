// A kind of practical has its own folder below src/kinds: nobody else tells kinds apart.

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";
import { CODES } from "../src/kinds";

const CODE = `"(?:${CODES.join("|")})"`;
const TELLING = new RegExp(`(?<!\\.)\\b(?:isOnce|addsSolid)\\b|\\bkind\\s*[!=]==?\\s*${CODE}|${CODE}\\s*[!=]==?\\s*\\S*\\bkind\\b|\\bcase ${CODE}:`);

function tellingIn(text: string): string[] {
  return text.split("\n").filter((line) => TELLING.test(line.replace(/\/\/.*$/, "")));
}

test("telling kinds apart is seen", () => {
  for (const line of ["if (isOnce(view))", 'plan.kind === "once" ? 1 : 2', '"portions" !== form.kind', 'case "once":']) {
    assert.equal(tellingIn(line).length, 1, line);
  }
  assert.deepEqual(tellingIn('view.thermometer.kind === "typed"'), []);
});

test("nobody outside src/kinds asks which kind a practical is", () => {
  const names = readdirSync("src", { recursive: true }).map((name) => String(name).replaceAll("\\", "/"));
  const outside = names.filter((name) => /\.tsx?$/.test(name) && !name.startsWith("kinds/"));
  assert.ok(outside.length > 80);
  const found = outside.filter((name) => tellingIn(readFileSync(`src/${name}`, "utf8")).length > 0);
  assert.deepEqual(found, []);
});
