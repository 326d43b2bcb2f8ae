// The frame of every page of staff: heading, ways to the others, sign-in; and how such a page is started.

import { type ComponentChildren, type ComponentType, render } from "preact";
import type { Staff } from "../live/contract";
import { isStaff, useSession } from "../live/session";
import { keepingFocus } from "../page/shared";
import { onWords, phrase, wordsVersion } from "../words";
import { startWords } from "../words/choice";
import { StaffSignIn } from "./sign_in";

/** The pages of a bench, by their addresses. */
const BENCH_PAGES = ["/", "/plan", "/prepare", "/checks", "/kit"] as const;
const NAMES = {
  "/": "bench",
  "/plan": "plan",
  "/prepare": "prepare",
  "/checks": "checks",
  "/kit": "kit",
  "/room": "room",
  "/room/class": "class",
  "/room/lessons": "lessons",
  "/room/sheets": "sheets",
  "/room/kits": "kits",
} as const;
export type Address = keyof typeof NAMES;

/** Where the manual answers the questions that arise on a page. */
const MANUAL: Partial<Record<Address, string>> = {
  "/plan": "/manual/plan",
  "/prepare": "/manual/teacher",
  "/checks": "/manual/checks",
  "/kit": "/manual/technician",
  "/room": "/manual/teacher",
  "/room/class": "/manual/teacher#the-class-result",
  "/room/lessons": "/manual/teacher",
  "/room/sheets": "/manual/teacher",
  "/room/kits": "/manual/technician#all-kits-at-once",
};

interface FrameProps {
  here: Address;
  /** Ways to other pages; a bench's unless told. */
  pages?: readonly Address[];
  children: ComponentChildren;
}

export function Frame({ here, pages = BENCH_PAGES, children }: FrameProps) {
  const title = phrase("page-frame-pages", { which: NAMES[here] });
  document.title = title;
  return (
    <>
      <header class="staff-head">
        <h1>{title}</h1>
        <nav aria-label={phrase("page-frame-ways")}>
          <ul>
            {pages.map((address) => (
              <li key={address}>
                <a href={address} aria-current={address === here ? "page" : undefined}>
                  {phrase("page-frame-pages", { which: NAMES[address] })}
                </a>
              </li>
            ))}
            <li>
              <a href={MANUAL[here] ?? "/manual"}>{phrase("page-manual")}</a>
            </li>
          </ul>
        </nav>
      </header>
      <main class="staff-page">{children}</main>
    </>
  );
}

/** Draws `children` for staff, a sign-in for everybody else. */
export function StaffOnly({ children }: { children: (role: Staff) => ComponentChildren }) {
  const session = useSession();
  if (!session.standing) return <p class="connecting">{phrase("page-frame-asking")}</p>;
  const { role } = session.standing;
  if (isStaff(role)) return <>{children(role)}</>;
  return (
    <section class="settings-part">
      <h2>{phrase("page-frame-staff-only")}</h2>
      <p>{phrase("page-frame-why-staff")}</p>
      <StaffSignIn session={session} />
    </section>
  );
}

/** Start a page: `Page` is drawn when its words are there, and afresh when language or units change. */
export function startPage(Page: ComponentType): void {
  const root = document.getElementById("page");
  if (!root) throw new Error("index.html has no #page");
  const draw = () => keepingFocus(root, () => render(<Page key={wordsVersion()} />, root));
  void startWords().then(() => {
    onWords(draw);
    draw();
  });
}
