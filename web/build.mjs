// Bundles the pages: `node build.mjs [OUT] [--watch]`. OUT defaults to ../station/page.
// Files get hashed names; each page's HTML, written last, names the script and the style it starts with. What is
// imported with `import()` travels only when it is asked for. The bench's page is bundled by itself, so that no other
// page changes what it starts with; STAFF lists the pages of staff, NAME.html each; MANUAL is what the frame of the manual's
// pages needs, which the server puts them into.
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { writeMessages } from "./messages.mjs";
import { kinds } from "./kinds.mjs";
import { words as catalogues } from "./words.mjs";

const web = path.dirname(fileURLToPath(import.meta.url));
const words = process.argv.slice(2);
const watch = words.includes("--watch");
const out = path.resolve(words.find((word) => !word.startsWith("--")) ?? path.join(web, "../station/page"));

const BENCH = { page: "src/main.tsx", style: "src/style.css" };
const STAFF = {
  plan: "src/staff/plan/page.tsx",
  prepare: "src/staff/prepare.tsx",
  checks: "src/staff/checks/page.tsx",
  kit: "src/staff/kit.tsx",
  room: "src/room/page.tsx",
  staff: "src/staff.css",
};
const MANUAL = { search: "src/manual/search.ts", manual: "src/manual/manual.css" };

/** What each bundle wrote last. */
const written = new Map();

async function writeHtml(name, outputs, script, { style, frame = "index.html" }) {
  const builtFrom = (source) => path.basename(outputs.find(([, { entryPoint }]) => entryPoint === source)[0]);
  // What the script imports is asked for together with it, not after it has been read.
  const needed = outputs.find(([file]) => path.basename(file) === builtFrom(script))[1].imports;
  const preload = needed
    .filter(({ kind }) => kind === "import-statement")
    .map(({ path: file }) => `<link rel="modulepreload" href="/page/${path.basename(file)}">`)
    .join("\n    ");
  const template = await readFile(path.join(web, frame), "utf8");
  const html = template.replace("{{style}}", builtFrom(style)).replace("{{preload}}", preload);
  await writeFile(path.join(out, name), html.replace("{{script}}", builtFrom(script)));
}

async function writeFiles(bundle, result) {
  const outputs = Object.entries(result.metafile.outputs);
  await mkdir(out, { recursive: true });
  for (const file of result.outputFiles) await writeFile(path.join(out, path.basename(file.path)), file.contents);
  const html = bundle.pages.map(([name]) => `${name}.html`);
  for (const [name, script] of bundle.pages) await writeHtml(`${name}.html`, outputs, script, bundle);
  written.set(bundle, [...outputs.map(([name]) => path.basename(name)), ...html]);
  if (written.size < bundles.length) return;
  const fresh = [...written.values()].flat();
  for (const name of await readdir(out)) {
    if (!fresh.includes(name)) await rm(path.join(out, name), { recursive: true });
  }
}

// What is fetched later imports all that the page starts with: else esbuild would cut that into one chunk for every set
// of parts that share a module, and the first view would need a dozen requests. It brings its own English words.
const later = (words) => ({
  name: "later",
  setup(build) {
    build.onResolve({ filter: /./ }, async ({ path: asked, kind, resolveDir, pluginData }) => {
      if (kind !== "dynamic-import" || pluginData?.resolved) return undefined;
      const found = await build.resolve(asked, { kind, resolveDir, pluginData: { resolved: true } });
      return found.errors.length ? found : { path: found.path, namespace: "later" };
    });
    build.onLoad({ filter: /./, namespace: "later" }, async ({ path: file }) => ({
      contents: `import "./${BENCH.page}";\nexport * from ${JSON.stringify(file)};\n${await words.further(file)}`,
      resolveDir: web,
    }));
  },
});

const bundles = [
  { entryPoints: BENCH, pages: [["index", BENCH.page]], style: BENCH.style, inTwo: true, plugins: (words) => [later(words), words.plugin] },
  {
    entryPoints: STAFF,
    pages: Object.entries(STAFF).filter(([, source]) => source.endsWith(".tsx")),
    style: STAFF.staff,
    plugins: (words) => [words.plugin],
  },
  {
    entryPoints: MANUAL,
    pages: [["manual", MANUAL.search]],
    style: MANUAL.manual,
    frame: "manual.html",
    plugins: () => [],
  },
];

const sourcesOf = (bundle) => ({
  absWorkingDir: web,
  entryPoints: bundle.entryPoints,
  outdir: out,
  bundle: true,
  format: "esm",
  alias: { "d3-interpolate": "./src/chart/d3_parts.ts", "d3-format": "./src/chart/d3_parts.ts" },
  logLevel: "warning",
  logLimit: 5,
});

const optionsOf = (bundle) => ({
  ...sourcesOf(bundle),
  entryNames: "[name]-[hash]",
  chunkNames: "[name]-[hash]",
  splitting: true,
  target: ["chrome87", "firefox85", "safari14.1"],
  minify: !watch,
  legalComments: "none",
  metafile: true,
  write: false,
  plugins: [
    kinds,
    ...bundle.plugins(catalogues({ options: sourcesOf(bundle), inTwo: bundle.inTwo })),
    {
      name: "write",
      setup: (build) => build.onEnd((result) => (result.errors.length ? undefined : writeFiles(bundle, result))),
    },
  ],
});

await writeMessages();
for (const bundle of bundles) {
  if (watch) await (await esbuild.context(optionsOf(bundle))).watch();
  else await esbuild.build(optionsOf(bundle));
}
if (watch) console.error(`watching ${web}, writing ${out}`);
