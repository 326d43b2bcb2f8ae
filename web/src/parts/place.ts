// Which view the address asks for: the part behind the # names it.

import { useEffect, useState } from "preact/hooks";

export const PLACES = ["", "guide", "record", "big", "settings"] as const;
export type Place = (typeof PLACES)[number];

function placeNow(): Place {
  const name = location.hash.slice(1);
  return PLACES.find((place) => place === name) ?? "";
}

/** The view that is asked for now; a new one starts at its top. */
export function usePlace(): Place {
  const [place, go] = useState(placeNow);
  useEffect(() => {
    const changed = () => {
      go(placeNow());
      scrollTo(0, 0);
    };
    addEventListener("hashchange", changed);
    // The address may have changed between the first drawing and this.
    go(placeNow());
    return () => removeEventListener("hashchange", changed);
  }, []);
  return place;
}
