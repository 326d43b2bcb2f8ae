// Bundles every test beside this file and runs it with node's own test runner (no type stripping needed).
import { spawnSync } from "node:child_process";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { writeMessages } from "../messages.mjs";
import { kinds } from "../kinds.mjs";
import { words } from "../words.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const out = await mkdtemp(path.join(here, "../.tests-"));
await writeMessages();
try {
  const names = (await readdir(here)).filter((name) => name.endsWith(".test.ts") || name.endsWith(".test.tsx"));
  await esbuild.build({
    entryPoints: names.map((name) => path.join(here, name)),
    outdir: out,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    absWorkingDir: path.join(here, ".."),
    alias: { "d3-interpolate": "./src/chart/d3_parts.ts", "d3-format": "./src/chart/d3_parts.ts" },
    platform: "node",
    format: "esm",
    target: "node20",
    sourcemap: "inline",
    logLevel: "warning",
    external: ["./words.mjs", "../kinds.mjs"],
    plugins: [kinds, words().plugin],
  });
  const files = (await readdir(out)).map((name) => path.join(out, name));
  const done = spawnSync(process.execPath, ["--test", ...files], { cwd: path.join(here, ".."), stdio: "inherit" });
  process.exitCode = done.status ?? 1;
} finally {
  await rm(out, { recursive: true });
}
