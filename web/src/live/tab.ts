// What stays in this tab over a reload, and nowhere else; a browser that keeps nothing starts anew.

/** What was kept under this name, as it was: null where there is nothing, or nothing that can be read. */
export function keptInTab(name: string): unknown {
  try {
    return JSON.parse(sessionStorage.getItem(name) ?? "null");
  } catch {
    return null;
  }
}

export function keepInTab(name: string, value: unknown): void {
  try {
    sessionStorage.setItem(name, JSON.stringify(value));
  } catch {
    // A private window may keep nothing, and a full one no more.
  }
}
