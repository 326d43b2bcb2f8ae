// The kinds of practical. Nobody outside this folder asks which kind a practical is.

import type { Plan } from "../live/contract";
import type { Kind } from "./kind";
import { once } from "./once/kind";
import { portions } from "./portions/kind";

export type KindCode = Plan["kind"];

export const KINDS: Readonly<Record<KindCode, Kind>> = { portions, once };
export const CODES = Object.keys(KINDS) as readonly KindCode[];
/** The kind of a plan that says none. */
export const USUAL: KindCode = "portions";

export const kindOf = ({ kind }: Plan): Kind => KINDS[kind];
