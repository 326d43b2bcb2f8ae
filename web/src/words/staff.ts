// The station's sentences in German, with those that only the pages of staff show.

import { translator } from "./skeletons";
import staffSentences from "./staff.de.json";
import sentences from "./station.de.json";

/** A sentence of the station, a name or a value in German; unchanged where it is not known. */
export const germanOfStaff = translator({ ...sentences, ...staffSentences });
