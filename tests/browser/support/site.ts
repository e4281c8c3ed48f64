import { inject } from 'vitest';

/** Address of the single file, for opening without a server. */
export const SINGLE_FILE = new URL('../../../dist/toehold.html', import.meta.url).href;

export interface Site {
  address: string;
  close(): Promise<void>;
}

/** The built game as `npm start` serves it: one server for the whole run, so closing it here ends nothing. */
export async function serveGame(): Promise<Site> {
  return { address: inject('game'), close: async () => undefined };
}
