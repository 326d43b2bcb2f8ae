// Writes src/words/messages.d.ts, the ids of all messages and the values of each, from the English catalogue. It is not
// kept in git: `npm run check`, `npm test` and the build write it anew.
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { FIRST, catalogue, valuesOf } from "./words.mjs";

const FILE = path.join(path.dirname(fileURLToPath(import.meta.url)), "src/words/messages.d.ts");
const PLURALS = ["zero", "one", "two", "few", "many", "other"];

/** A value that only fills in is a number or a text; one that chooses is a number, one of its codes, or any code. */
function typeOf(variants) {
  const names = [...variants];
  if (names.length === 0) return "string | number";
  const numbers = names.filter((name) => /^\d+$/.test(name) || PLURALS.includes(name));
  if (numbers.length === names.length) return "number";
  if (names.includes("other")) return "string";
  return names.map((name) => JSON.stringify(name)).join(" | ");
}

/** The text of the file. */
export function typesOf(messages) {
  const lines = Object.entries(messages).map(([id, pattern]) => {
    const values = [...valuesOf(pattern)].map(([name, variants]) => `${name}: ${typeOf(variants)}`);
    return `  "${id}": ${values.length === 0 ? "null" : `{ ${values.join("; ")} }`};`;
  });
  return `// Written by web/messages.mjs; edit station/words/${FIRST}.ftl instead.\n\nexport interface Values {\n${lines.join("\n")}\n}\n`;
}

/** Write the file where it is missing or not up to date. */
export async function writeMessages() {
  const text = typesOf(await catalogue(FIRST));
  if (text !== (await readFile(FILE, "utf8").catch(() => ""))) await writeFile(FILE, text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeMessages();
