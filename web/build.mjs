// Bundles the page: `node build.mjs [OUT] [--watch]`. OUT defaults to ../station/page.
// Files get hashed names; index.html, written last, names them.
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";

const web = path.dirname(fileURLToPath(import.meta.url));
const words = process.argv.slice(2);
const watch = words.includes("--watch");
const out = path.resolve(words.find((word) => !word.startsWith("--")) ?? path.join(web, "../station/page"));

async function writePage(result) {
  const fresh = Object.keys(result.metafile.outputs).map((name) => path.basename(name));
  const script = fresh.find((name) => name.endsWith(".js"));
  const style = fresh.find((name) => name.endsWith(".css"));
  const template = await readFile(path.join(web, "index.html"), "utf8");
  await mkdir(out, { recursive: true });
  for (const file of result.outputFiles) await writeFile(path.join(out, path.basename(file.path)), file.contents);
  await writeFile(path.join(out, "index.html"), template.replace("{{style}}", style).replace("{{script}}", script));
  for (const name of await readdir(out)) {
    if (name !== "index.html" && !fresh.includes(name)) await rm(path.join(out, name), { recursive: true });
  }
}

const options = {
  absWorkingDir: web,
  entryPoints: { page: "src/main.tsx", style: "src/style.css" },
  entryNames: "[name]-[hash]",
  outdir: out,
  bundle: true,
  format: "esm",
  target: ["chrome87", "firefox85", "safari14.1"],
  minify: !watch,
  legalComments: "none",
  metafile: true,
  write: false,
  logLevel: "warning",
  logLimit: 5,
  plugins: [
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
