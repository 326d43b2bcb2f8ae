// The keyboard's place when everything is drawn afresh.

const HOLDERS = "a[href], button, input, select, textarea, summary";

/** Draw all of `root` anew; whoever stands on the third button stands on the third button afterwards. */
export function keepingFocus(root: ParentNode, redraw: () => void): void {
  const place = [...root.querySelectorAll(HOLDERS)].findIndex((one) => one === document.activeElement);
  redraw();
  if (place >= 0) root.querySelectorAll<HTMLElement>(HOLDERS)[place]?.focus({ preventScroll: true });
}
