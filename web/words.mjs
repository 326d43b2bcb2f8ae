// The catalogues of words, station/words/*.ftl (Project Fluent), for the page: an esbuild plugin that makes "@words",
// the English words and the list of languages, and "@words/CODE", the words of one language, which travel only when
// they are asked for: where the first view is to be light, in two parts, the second one as "@words/CODE/rest". Every catalogue is a language of the page; its file's name is the language's code.
//
// What a catalogue may hold: messages with text, values ({ $volume }), selectors by a value, references to other messages
// and to terms without values of their own. Attributes and functions are refused: numbers come as text. A word between
// <mean> and </mean> is explained on the page: its marks become the characters that web/src/words/marks.ts knows.
import { existsSync, readdirSync } from "node:fs";
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { FluentParser, lineOffset } from "@fluent/syntax";
import * as esbuild from "esbuild";
import { kinds } from "./kinds.mjs";

const web = path.dirname(fileURLToPath(import.meta.url));
export const FOLDER = path.join(web, "../station/words");
/** The language that every other one is held against, and that travels with the page. */
export const FIRST = "en";
/** Words that only the page says. The station gives its own messages their English text. */
const OF_THE_PAGE = "page-";
/** Its variants are the words that are explained, in the order of their marks. */
const GLOSSARY = "page-glossary-word";
/** Characters that no text has: one for each word of the glossary, the last one ends it. */
const FIRST_MARK = 0xfdd0;
const LAST_MARK = 0xfdef;
const MARK = /<(\/?)([a-z]+(?:-[a-z]+)*)>/g;
const MARKED = /[\ufdd0-\ufdef]/;
/** What the station says in the first view is written in these modules of it: instructions, questions, reagents, guide. */
const SAID_FIRST = [
  "words/__init__.py",
  "practical/prompts.py",
  "practical/set_up.py",
  "practical/questions.py",
  "practical/guide.py",
  "practical/checks/correction.py",
  "practical/plan.py",
  "practical/kinds/kind.py",
  "practical/kinds/*/kind.py",
  "practical/kinds/*/plan.py",
  "practical/kinds/*/prompts.py",
  "chemistry/acids.py",
  "chemistry/alkalis.py",
  "chemistry/hazards.py",
  "chemistry/liquids.py",
  "chemistry/reagents.py",
  "chemistry/salts.py",
];
/** Parts that are fetched by themselves and yet belong to the first view. */
const DRAWN_FIRST = ["src/bench/guide.tsx"];
const ID = /["'`]([a-z][a-z0-9]*(?:-[a-z0-9]+)+)["'`]/g;

/** The codes of all languages, English first. */
export async function codes(folder = FOLDER) {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".ftl")).map((name) => name.slice(0, -4));
  return names.sort((one, other) => (other === FIRST) - (one === FIRST) || (one < other ? -1 : 1));
}

/** Every message of a catalogue by its id, as web/src/words/fluent.ts reads it. */
export async function catalogue(code, folder = FOLDER) {
  const file = path.join(folder, `${code}.ftl`);
  return compiled(await readFile(file, "utf8"), path.basename(file));
}

/** The same of a text; `name` is the file's, for what is wrong in it. */
export function compiled(text, name) {
  const entries = new Map();
  const wrong = ({ span }, why) => new Error(`${name}:${lineOffset(text, span.start) + 1}: ${why}`);
  for (const entry of new FluentParser().parse(text).body) {
    if (entry.type === "Junk") throw wrong(entry, entry.annotations.map(({ message }) => message).join("; "));
    if (entry.type !== "Message" && entry.type !== "Term") continue;
    const id = (entry.type === "Term" ? "-" : "") + entry.id.name;
    if (entries.has(id)) throw wrong(entry, `${id} stands there twice`);
    if (entry.attributes.length > 0) throw wrong(entry, `${id} has an attribute`);
    entries.set(id, entry);
  }
  const open = [];
  const glossary = entries.get(GLOSSARY)?.value.elements[0].expression.variants.map(({ key }) => key.name) ?? [];

  function textOf(node) {
    return node.value.replace(MARK, (_, end, term) => {
      if (!glossary.includes(term)) throw wrong(node, `${GLOSSARY} has no ${term}`);
      return String.fromCharCode(end ? LAST_MARK : FIRST_MARK + glossary.indexOf(term));
    });
  }

  function referred(id, node) {
    const entry = entries.get(id);
    if (!entry) throw wrong(node, `no ${id}`);
    if (open.includes(id)) throw wrong(node, `${id} refers to itself`);
    open.push(id);
    const pattern = patternOf(entry.value);
    open.pop();
    return typeof pattern === "string" ? [pattern] : pattern;
  }

  function partsOf(node) {
    if (node.type === "TextElement") return [textOf(node)];
    if (node.type === "StringLiteral") return [node.parse().value];
    if (node.type === "Placeable") return partsOf(node.expression);
    if (node.type === "NumberLiteral") return [node.value];
    if (node.type === "VariableReference") return [[node.id.name]];
    if (node.type === "MessageReference" && !node.attribute) return referred(node.id.name, node);
    if (node.type === "TermReference" && !node.attribute && !node.arguments) return referred(`-${node.id.name}`, node);
    if (node.type === "SelectExpression" && node.selector.type === "VariableReference") {
      const variants = node.variants.map(({ key, value }) => [key.type === "Identifier" ? key.name : key.value, patternOf(value)]);
      const otherwise = node.variants.findIndex((variant) => variant.default);
      return [[node.selector.id.name, Object.fromEntries(variants), variants[otherwise][0]]];
    }
    throw wrong(node, `${node.type} is not for these catalogues`);
  }

  function patternOf({ elements }) {
    const parts = [];
    for (const part of elements.flatMap(partsOf)) {
      if (typeof part === "string" && typeof parts.at(-1) === "string") parts.push(parts.pop() + part);
      else parts.push(part);
    }
    if (parts.every((part) => typeof part === "string")) return parts.join("");
    return parts;
  }

  const messages = [...entries].filter(([id]) => !id.startsWith("-"));
  return Object.fromEntries(messages.map(([id, { value }]) => [id, patternOf(value)]));
}

/** What a pattern wants to be given: the names of its values, each with the variants chosen by it. */
export function valuesOf(pattern, found = new Map()) {
  if (typeof pattern === "string") return found;
  for (const part of pattern) {
    if (typeof part === "string") continue;
    const [name, variants] = part;
    found.set(name, new Set([...(found.get(name) ?? []), ...Object.keys(variants ?? {})]));
    for (const each of Object.values(variants ?? {})) valuesOf(each, found);
  }
  return found;
}

/** Whatever in a source may be the id of a message. */
export const idsIn = (source) => [...source.matchAll(ID)].map(([, id]) => id);

/** The sources of a bundle by their names in web/: the ids that each names, and what it imports, at once or later. */
async function sourcesOf(options) {
  const stub = {
    name: "stub",
    setup(build) {
      build.onResolve({ filter: /^@words/ }, ({ path: name }) => ({ path: name, external: true }));
    },
  };
  const { metafile } = await esbuild.build({ ...options, metafile: true, write: false, plugins: [stub, kinds] });
  const ours = Object.entries(metafile.inputs).filter(([name]) => name.startsWith("src/") || name.startsWith("kinds:"));
  const read = ours.map(async ([name, { imports }]) => [
    name,
    {
      ids: name.startsWith("src/") ? idsIn(await readFile(path.join(web, name), "utf8")) : [],
      needs: imports.filter(({ kind, external }) => kind === "import-statement" && !external).map(({ path: file }) => file),
    },
  ]);
  return new Map(await Promise.all(read));
}

/** The ids that these sources, and what they import at once, name. */
function idsFrom(sources, names) {
  const seen = new Set();
  const open = [...names];
  while (open.length > 0) {
    const name = open.pop();
    if (seen.has(name) || !sources.has(name)) continue;
    seen.add(name);
    open.push(...sources.get(name).needs);
  }
  return new Set([...seen].flatMap((name) => sources.get(name).ids));
}

/** The ids that these modules of the station name; a star stands for the name of a folder. */
async function idsOfTheStation(names) {
  const station = path.join(FOLDER, "..");
  const found = names.flatMap((name) => {
    const [before, after] = name.split("*");
    if (after === undefined) return [name];
    return readdirSync(path.join(station, before)).map((one) => before + one + after).filter((one) => existsSync(path.join(station, one)));
  });
  const texts = found.map((name) => readFile(path.join(station, name), "utf8"));
  return (await Promise.all(texts)).flatMap(idsIn);
}

/** The `plugin`. With `options`, those of a bundle, it brings only the words that the bundle may say, and in English at first
 * only those of what the bundle starts with; `further(file)` brings those of a part that comes later. With `inTwo` every
 * other language comes in two parts, too: what the first view says, and the rest after it. */
export function words({ options = null, inTwo = false } = {}) {
  let sources = null;
  let atFirst = null;
  let atAll = null;
  let toldFirst = null;

  async function further(file) {
    const more = idsFrom(sources, [path.relative(web, file).split(path.sep).join("/")]);
    const messages = Object.entries(await catalogue(FIRST)).filter(([id]) => more.has(id) && !atFirst.has(id));
    if (messages.length === 0) return "";
    const catalogueText = JSON.stringify(Object.fromEntries(messages));
    return `import { english } from "@words";\nObject.assign(english.catalogue, ${catalogueText});`;
  }

  /** The station gives its messages their English text, in which no word is marked. */
  const explains = (id, pattern) => !id.startsWith(OF_THE_PAGE) && MARKED.test(JSON.stringify(pattern));

  const isSplit = (code) => inTwo && code !== FIRST;

  async function restModule(code) {
    const { "language-name": _, "language-decimal": __, "language-dates": ___, ...messages } = await catalogue(code);
    const rest = Object.entries(messages).filter(([id]) => !toldFirst.has(id) && (atAll.has(id) || !id.startsWith(OF_THE_PAGE)));
    return `export const rest = ${JSON.stringify(Object.fromEntries(rest))};`;
  }

  async function languageModule(code) {
    const { "language-name": _, "language-decimal": sign, "language-dates": dates, ...messages } = await catalogue(code);
    const wanted = Object.entries(messages).filter(([id, pattern]) => {
      if (sources === null) return true;
      if (isSplit(code)) return toldFirst.has(id);
      return code === FIRST ? atFirst.has(id) || explains(id, pattern) : atAll.has(id) || !id.startsWith(OF_THE_PAGE);
    });
    return [
      `const catalogue = ${JSON.stringify(Object.fromEntries(wanted))};`,
      `export const language = ${JSON.stringify({ tag: code, dates: dates ?? code, decimalSign: sign ?? "." })};`,
      "Object.assign(language, { catalogue });",
      isSplit(code) ? `language.rest = () => import("@words/${code}/rest").then(({ rest }) => rest);` : "",
    ].join("\n");
  }

  async function listModule() {
    const lines = [];
    for (const code of await codes()) {
      const { "language-name": name = code } = await catalogue(code);
      const load = code === FIRST ? "Promise.resolve(english)" : `import("@words/${code}").then(({ language }) => language)`;
      lines.push(`  ${JSON.stringify(code)}: { name: ${JSON.stringify(name)}, load: () => ${load} },`);
    }
    return `import { language as english } from "@words/${FIRST}";\nexport { english };\nexport const languages = {\n${lines.join("\n")}\n};`;
  }

  const moduleOf = ([, code, rest]) => (code === undefined ? listModule() : rest ? restModule(code) : languageModule(code));

  const plugin = {
    name: "words",
    setup(build) {
      build.onStart(async () => {
        if (options === null) return;
        sources = await sourcesOf(options);
        atFirst = idsFrom(sources, Object.values(options.entryPoints));
        atAll = idsFrom(sources, sources.keys());
        toldFirst = new Set([...atFirst, ...idsFrom(sources, DRAWN_FIRST), ...(await idsOfTheStation(SAID_FIRST))]);
      });
      build.onResolve({ filter: /^@words(\/|$)/ }, ({ path: name }) => ({ path: name, namespace: "words" }));
      build.onLoad({ filter: /./, namespace: "words" }, async ({ path: name }) => ({
        contents: await moduleOf(name.split("/")),
        resolveDir: web,
        watchFiles: (await codes()).map((code) => path.join(FOLDER, `${code}.ftl`)),
        watchDirs: [FOLDER],
      }));
    },
  };
  return { plugin, further };
}
