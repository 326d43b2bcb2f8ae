// The frame of every page of staff: heading, ways to the others, sign-in; and how such a page is started.

import { type ComponentChildren, type ComponentType, render } from "preact";
import { keepingFocus } from "./focus";
import { useSession } from "./parts/signing";
import { StaffSignIn } from "./parts/staff_sign_in";
import { type Staff, isStaff } from "./session";
import { onWords, wordsVersion } from "./words";
import { startWords } from "./words/choice";
import { frame as english } from "./words/frame.en";
import { pageWords } from "./words/page_words";

const frame = pageWords(english, async () => (await import("./words/frame.de")).frame);

/** The pages of a bench, by their addresses. */
export const BENCH_PAGES = ["/", "/plan", "/prepare", "/checks", "/kit"] as const;
export type Address = keyof typeof english.pages;

interface FrameProps {
  here: Address;
  /** Ways to other pages; a bench's unless told. */
  pages?: readonly Address[];
  children: ComponentChildren;
}

export function Frame({ here, pages = BENCH_PAGES, children }: FrameProps) {
  const title = frame().pages[here];
  document.title = title;
  return (
    <>
      <header class="staff-head">
        <h1>{title}</h1>
        <nav aria-label={frame().ways}>
          <ul>
            {pages.map((address) => (
              <li key={address}>
                <a href={address} aria-current={address === here ? "page" : undefined}>
                  {frame().pages[address]}
                </a>
              </li>
            ))}
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
  if (!session.standing) return <p class="connecting">{frame().asking}</p>;
  const { role } = session.standing;
  if (isStaff(role)) return <>{children(role)}</>;
  return (
    <section class="settings-part">
      <h2>{frame().staffOnly}</h2>
      <p>{frame().whyStaff}</p>
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
