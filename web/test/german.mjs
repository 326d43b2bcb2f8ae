// Says in German what the station would say in English: a JSON list of texts on standard input, the same on output.
// With the page's own translator, for tests that are not written in TypeScript.
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";

const web = path.join(path.dirname(fileURLToPath(import.meta.url)), "..");
const { outputFiles } = await esbuild.build({
  stdin: { contents: 'export { germanOfStaff as german } from "./src/words/staff";', resolveDir: web, loader: "ts" },
  bundle: true,
  format: "esm",
  write: false,
  logLevel: "warning",
});
const { german } = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
let given = "";
for await (const part of process.stdin.setEncoding("utf8")) given += part;
process.stdout.write(JSON.stringify(JSON.parse(given).map(german)));
