// Starts the page: the feed keeps the model, every change asks for one redraw per frame.

import { render } from "preact";
import { App } from "./app";
import { Feed } from "./feed";

/** Ages must move on while nothing is heard. */
const AGE_MS = 500;

const root = document.getElementById("page");
if (!root) throw new Error("index.html has no #page");

let asked = false;
const draw = () => {
  asked = false;
  render(<App model={feed.model} now_ms={performance.now()} take={(message) => feed.take(message)} />, root);
};
const askForDraw = () => {
  if (!asked) requestAnimationFrame(draw);
  asked = true;
};
const feed = new Feed(askForDraw);
feed.start();
setInterval(askForDraw, AGE_MS);
draw();
