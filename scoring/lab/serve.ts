import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve as serveApp } from '@hono/node-server';
import { serveStatic } from '@hono/node-server/serve-static';
import { InputError } from '../index.ts';
import type { Lab } from './lab.ts';
import { whyOf } from './worker.ts';

/** Where `npm run build` puts the pages. */
const PAGES = fileURLToPath(new URL('../../dist/game', import.meta.url));

export interface ServeOptions {
  host: string;
  port: number;
  /** Certificate and key as PEM files; null: plain http. */
  tls: { cert: string; key: string } | null;
}

export interface Served {
  port: number;
  /** Takes no more connections and ends those that are idle; the others when they are answered, or after a while. */
  close(): Promise<void>;
}

/** The only place where the lab opens a port. @throws InputError when it cannot be had */
export async function serve(lab: Lab, o: ServeOptions): Promise<Served> {
  const { app } = lab;
  if (existsSync(PAGES)) {
    app.get('/lab', (c) => c.redirect('/lab/'));
    for (const path of ['/', '/index.html'] as const) app.get(path, (c) => c.html(benchPage()));
    app.use('*', serveStatic({ root: PAGES }));
  }
  const tls = o.tls === null ? null : { cert: readPem(o.tls.cert), key: readPem(o.tls.key) };
  return new Promise((resolve, reject) => {
    const server = serveApp(
      {
        fetch: app.fetch,
        hostname: o.host,
        port: o.port,
        ...(tls === null ? { createServer } : { createServer: createSecureServer, serverOptions: tls }),
      },
      (address) =>
        resolve({
          port: address.port,
          close: () =>
            new Promise((closed) => {
              server.close(() => closed());
              if ('closeIdleConnections' in server) server.closeIdleConnections();
              const rest = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), 5000);
              rest.unref();
            }),
        }),
    );
    server.on('error', (cause: NodeJS.ErrnoException) => {
      const found = cause.code === 'EADDRINUSE' ? `port ${o.port}, which is in use` : cause.message;
      reject(new InputError('--port', [{ path: '', found, allowed: 'a free port of this machine' }]));
    });
  });
}

/** The game's page with the word that tells it that a lab serves it: only then does it offer to join a class. */
function benchPage(): string {
  const html = readFileSync(join(PAGES, 'index.html'), 'utf8');
  return html.replace('</title>', '</title>\n    <meta name="toehold-lab" content="here" />');
}

/** Addresses to print for the class. */
export function addresses(o: ServeOptions, port: number): string[] {
  const scheme = o.tls === null ? 'http' : 'https';
  if (o.host !== '0.0.0.0' && o.host !== '::') return [`${scheme}://${o.host}:${port}/`];
  const outside = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter((a) => a.family === 'IPv4' && !a.internal)
    .map((a) => a.address);
  return ['localhost', ...outside].map((host) => `${scheme}://${host}:${port}/`);
}

function readPem(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (cause) {
    throw new InputError(path, [{ path: '', found: whyOf(cause), allowed: 'a file in PEM form' }]);
  }
}
