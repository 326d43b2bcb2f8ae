// The words of the page of checks, for every part of it.

import { checks } from "./checks.en";
import { pageWords } from "./page_words";

export const checkWords = pageWords(checks, async () => (await import("./checks.de")).checks);
