// Whether the instruction asks for something now, or only says what is going on.

import type { Instruction } from "./contract";

/** Codes that ask for something although no button stands for it. */
const TO_DO = ["thermometer", "type_start", "type_reading"];

export const asksForSomething = ({ act, code }: Instruction): boolean => act !== null || TO_DO.includes(code);
