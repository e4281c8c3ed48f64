const BYTES = 16;

/** 32 random hex digits. `crypto.randomUUID` is missing where a page came over plain http from another machine; this is not. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(BYTES))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
