// Search in the manual: sections that have every word that was typed, those that have them in their heading first. And
// the line that says in the reader's own language that the manual is in English. The pages themselves come whole from
// the station; without this script they are read all the same.

interface Section {
  page: string;
  title: string;
  heading: string;
  anchor: string;
  text: string;
}

/** Letters of a section's text that are shown around the first word found. */
const SHOWN = 180;
const MOST = 60;

let asked: Promise<readonly Section[]> | null = null;

/** The sections of all pages; asked for when the first letter is typed, and again where they did not come. */
function sections(): Promise<readonly Section[]> {
  asked ??= fetch("/manual/sections.json")
    .then(async (answer) => ((await answer.json()) as { sections: Section[] }).sections)
    .catch(() => {
      asked = null;
      return [];
    });
  return asked;
}

/** Where a word of a text, or its beginning, is what was typed; -1: nowhere. */
function found(text: string, typed: string): number {
  const small = text.toLowerCase();
  for (let at = small.indexOf(typed); at >= 0; at = small.indexOf(typed, at + 1)) {
    if (at === 0 || !/[\p{L}\p{N}]/u.test(small[at - 1] ?? "")) return at;
  }
  return -1;
}

/** Sections that have all of the words, the best first. */
function matching(all: readonly Section[], words: readonly string[]): Section[] {
  const has = (text: string) => words.every((word) => found(text, word) >= 0);
  const place = ({ title, heading, text }: Section) =>
    has(heading) ? 0 : has(`${title} ${heading}`) ? 1 : has(`${title} ${heading} ${text}`) ? 2 : 3;
  const placed = all.map((section) => ({ section, place: place(section) })).filter((each) => each.place < 3);
  return placed.sort((one, other) => one.place - other.place).map(({ section }) => section);
}

/** The text around the first of the words, with that word marked. */
function around(text: string, words: readonly string[]): (string | Node)[] {
  const [at, word] = words
    .map((each): [number, string] => [found(text, each), each])
    .reduce((best, each) => (each[0] >= 0 && (best[0] < 0 || each[0] < best[0]) ? each : best), [-1, ""]);
  const from = Math.max(0, at - SHOWN / 3);
  const cut = text.length > from + SHOWN ? "…" : "";
  if (at < 0) return [text.slice(0, SHOWN), cut];
  const mark = document.createElement("mark");
  mark.textContent = text.slice(at, at + word.length);
  return [from > 0 ? "…" : "", text.slice(from, at), mark, text.slice(at + word.length, from + SHOWN), cut];
}

function line({ page, title, heading, anchor, text }: Section, words: readonly string[]): HTMLLIElement {
  const item = document.createElement("li");
  const link = document.createElement("a");
  link.href = `${page === "index" ? "/manual" : `/manual/${page}`}#${anchor}`;
  link.textContent = heading === title ? title : `${title}: ${heading}`;
  const excerpt = document.createElement("p");
  excerpt.append(...around(text, words));
  item.append(link, excerpt);
  return item;
}

function counted(lines: number): string {
  if (lines === 0) return "No section has all of these words.";
  return lines === 1 ? "Found in one place" : `Found in ${lines} places`;
}

function startSearch(box: HTMLInputElement, result: HTMLElement, page: HTMLElement): void {
  const [count, list] = [result.querySelector("p"), result.querySelector("ol")];
  const search = async () => {
    const typed = box.value;
    const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
    const lines = words.length ? matching(await sections(), words).slice(0, MOST) : [];
    if (box.value !== typed) return; // typed on meanwhile
    result.hidden = words.length === 0;
    page.hidden = words.length > 0;
    list?.replaceChildren(...lines.map((each) => line(each, words)));
    if (count) count.textContent = counted(lines.length);
  };
  box.value = new URLSearchParams(location.search).get("words") ?? box.value;
  box.addEventListener("input", () => void search());
  box.form?.addEventListener("submit", (event) => {
    event.preventDefault();
    void search();
  });
  // A link into the page that is open only moves there: what was found must make way for it.
  list?.addEventListener("click", () => {
    result.hidden = true;
    page.hidden = false;
  });
  if (box.value) void search();
}

function kept(): string | null {
  try {
    return localStorage.getItem("language");
  } catch {
    return null;
  }
}

/** Show the line of the language that this device reads the station in, if that is not English. */
function sayLanguage(): void {
  const wishes = [kept(), document.documentElement.dataset["station"], ...navigator.languages];
  for (const wish of wishes) {
    const code = (wish ?? "").split("-")[0] ?? "";
    if (code === "en") return;
    const line = code && document.querySelector<HTMLElement>(`header > p[lang="${CSS.escape(code)}"]`);
    if (line) {
      line.hidden = false;
      return;
    }
  }
}

const [box, result, page] = ["words", "found"].map((id) => document.getElementById(id)).concat(document.querySelector("main"));
if (box instanceof HTMLInputElement && result && page) startSearch(box, result, page);
sayLanguage();
