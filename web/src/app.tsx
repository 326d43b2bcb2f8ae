// The page as a whole: what stands where, and which view the address asks for.

import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Numbers } from "./bench/doing";
import { InstructionCard } from "./bench/instruction";
import { LiveTrace, isTraced, isTyped } from "./bench/live_trace";
import { Seeing } from "./bench/seeing";
import { VolumeChartLive } from "./chart/volume_figure";
import { type Freshness, age_s, freshness } from "./format";
import { type Acting, useActing } from "./live/acts";
import type { Message, PortionsView, View } from "./live/contract";
import { type Model, pouredAt } from "./live/model";
import { type Session, useSession } from "./live/session";
import { Header, Notices, type Place, usePlace } from "./page/header";
import { NO_WORDS, later, laterStill } from "./page/shared";
import { useTone } from "./page/sound";
import { Glossary } from "./page/terms";
import { phrase, said } from "./words";

// The words of the guide come with the first ones (web/words.mjs).
const Guide = later(() => import("./bench/guide").then((part) => part.Guide), NO_WORDS);
const GuideView = later(() => import("./bench/guide").then((part) => part.GuideView));
const ClearingUp = laterStill(() => import("./bench/guide").then((part) => part.ClearingUp));
const CodeForm = later(() => import("./bench/code_form").then((part) => part.CodeForm));
const Judgement = laterStill(() => import("./practise/judgement").then((part) => part.Judgement));
const PractiseBar = later(() => import("./practise/bar").then((part) => part.PractiseBar));
const PractiseOffer = laterStill(() => import("./practise/offer").then((part) => part.PractiseOffer));
const BigView = later(() => import("./bench/big").then((part) => part.BigView));
const PrintedSheet = laterStill(() => import("./bench/record/paper").then((part) => part.PrintedSheet));
const RecordView = later(() => import("./bench/record/record").then((part) => part.RecordView));
const SettingsView = later(() => import("./bench/settings").then((part) => part.SettingsView));

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
  const traced = isTraced(view);
  // Without a trace the curve itself is what grows while one looks.
  const curve = !traced && isTyped(view);
  return (
    <>
      <div class={`instrument ${traced || curve ? "instrument-traced" : "instrument-untraced"}`}>
        <div class="doing">
          <InstructionCard view={view} poured_s={pouredAt(view)} heard={heard} acting={acting} />
        </div>
        <div class="live">
          <Numbers view={view} good={model.good} now_ms={now_ms} />
          {traced && <LiveTrace view={view} samples={model.samples} />}
          {curve && (
            <section class="live-trace" data-testid="curve" aria-label={phrase("page-volume-chart")}>
              <VolumeChartLive view={view as PortionsView} />
            </section>
          )}
        </div>
      </div>
      <div class="seeing" tabIndex={-1}>
        {view.bench.practises && view.state === "ready" && <PractiseOffer />}
        {view.state === "ready" && <Guide view={view} />}
        <Seeing view={view} model={model} acting={acting} take={take} />
        {view.bench.practice && view.state === "done" && <Judgement view={view} />}
        {view.state === "done" && <ClearingUp view={view} />}
        {view.bench.practises && view.state === "done" && <PractiseOffer />}
      </div>
      {view.repeats.some(({ status }) => status === "ended") && <PrintedSheet view={view} model={model} />}
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
  const title = view ? `${said(view.instruction.text)} · ${view.bench.name}` : phrase("page-station");
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
  if (!view) return <p class="connecting">{phrase("page-connecting")}</p>;
  const heard = freshness(model.heard_ms === null ? null : age_s(model.heard_ms, now_ms));
  const shown = { view, model, now_ms, take, heard, acting, session };
  return (
    <>
      <Header view={view} place={place} acting={acting} />
      <main ref={main} tabIndex={-1} class={`at-${place || "bench"} state-${view.state} heard-${heard}`}>
        {place === "" ? <Bench {...shown} />
        : place === "big" ? <BigView view={view} samples={model.samples} good={model.good} now_ms={now_ms} heard={heard} />
        : <Elsewhere place={place} {...shown} />}
      </main>
      <Notices view={view} heard={heard} acting={acting} />
      {view.bench.practice && place === "" && view.state !== "done" && <PractiseBar view={view} />}
      <Glossary />
      {acting.asksCode && <CodeForm acting={acting} />}
    </>
  );
}
