import { inject } from 'vitest';
import { ELSEWHERE } from './chromium.ts';

/** Address of the single file, for opening without a server. */
export const SINGLE_FILE = new URL('../../../dist/toehold.html', import.meta.url).href;

export interface Site {
  address: string;
  /** The same under a name that is not this machine's, so that the browser takes it for a page from afar over plain http. */
  elsewhere: string;
  close(): Promise<void>;
}

/** The built game as `npm start` serves it: one server for the whole run, so closing it here ends nothing. */
export async function serveGame(): Promise<Site> {
  const address = inject('game');
  return { address, elsewhere: address.replace('localhost', ELSEWHERE), close: async () => undefined };
}
