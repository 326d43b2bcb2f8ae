// The words of the room's page, in the language now spoken.

import { pageWords } from "./page_words";
import { room } from "./room.en";

export const roomWords = pageWords(room, async () => (await import("./room.de")).room);
