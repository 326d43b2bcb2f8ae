// Parts of the page that travel only when they are wanted.

import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { get } from "../get";
import { words } from "../words";

/** Browsers keep a module that failed to arrive as failed: only the page, loaded afresh, asks for it again. */
async function loadAfresh(): Promise<void> {
  const answers = await get("/api/session").then(
    () => true,
    () => false,
  );
  if (answers) location.reload();
}

/** A component that is fetched when it is first drawn. Its place stays empty until it is there. */
export function later<Props extends object>(fetched: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  let known: ComponentType<Props> | null = null;
  return function Later(props: Props) {
    const [Part, show] = useState<ComponentType<Props> | null>(() => known);
    const [failed, fail] = useState(false);
    useEffect(() => {
      if (Part) return;
      fetched().then(
        (part) => {
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
        <p>{words.doing.notFetched}</p>
        <button type="button" class="plain" onClick={() => void loadAfresh()}>
          {words.doing.fetchAgain}
        </button>
      </div>
    );
  };
}
