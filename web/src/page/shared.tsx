// Small parts that many views use: what travels late, what stays opened, tables, letters that fit, focus.

import type { ComponentChildren, ComponentType, RefObject } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { base, get } from "../live/ask";
import { allWords, phrase } from "../words";

// Parts of the page that travel only when they are wanted.

/** Browsers keep a module that failed to arrive as failed: only the page, loaded afresh, asks for it again. */
async function loadAfresh(): Promise<void> {
  const answers = await get(`${base()}/session`).then(
    () => true,
    () => false,
  );
  if (answers) location.reload();
}

/** A component that is fetched when it is first drawn. Its place stays empty until it and its
 * `words` are there. */
export function later<Props extends object>(fetched: () => Promise<ComponentType<Props>>, words = allWords): ComponentType<Props> {
  let known: ComponentType<Props> | null = null;
  return function Later(props: Props) {
    const [Part, show] = useState<ComponentType<Props> | null>(() => known);
    const [failed, fail] = useState(false);
    useEffect(() => {
      if (Part) return;
      Promise.all([fetched(), words()]).then(
        ([part]) => {
          known = part;
          show(() => part);
        },
        () => fail(true),
      );
    }, []);
    if (Part) return <Part {...props} />;
    if (!failed) return null;
    return (
      <div class="not-fetched" role="alert">
        <p>{phrase("page-doing-not-fetched")}</p>
        <button type="button" class="plain" onClick={() => void loadAfresh()}>
          {phrase("page-doing-fetch-again")}
        </button>
      </div>
    );
  };
}

/** Waits for no words: those that are needed are there. */
export const NO_WORDS = async () => {};

/** Milliseconds after the page was asked for in which only what is seen first may travel. */
const FIRST_MS = 2000;

/** The same for what stands below the first view: it does not slow that down. */
export function laterStill<Props extends object>(fetched: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const calm = () => new Promise((go) => setTimeout(go, Math.max(0, FIRST_MS - performance.now())));
  return later(() => calm().then(() => Promise.all([fetched(), allWords()])).then(([part]) => part), NO_WORDS);
}

// A part that a person opens: a button, and under it what it opens.

interface Props {
  id: string;
  name: string;
  class?: string;
  /** Drawn only while it is open. */
  children: ComponentChildren;
}

export function Opened({ id, name, class: own = "", children }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <div class={`opened ${own}`}>
      <h3>
        <button type="button" class="opener" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
          {name}
        </button>
      </h3>
      <div id={id} hidden={!open}>
        {open && children}
      </div>
    </div>
  );
}

// The frame of a table: one that is wider than the screen scrolls, and then the keyboard must reach it.

export function TableFrame({ name, children }: { name: string; children: ComponentChildren }) {
  const ref = useRef<HTMLDivElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useLayoutEffect(() => {
    const frame = ref.current;
    if (!frame) return undefined;
    const look = () => setScrolls(frame.scrollWidth > frame.clientWidth);
    const observer = new ResizeObserver(look);
    observer.observe(frame);
    if (frame.firstElementChild) observer.observe(frame.firstElementChild);
    look();
    return () => observer.disconnect();
  }, []);
  return (
    <div class="table-frame" ref={ref} {...(scrolls ? { tabindex: 0, role: "region", "aria-label": name } : {})}>
      {children}
    </div>
  );
}

// Words that must keep their place: the letters become smaller, in few steps, until they fit; only words that fit in no
// size may take more room.

const SIZES = ["1", "2", "3", "4", "5", "6", "7"] as const;

function fit(element: HTMLElement): void {
  const around = element.closest(".instrument");
  around?.removeAttribute("data-free");
  for (const size of SIZES) {
    element.dataset["size"] = size;
    if (element.scrollHeight <= element.clientHeight + 1) return;
  }
  element.dataset["size"] = "free";
  around?.setAttribute("data-free", "");
}

/** Give the element to fit this ref; `data-size` on it says which size fits (see styles/doing.css). */
export function useFitted(text: string): RefObject<HTMLDivElement | null> {
  const ref = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (ref.current) fit(ref.current);
  }, [text]);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const place = () => `${element.clientWidth} ${element.clientHeight}`;
    let known = place();
    const observer = new ResizeObserver(() => {
      if (place() === known) return;
      fit(element);
      // What fits in no size has made its place higher itself.
      known = place();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return ref;
}

// A button whose meaning changes under the finger.

/** A press this soon after a button took on a new meaning was meant for the old one / ms. */
const OLD_MEANING_MS = 600;

/** So long it is said that such a press was seen / ms. */
const SEEN_MS = 3000;

const onEarly = new Set<() => void>();

/** Whether a press came too early just now: it was seen, and not taken. */
export function useEarlyPress(): boolean {
  const [early, set] = useState(false);
  useEffect(() => {
    let timer = 0;
    const seen = () => {
      clearTimeout(timer);
      set(true);
      timer = window.setTimeout(() => set(false), SEEN_MS);
    };
    onEarly.add(seen);
    return () => {
      clearTimeout(timer);
      onEarly.delete(seen);
    };
  }, []);
  return early;
}

/** Tells whether a press now is meant: false for a moment after `meaning` has changed, and then the page says so. */
export function useMeant(meaning: string): () => boolean {
  const since_ms = useRef(0);
  useLayoutEffect(() => {
    since_ms.current = performance.now();
  }, [meaning]);
  return () => {
    if (performance.now() - since_ms.current >= OLD_MEANING_MS) return true;
    for (const seen of onEarly) seen();
    return false;
  };
}

// The keyboard's place when everything is drawn afresh.

const HOLDERS = "a[href], button, input, select, textarea, summary";

/** Draw all of `root` anew; whoever stands on the third button stands on the third button afterwards. */
export function keepingFocus(root: ParentNode, redraw: () => void): void {
  const place = [...root.querySelectorAll(HOLDERS)].findIndex((one) => one === document.activeElement);
  redraw();
  if (place >= 0) root.querySelectorAll<HTMLElement>(HOLDERS)[place]?.focus({ preventScroll: true });
}
