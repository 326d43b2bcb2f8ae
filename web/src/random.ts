// Random names that need no secure context: plain http has no crypto.randomUUID.

/** 128 random bits as 32 hexadecimal digits. */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
