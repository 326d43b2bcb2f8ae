// What unit tests use of words.mjs.

import type { Pattern } from "./src/words/fluent";

export function codes(folder?: string): Promise<string[]>;
export function catalogue(code: string, folder?: string): Promise<Record<string, Pattern>>;
export function compiled(text: string, name: string): Record<string, Pattern>;
export function valuesOf(pattern: Pattern): Map<string, Set<string>>;
export function idsIn(source: string): string[];
