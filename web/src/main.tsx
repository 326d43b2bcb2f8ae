// Starts the page: the feed keeps the model, every change asks for one redraw per frame.

import { render } from "preact";
import { App } from "./app";
import { Feed } from "./live/feed";
import { keepingFocus } from "./page/shared";
import { startSound } from "./page/sound";
import { onWords, wordsVersion } from "./words";
import { startWords, stationSpeaks } from "./words/choice";

/** Ages must move on while nothing is heard. */
const AGE_MS = 500;
/** A browser may hold frames back for a window that is half covered; the truth must not wait for them. */
const LATEST_MS = 100;

const root = document.getElementById("page");
if (!root) throw new Error("index.html has no #page");

let frame = 0;
let timer = 0;
/** Nothing is drawn before the words are there: a screen reader must not be told everything twice. */
let spoken = false;
let drawnWords = 0;
const draw = () => {
  cancelAnimationFrame(frame);
  clearTimeout(timer);
  frame = timer = 0;
  if (feed.model.view) stationSpeaks(feed.model.view.bench);
  if (!spoken) return;
  // Another key after a change of language or units: everything is said afresh.
  const version = wordsVersion();
  const app = <App key={version} model={feed.model} now_ms={performance.now()} take={(message) => feed.take(message)} />;
  if (version === drawnWords) render(app, root);
  else keepingFocus(root, () => render(app, root));
  drawnWords = version;
};
const askForDraw = () => {
  if (timer) return;
  frame = requestAnimationFrame(draw);
  timer = window.setTimeout(draw, LATEST_MS);
};
const feed = new Feed(askForDraw);
feed.start();
startSound();
setInterval(askForDraw, AGE_MS);
onWords(askForDraw);
void startWords().then(() => {
  spoken = true;
  draw();
});
