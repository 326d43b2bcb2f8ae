/** The codes of all kinds of practical, the usual one first. */
export function kindCodes(): string[];
/** Where this part of a kind is, from web/. */
export function fileOfPart(code: string, part: string): string;
