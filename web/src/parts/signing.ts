// What this device may do, asked once at the start and again whenever it may have changed.

import { useEffect, useState } from "preact/hooks";
import { type Admission, type Credential, type Standing, signIn, signOut, standingNow } from "../session";

export interface Session {
  /** Null until the station has said. */
  standing: Standing | null;
  refresh: () => void;
  signIn: (credential: Credential) => Promise<Admission>;
  signOut: () => Promise<boolean>;
}

export function useSession(): Session {
  const [standing, stand] = useState<Standing | null>(null);
  const refresh = async () => {
    const now = await standingNow();
    if (now) stand(now);
  };
  useEffect(() => void refresh(), []);
  return {
    standing,
    refresh: () => void refresh(),
    signIn: async (credential) => {
      const admission = await signIn(credential);
      if (admission.admitted) await refresh();
      return admission;
    },
    signOut: async () => {
      const gone = await signOut();
      await refresh();
      return gone;
    },
  };
}
