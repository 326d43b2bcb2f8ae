// The kinds of practical: every folder here is one (`web/kinds.mjs`). Nobody outside asks which kind a practical is.

import { parts } from "@kinds/kind";
import type { Plan } from "../live/contract";
import type { Kind } from "./kind";

export type KindCode = Plan["kind"];

export const KINDS: Readonly<Record<KindCode, Kind>> = parts;
export const CODES = Object.keys(KINDS) as readonly KindCode[];
/** The kind of a plan that says none. */
export const USUAL: KindCode = "portions";

export const kindOf = ({ kind }: Plan): Kind => KINDS[kind];
