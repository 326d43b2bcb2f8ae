// Bundles the pages: `node build.mjs [OUT] [--watch]`. OUT defaults to ../station/page.
// Files get hashed names; each page's HTML, written last, names the script and the style it starts with. What is
// imported with `import()` travels only when it is asked for. The bench's page is bundled by itself, so that no other
// page changes what it starts with; every file src/pages/NAME.tsx is a page of staff, NAME.html.
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";

const web = path.dirname(fileURLToPath(import.meta.url));
const words = process.argv.slice(2);
const watch = words.includes("--watch");
const out = path.resolve(words.find((word) => !word.startsWith("--")) ?? path.join(web, "../station/page"));

const BENCH = { page: "src/main.tsx", style: "src/style.css" };
const sources = (await readdir(path.join(web, "src/pages")).catch(() => [])).filter((name) => name.endsWith(".tsx"));
const STAFF = Object.fromEntries(sources.map((name) => [path.basename(name, ".tsx"), `src/pages/${name}`]));
STAFF.staff = "src/staff.css";

/** What each bundle wrote last. */
const written = new Map();

async function writeHtml(name, outputs, script, style) {
  const builtFrom = (source) => path.basename(outputs.find(([, { entryPoint }]) => entryPoint === source)[0]);
  // What the script imports is asked for together with it, not after it has been read.
  const needed = outputs.find(([file]) => path.basename(file) === builtFrom(script))[1].imports;
  const preload = needed
    .filter(({ kind }) => kind === "import-statement")
    .map(({ path: file }) => `<link rel="modulepreload" href="/page/${path.basename(file)}">`)
    .join("\n    ");
  const template = await readFile(path.join(web, "index.html"), "utf8");
  const html = template.replace("{{style}}", builtFrom(style)).replace("{{preload}}", preload);
  await writeFile(path.join(out, name), html.replace("{{script}}", builtFrom(script)));
}

async function writeFiles(bundle, result) {
  const outputs = Object.entries(result.metafile.outputs);
  await mkdir(out, { recursive: true });
  for (const file of result.outputFiles) await writeFile(path.join(out, path.basename(file.path)), file.contents);
  const html = bundle.pages.map(([name]) => `${name}.html`);
  for (const [name, script] of bundle.pages) await writeHtml(`${name}.html`, outputs, script, bundle.style);
  written.set(bundle, [...outputs.map(([name]) => path.basename(name)), ...html]);
  if (written.size < bundles.length) return;
  const fresh = [...written.values()].flat();
  for (const name of await readdir(out)) {
    if (!fresh.includes(name)) await rm(path.join(out, name), { recursive: true });
  }
}

// What is fetched later imports all that the page starts with: else esbuild would cut that into one chunk for every set
// of parts that share a module, and the first view would need a dozen requests.
const later = {
  name: "later",
  setup(build) {
    build.onResolve({ filter: /./ }, async ({ path: asked, kind, resolveDir, pluginData }) => {
      if (kind !== "dynamic-import" || pluginData?.resolved) return undefined;
      const found = await build.resolve(asked, { kind, resolveDir, pluginData: { resolved: true } });
      return found.errors.length ? found : { path: found.path, namespace: "later" };
    });
    build.onLoad({ filter: /./, namespace: "later" }, ({ path: file }) => ({
      contents: `import "./${BENCH.page}";\nexport * from ${JSON.stringify(file)};`,
      resolveDir: web,
    }));
  },
};

const bundles = [
  { entryPoints: BENCH, pages: [["index", BENCH.page]], style: BENCH.style, plugins: [later] },
  {
    entryPoints: STAFF,
    pages: Object.entries(STAFF).filter(([, source]) => source.endsWith(".tsx")),
    style: STAFF.staff,
    plugins: [],
  },
];

const optionsOf = (bundle) => ({
  absWorkingDir: web,
  entryPoints: bundle.entryPoints,
  entryNames: "[name]-[hash]",
  chunkNames: "[name]-[hash]",
  outdir: out,
  bundle: true,
  format: "esm",
  splitting: true,
  alias: { "d3-interpolate": "./src/interpolate.ts" },
  target: ["chrome87", "firefox85", "safari14.1"],
  minify: !watch,
  legalComments: "none",
  metafile: true,
  write: false,
  logLevel: "warning",
  logLimit: 5,
  plugins: [
    ...bundle.plugins,
    {
      name: "write",
      setup: (build) => build.onEnd((result) => (result.errors.length ? undefined : writeFiles(bundle, result))),
    },
  ],
});

for (const bundle of bundles) {
  if (watch) await (await esbuild.context(optionsOf(bundle))).watch();
  else await esbuild.build(optionsOf(bundle));
}
if (watch) console.error(`watching ${web}, writing ${out}`);
