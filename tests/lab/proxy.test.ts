import { request as ask, createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../../scoring/lab/serve.ts';
import { newLab, PASSWORD, SETTINGS, SETUP_CODE, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';

interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

/** A reverse proxy as a school would set one up: https outside (said, not spoken, here), plain http to the lab, answers handed on piece by piece. */
function proxyTo(port: number): Server {
  return createServer((incoming, outgoing) => {
    const headers = {
      ...incoming.headers,
      'x-forwarded-for': [incoming.headers['x-forwarded-for'], '203.0.113.9'].filter(Boolean).join(', '),
      'x-forwarded-proto': 'https',
    };
    const { method, url: path } = incoming;
    const inner = ask({ host: '127.0.0.1', port, method, path, headers }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    outgoing.on('close', () => inner.destroy());
    inner.on('error', () => outgoing.destroy());
    incoming.pipe(inner);
  });
}

async function behind(behindProxy: boolean) {
  const t: TestLab = await newLab({ threads: 0, settings: { ...SETTINGS, behindProxy } });
  const served: Served = await serve(t.lab, { host: '127.0.0.1', port: 0, tls: null });
  const proxy = proxyTo(served.port);
  await new Promise<void>((resolve) => proxy.listen(0, '127.0.0.1', resolve));
  const { port } = proxy.address() as AddressInfo;
  const call = (
    method: string,
    path: string,
    body?: object,
    headers: Record<string, string> = {},
    /** Ends the answer when its text is this. */
    until?: RegExp,
  ): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const sent = ask(
        {
          ...{ host: '127.0.0.1', port, method, path },
          headers: {
            ...{ host: 'lab.school.internal', origin: 'https://lab.school.internal' },
            ...(body === undefined ? {} : { 'content-type': 'application/json' }),
            ...headers,
          },
        },
        (answer) => {
          let text = '';
          const done = (): void => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text });
          answer.on('data', (piece: Buffer) => {
            text += piece.toString();
            if (until?.test(text)) {
              done();
              sent.destroy();
            }
          });
          answer.on('end', done);
        },
      );
      sent.on('error', reject);
      sent.end(body === undefined ? undefined : JSON.stringify(body));
    });
  return {
    call,
    end: async () => {
      proxy.closeAllConnections();
      proxy.close();
      await served.close();
      await t.end();
    },
  };
}

const setup = { code: SETUP_CODE, name: 'Maud Tarrant', password: PASSWORD };

// Once, when both are over: what was stopped is started again by whoever asks next.
afterAll(stopServer);

describe('behind a reverse proxy', () => {
  let lab: Awaited<ReturnType<typeof behind>>;
  let own: Record<string, string>;
  beforeAll(async () => {
    lab = await behind(true);
  }, 120_000);
  afterAll(() => lab.end());

  it('cookies are for https and for this host alone, though the lab itself speaks http', async () => {
    const { status, headers, text } = await lab.call('POST', '/api/setup', setup);
    expect(status).toBe(200);
    const [cookie] = headers['set-cookie']!;
    expect(cookie).toMatch(/^__Host-lab=/);
    for (const flag of ['Secure', 'HttpOnly', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(flag);
    expect(cookie).not.toContain('Domain');
    own = { cookie: cookie!.split(';')[0]!, 'x-csrf': JSON.parse(text).csrf };
    expect(JSON.parse((await lab.call('GET', '/api/me', undefined, own)).text).role).toBe('instructor');
  });

  it('its own page may change things and another site may not', async () => {
    expect((await lab.call('POST', '/api/classes', { name: 'Tern Dock' }, own)).status).toBe(200);
    const form = { ...own, origin: 'https://elsewhere.test', 'content-type': 'text/plain' };
    expect((await lab.call('POST', '/api/classes', { name: 'Forged' }, form)).status).toBe(403);
  });

  it('what happens in a class comes through as it happens', async () => {
    const { classes } = JSON.parse((await lab.call('GET', '/api/classes', undefined, own)).text);
    const live = await lab.call('GET', `/api/classes/${classes[0].id}/live`, undefined, own, /event: now/);
    expect(live.headers['content-type']).toMatch(/text\/event-stream/);
    expect(live.text).toContain('event: progress\ndata: {"handed":0,"scored":0}');
  });

  it('guesses are counted for the address that the proxy names last, whatever the asker says of itself', async () => {
    const guess = (from: string) =>
      lab.call('POST', '/api/login', { name: 'Maud Tarrant', password: 'a wrong one' }, { 'x-forwarded-for': from });
    const statuses: number[] = [];
    for (let n = 0; n < 11; n++) statuses.push((await guess(`198.51.100.${n}`)).status);
    expect(statuses.slice(0, 10)).toEqual(Array(10).fill(401));
    expect(statuses[10]).toBe(429);
  });
});

describe('a proxy that the lab was not told of', () => {
  it('is not believed: cookies stay those of plain http', async () => {
    const lab = await behind(false);
    const { headers, text } = await lab.call('POST', '/api/setup', setup);
    expect(headers['set-cookie']![0]).toMatch(/^lab=/);
    expect(headers['set-cookie']![0]).not.toContain('Secure');
    expect(JSON.parse(text).role).toBe('instructor');
    await lab.end();
  }, 120_000);
});
