// The page as a whole: what stands where, and which view the address asks for.

import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { type Freshness, age_s, freshness } from "./age";
import type { Message, View } from "./contract";
import { type Model, pouredAt } from "./model";
import { type Acting, useActing } from "./parts/acting";
import { Corrections } from "./parts/corrections";
import { Header, Notices } from "./parts/header";
import { InstructionCard } from "./parts/instruction";
import { later } from "./parts/later";
import { Numbers } from "./parts/numbers";
import { type Place, usePlace } from "./parts/place";
import { Question } from "./parts/question";
import { Seeing } from "./parts/seeing";
import { type Session, useSession } from "./parts/signing";
import { useTone } from "./parts/sounding";
import { said, words } from "./words";

const Guide = later(() => import("./parts/guide").then((part) => part.Guide));
const GuideView = later(() => import("./parts/guide").then((part) => part.GuideView));
const ClearingUp = later(() => import("./parts/guide").then((part) => part.ClearingUp));
const CodeForm = later(() => import("./parts/code_form").then((part) => part.CodeForm));
const BigView = later(() => import("./parts/big").then((part) => part.BigView));
const RecordView = later(() => import("./parts/record").then((part) => part.RecordView));
const SettingsView = later(() => import("./parts/settings").then((part) => part.SettingsView));

interface Props {
  model: Model;
  now_ms: number;
  take: (message: Message) => void;
}

interface Shown extends Props {
  view: View;
  heard: Freshness;
  acting: Acting;
  session: Session;
}

function Bench({ view, model, now_ms, take, heard, acting }: Shown) {
  return (
    <>
      <div class="doing">
        <InstructionCard view={view} poured_s={pouredAt(view)} heard={heard} acting={acting} />
        <Question view={view} acting={acting} />
        <Numbers view={view} good={model.good} now_ms={now_ms} />
        <Corrections view={view} acting={acting} />
        {view.state === "done" && <ClearingUp view={view} />}
      </div>
      <div class="seeing" tabIndex={-1}>
        {view.state === "ready" && <Guide view={view} />}
        <Seeing view={view} model={model} acting={acting} take={take} />
      </div>
    </>
  );
}

function Elsewhere({ place, ...shown }: Shown & { place: Exclude<Place, "" | "big"> }) {
  const { view, model, session, take } = shown;
  if (place === "guide") return <GuideView view={view} />;
  if (place === "record") return <RecordView view={view} model={model} />;
  if (place === "settings") return <SettingsView view={view} session={session} take={take} />;
  return null;
}

/** Who came by a link stands at the start of the new view, with keyboard and screen reader too. */
function useFocusAt(place: Place): RefObject<HTMLElement | null> {
  const main = useRef<HTMLElement>(null);
  const was = useRef(place);
  useEffect(() => {
    if (was.current !== place) main.current?.focus({ preventScroll: true });
    was.current = place;
  }, [place]);
  return main;
}

/** The page's title follows the instruction: it is what a tab shows. */
function useTitle(view: View | null): void {
  const title = view ? `${said(view.instruction.text)} · ${view.bench.name}` : words.station;
  useEffect(() => {
    document.title = title;
  }, [title]);
}

export function App({ model, now_ms, take }: Props) {
  const session = useSession();
  const acting = useActing(take, session);
  const place = usePlace();
  const main = useFocusAt(place);
  const { view } = model;
  useTitle(view);
  useTone(view?.instruction, view?.repeat);
  if (!view) return <p class="connecting">{words.connecting}</p>;
  const heard = freshness(model.heard_ms === null ? null : age_s(model.heard_ms, now_ms));
  const shown = { view, model, now_ms, take, heard, acting, session };
  return (
    <>
      <Header view={view} place={place} />
      <main ref={main} tabIndex={-1} class={`at-${place || "bench"} state-${view.state} heard-${heard}`}>
        {place === "" ? <Bench {...shown} />
        : place === "big" ? <BigView view={view} good={model.good} now_ms={now_ms} heard={heard} />
        : <Elsewhere place={place} {...shown} />}
      </main>
      <Notices view={view} heard={heard} acting={acting} />
      {acting.asksCode && <CodeForm acting={acting} />}
    </>
  );
}
