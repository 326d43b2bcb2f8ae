// Plans to choose from, as this device may see them.

import { useEffect, useState } from "preact/hooks";
import { type Plans, plansNow } from "../planning";
import { isStaff } from "../session";
import type { Session } from "./signing";

export interface Known {
  plans: Plans;
  staff: boolean;
}

/** Asked again when somebody signs in or out: what staff made up comes to staff alone. Null until it is there;
 * `silent` says that the station did not answer. */
export function usePlans(session: Session): { known: Known | null; silent: boolean } {
  const [known, know] = useState<Known | null>(null);
  const [silent, fall] = useState(false);
  const role = session.standing?.role;
  useEffect(() => {
    if (!role) return;
    void plansNow().then((plans) => {
      fall(plans === null);
      if (plans) know({ plans, staff: isStaff(role) });
    });
  }, [role]);
  return { known, silent };
}
