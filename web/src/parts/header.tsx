// Which bench and which practical, the ways to elsewhere; and what must stay in sight wherever the page is.

import type { Freshness } from "../age";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { said, words } from "../words";
import type { Acting } from "./acting";
import { Menu, SoundSwitch } from "./menu";
import type { Place } from "./place";

export function Header({ view, place }: { view: View; place: Place }) {
  return (
    <header>
      <h1>{view.bench.name}</h1>
      <div class="head-tools">
        <SoundSwitch />
        <Menu place={place} />
      </div>
      <div class="head-about">
        {view.bench.read_only && (
          <a class="tag" href="/room">
            {words.fromRoom}
          </a>
        )}
        {view.group && <span class="tag">{view.group}</span>}
        {view.bench.virtual && <span class="tag tag-virtual">{words.virtualCup}</span>}
        {view.speed !== 1 && <span class="tag">{words.speed(view.speed)}</span>}
        <p class="practical">{keptTogether(words.practical(view.plan))}</p>
      </div>
    </header>
  );
}

interface NoticesProps {
  view: View;
  heard: Freshness;
  acting: Acting;
}

/** What is wrong with the probe, unless the instruction is about just that. */
function probeTrouble({ thermometer, probe, live, instruction }: View): string {
  if (thermometer.kind === "typed" || instruction.code === "probe_lost") return "";
  const bad = live?.bad;
  return words.probe[probe] && `${words.probe[probe]}${bad ? ` (${words.bad[bad] ?? bad})` : ""}`;
}

/** What a person has to know at once, over whatever is on the screen: nothing moves when it comes or goes. */
export function Notices({ view, heard, acting }: NoticesProps) {
  const { fault } = view;
  const probe = heard === "fresh" ? probeTrouble(view) : "";
  const inMemory = view.bench.in_memory === true;
  const some = heard !== "fresh" || probe !== "" || fault !== null || inMemory || acting.trouble !== null;
  return (
    <>
      {some && <div class="notices-room" />}
      <div class="notices">
        <div role="status" class="contact">
          {heard !== "fresh" && <p>{heard === "old" ? words.silent : words.lost}</p>}
          {probe !== "" && <p>{probe}</p>}
        </div>
        {inMemory && (
          <p class="fault" role="alert">
            {words.inMemory}
          </p>
        )}
        {fault && (
          <p class="fault" role="alert">
            {words.fault(said(fault))}
          </p>
        )}
        {acting.trouble && (
          <div class="trouble" role="alert">
            <p>{acting.trouble}</p>
            <button type="button" class="plain" onClick={acting.dismiss}>
              {words.close}
            </button>
          </div>
        )}
      </div>
    </>
  );
}
