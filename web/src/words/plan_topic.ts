// The words of planning and preparing, for every part of those pages.

import { pageWords } from "./page_words";
import { plan } from "./plan.en";

export const planWords = pageWords(plan, async () => (await import("./plan.de")).plan);
