// What there is to see of a practical below the instrument: each kind's `Seeing` is given this.

import type { Acting } from "../live/acts";
import type { Message, View } from "../live/contract";
import type { Model } from "../live/model";

export interface SeeingProps<Of extends View = View> {
  view: Of;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}
