// Which bench and which practical; and whether the page still hears the station.

import type { Freshness } from "../age";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { words } from "../words";

export function Header({ view }: { view: View }) {
  return (
    <header>
      <h1>{view.bench.name}</h1>
      {view.bench.virtual && <span class="tag tag-virtual">{words.virtualCup}</span>}
      {view.speed !== 1 && <span class="tag">{words.speed(view.speed)}</span>}
      <p class="practical">{keptTogether(words.practical(view.plan))}</p>
    </header>
  );
}

/** Stays in sight wherever the page is scrolled to: what is shown may no longer be true. */
export function Contact({ heard }: { heard: Freshness }) {
  return (
    <div role="status" class="contact">
      {heard !== "fresh" && <p>{heard === "old" ? words.silent : words.lost}</p>}
    </div>
  );
}
