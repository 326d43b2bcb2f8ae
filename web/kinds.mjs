// The kinds of practical, web/src/kinds/KIND/: an esbuild plugin that makes "@kinds/PART" of the files PART.ts or PART.tsx
// of all of them, so that a kind is registered by its folder. Each exports under the part's own name. What there is to see
// of the usual kind belongs to the first view; of the others it is fetched when a plan is of that kind.
import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const web = path.dirname(fileURLToPath(import.meta.url));
const FOLDER = path.join(web, "src/kinds");
/** The kind of a plan that says none. */
export const USUAL = "portions";
/** Drawn on the students' page below the instrument. */
const SEEN = "seeing";

/** The codes of all kinds, the usual one first. */
export function kindCodes() {
  const names = readdirSync(FOLDER, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
  return names.sort((one, other) => (other === USUAL) - (one === USUAL) || (one < other ? -1 : 1));
}

/** Where this part of a kind is, from web/. */
export function fileOfPart(code, part) {
  const names = [".ts", ".tsx"].map((ending) => `src/kinds/${code}/${part}${ending}`);
  const found = names.find((name) => existsSync(path.join(web, name)));
  if (!found) throw new Error(`src/kinds/${code} has no ${part}`);
  return found;
}

function moduleOf(part) {
  const codes = kindCodes();
  const own = (code) => JSON.stringify(`./${fileOfPart(code, part)}`);
  const name = part === SEEN ? "Seeing" : part;
  const isLater = (code) => part === SEEN && code !== USUAL;
  const lines = codes.filter((code) => !isLater(code)).map((code, index) => `import { ${name} as of${index} } from ${own(code)};`);
  const fetched = (code) => `later(() => import(${own(code)}).then((found) => found.${name}))`;
  const entries = codes.map((code, index) => `${JSON.stringify(code)}: ${isLater(code) ? fetched(code) : `of${index}`}`);
  const later = codes.some(isLater) ? 'import { later } from "./src/page/shared";' : "";
  return [later, ...lines, `export const parts = { ${entries.join(", ")} };`].join("\n");
}

export const kinds = {
  name: "kinds",
  setup(build) {
    build.onResolve({ filter: /^@kinds\// }, ({ path: name }) => ({ path: name, namespace: "kinds" }));
    build.onLoad({ filter: /./, namespace: "kinds" }, ({ path: name }) => ({
      contents: moduleOf(name.slice("@kinds/".length)),
      resolveDir: web,
      watchDirs: [FOLDER],
    }));
  },
};
