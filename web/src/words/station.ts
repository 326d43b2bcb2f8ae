// The station's sentences in German. The station speaks English; station.de.json has the German of each sentence
// under its English skeleton, with # for every value in it (see ./skeletons).

import { translator } from "./skeletons";
import sentences from "./station.de.json";

/** A sentence of the station, a name or a value in German; unchanged where it is not known. */
export const german = translator(sentences);
