// How the page's files import each other: never in a circle, and the students' page nothing of other pages.

import assert from "node:assert/strict";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { test } from "node:test";
import { fileOfPart, kindCodes } from "../kinds.mjs";

/** What each file imports, by paths below web/. */
type Imports = ReadonlyMap<string, readonly string[]>;

/** A part of each kind of practical (`web/kinds.mjs`). */
const PART = /\bfrom\s+"@kinds\/(\w+)"/g;
const SPECIFIER = /^(?:import|export)\b[^"']*?\bfrom\s+"(\.[^"]*)"|^import\s+"(\.[^"]*)"|\bimport\("(\.[^"]*)"\)/gm;

/** Where a specifier leads; null for what is no TypeScript. */
function fileOf(from: string, specifier: string): string | null {
  const asked = path.posix.join(path.posix.dirname(from), specifier);
  const found = [`${asked}.ts`, `${asked}.tsx`, `${asked}.d.ts`, `${asked}/index.ts`].find((name) => existsSync(name));
  assert.ok(found || existsSync(asked), `${from} imports ${specifier}, which is not there`);
  return found ?? null;
}

/** Every import counts: of values, of types, and of what is fetched later. */
function importsOf(name: string): string[] {
  const text = readFileSync(name, "utf8").replace(/^\s*\/\/.*$/gm, "");
  const specifiers = [...text.matchAll(SPECIFIER)].map((match) => match[1] ?? match[2] ?? match[3] ?? "");
  const parts = [...text.matchAll(PART)].flatMap(([, part = ""]) => kindCodes().map((code) => fileOfPart(code, part)));
  return [...parts, ...specifiers.map((specifier) => fileOf(name, specifier)).filter((file) => file !== null)];
}

function importsBelow(folder: string): Imports {
  const names = readdirSync(folder, { recursive: true }).map((name) => `${folder}/${String(name).replaceAll("\\", "/")}`);
  const scripts = names.filter((name) => /\.tsx?$/.test(name));
  return new Map(scripts.map((name): [string, string[]] => [name, importsOf(name)]));
}

/** The files of one circle, the first once more at the end; none when there is no circle. */
function circleIn(imports: Imports): string[] {
  const left = new Set<string>();
  const way: string[] = [];
  const from = (name: string): string[] => {
    if (way.includes(name)) return [...way.slice(way.indexOf(name)), name];
    if (left.has(name)) return [];
    way.push(name);
    for (const next of imports.get(name) ?? []) {
      const circle = from(next);
      if (circle.length > 0) return circle;
    }
    way.pop();
    left.add(name);
    return [];
  };
  for (const name of imports.keys()) {
    const circle = from(name);
    if (circle.length > 0) return circle;
  }
  return [];
}

/** `name` and all that it imports, directly or not. */
function reachedFrom(name: string, imports: Imports, reached = new Set<string>()): ReadonlySet<string> {
  if (!reached.has(name)) {
    reached.add(name);
    for (const next of imports.get(name) ?? []) reachedFrom(next, imports, reached);
  }
  return reached;
}

const imports = importsBelow("src");

test("a circle is found and named", () => {
  const some = new Map([
    ["a", ["b", "c"]],
    ["b", []],
    ["c", ["d"]],
    ["d", ["b", "c"]],
  ]);
  assert.deepEqual(circleIn(some), ["c", "d", "c"]);
  assert.deepEqual(circleIn(new Map([...some, ["d", ["b"]]])), []);
});

test("imports of values, of types and of what is fetched later are seen", () => {
  const app = imports.get("src/app.tsx") ?? [];
  assert.ok(app.includes("src/page/header.tsx") && app.includes("src/live/contract.ts") && app.includes("src/bench/big.tsx"));
});

test("no files import each other in a circle", () => {
  // A language is fetched by words/index.ts, where the type stands that it has to be: that one way back is allowed.
  const languages = ["src/words/de.ts", "src/words/pseudo.ts"];
  const counted = [...imports].map(([name, others]): [string, readonly string[]] =>
    name === "src/words/index.ts" ? [name, others.filter((other) => !languages.includes(other))] : [name, others],
  );
  assert.equal(circleIn(new Map(counted)).join(" → "), "");
});

test("every file is reached from one of the pages", () => {
  const staff = ["staff/plan/page.tsx", "staff/prepare.tsx", "staff/checks/page.tsx", "staff/kit.tsx", "room/page.tsx"];
  const pages = ["main.tsx", ...staff, "manual/search.ts"];
  const reached = new Set(pages.flatMap((page) => [...reachedFrom(`src/${page}`, imports)]));
  const alone = [...imports.keys()].filter((name) => !reached.has(name) && name !== "src/chart/d3_parts.ts" && !name.endsWith(".d.ts"));
  assert.deepEqual(alone, []);
});

test("of the pages of staff and of the room, the students' page carries the sign-in alone", () => {
  const carried = [...reachedFrom("src/main.tsx", imports)].filter((name) => /^src\/(staff|room)\//.test(name));
  assert.deepEqual(carried, ["src/staff/sign_in.tsx"]);
});
