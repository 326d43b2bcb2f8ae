// Bundles the page: `node build.mjs [OUT] [--watch]`. OUT defaults to ../station/page.
// Files get hashed names; index.html, written last, names the script and the style the page starts with. What is
// imported with `import()` travels only when it is asked for.
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";

const web = path.dirname(fileURLToPath(import.meta.url));
const words = process.argv.slice(2);
const watch = words.includes("--watch");
const out = path.resolve(words.find((word) => !word.startsWith("--")) ?? path.join(web, "../station/page"));

async function writePage(result) {
  const outputs = Object.entries(result.metafile.outputs);
  const fresh = outputs.map(([name]) => path.basename(name));
  const builtFrom = (source) => path.basename(outputs.find(([, { entryPoint }]) => entryPoint === source)[0]);
  const [script, style] = [builtFrom(options.entryPoints.page), builtFrom(options.entryPoints.style)];
  // What the script imports is asked for together with it, not after it has been read.
  const needed = outputs.find(([name]) => path.basename(name) === script)[1].imports;
  const preload = needed
    .filter(({ kind }) => kind === "import-statement")
    .map(({ path: name }) => `<link rel="modulepreload" href="/page/${path.basename(name)}">`)
    .join("\n    ");
  const template = await readFile(path.join(web, "index.html"), "utf8");
  await mkdir(out, { recursive: true });
  for (const file of result.outputFiles) await writeFile(path.join(out, path.basename(file.path)), file.contents);
  await writeFile(path.join(out, "index.html"), template.replace("{{style}}", style).replace("{{preload}}", preload).replace("{{script}}", script));
  for (const name of await readdir(out)) {
    if (name !== "index.html" && !fresh.includes(name)) await rm(path.join(out, name), { recursive: true });
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
      contents: `import "./${options.entryPoints.page}";\nexport * from ${JSON.stringify(file)};`,
      resolveDir: web,
    }));
  },
};

const options = {
  absWorkingDir: web,
  entryPoints: { page: "src/main.tsx", style: "src/style.css" },
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
    later,
    { name: "page", setup: (build) => build.onEnd((result) => (result.errors.length ? undefined : writePage(result))) },
  ],
};

if (watch) {
  const context = await esbuild.context(options);
  await context.watch();
  console.error(`watching ${web}, writing ${out}`);
} else {
  await esbuild.build(options);
}
