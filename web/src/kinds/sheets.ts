// What stands on the record sheet, by the kind of practical.

import type { View } from "../live/contract";
import type { KindCode } from ".";
import { onceSheet } from "./once/sheet";
import { portionsSheet } from "./portions/sheet";
import type { Sheet } from "./sheet";

const SHEETS: Readonly<Record<KindCode, Sheet>> = { portions: portionsSheet, once: onceSheet };

export const sheetOf = ({ plan }: View): Sheet => SHEETS[plan.kind];
