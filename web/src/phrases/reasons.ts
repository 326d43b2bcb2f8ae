// Sentences that give a reason, and the same without one.

import { phrase } from "../words";

export function setAsideText(repeat: number, reason: string | null): string {
  return reason ? phrase("page-set-aside-why", { repeat, reason }) : phrase("page-set-aside", { repeat });
}

export function inDoubtText(portion: number, reason: string | null): string {
  if (reason) return phrase("page-mistakes-in-doubt-why", { portion, reason });
  return phrase("page-mistakes-in-doubt", { portion });
}

export function inDoubtOnceText(reason: string | null): string {
  return reason ? phrase("page-mistakes-in-doubt-once-why", { reason }) : phrase("page-mistakes-in-doubt-once");
}

export function restoreNameText(repeat: number, reason: string | null): string {
  if (reason) return phrase("page-mistakes-restore-name-why", { repeat, reason });
  return phrase("page-mistakes-restore-name", { repeat });
}

export function restoreText(repeat: number, reason: string | null): string {
  return reason ? phrase("page-settings-restore-why", { repeat, reason }) : phrase("page-settings-restore", { repeat });
}

export function committedNothingText(reason: string | null): string {
  return reason ? phrase("page-own-lines-committed-nothing-why", { reason }) : phrase("page-own-lines-committed-nothing");
}
