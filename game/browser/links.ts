import type { Links } from '../core/ports.ts';

/** What stands before the text in an address. */
const MARK = '#exercise=';
/** Longer addresses are cut by programs they are pasted into (2000 characters are said to pass everywhere; from memory). */
const MOST_ADDRESS = 2000;
/** What an address may unpack to, bytes: a small one can unpack to more than fits in memory. */
const MOST_TEXT = 200_000;

/** Texts in the last part of this page's address: packed (DEFLATE, RFC 1951) and written in the letters of RFC 4648, base64url. */
export const browserLinks: Links = {
  async to(text) {
    const packed = await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'), MOST_TEXT);
    const letters = btoa(String.fromCharCode(...packed))
      .replaceAll('+', '-')
      .replaceAll('/', '_')
      .replace(/=+$/, '');
    const address = location.href.replace(/#.*$/s, '') + MARK + letters;
    return address.length > MOST_ADDRESS ? null : address;
  },

  async carried() {
    if (!location.hash.startsWith(MARK)) return null;
    const letters = location.hash.slice(MARK.length).replaceAll('-', '+').replaceAll('_', '/');
    // The exercise is taken over once: a reload must not take it over again.
    history.replaceState(null, '', location.pathname + location.search);
    const packed = Uint8Array.from(atob(letters), (letter) => letter.charCodeAt(0));
    return new TextDecoder('utf-8', { fatal: true }).decode(
      await through(packed, new DecompressionStream('deflate-raw'), MOST_TEXT),
    );
  },

  hear: (opened) => addEventListener('hashchange', () => location.hash.startsWith(MARK) && opened()),
};

/** @throws when more comes out than is taken in, or what goes in is spoilt */
async function through(
  bytes: Uint8Array,
  change: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const reader = new Blob([bytes as BlobPart]).stream().pipeThrough(change).getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    length += value.length;
    if (length > most) {
      void reader.cancel();
      throw new Error(`more than ${most} bytes`);
    }
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
