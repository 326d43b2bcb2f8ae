// Where the page asks: the station itself, or the room, which serves the same for each bench that it knows.

const OF_ROOM = /^\/room\/bench\/[\w.-]+$/;

/** What all paths of this page's bench begin with. */
export const base = (): string => {
  const here = typeof location === "undefined" ? "" : location.pathname;
  return OF_ROOM.test(here) ? `/api${here}` : "/api";
};
