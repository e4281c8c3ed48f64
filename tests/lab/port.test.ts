import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Served, serve } from '../../scoring/lab/serve.ts';
import { Caller } from './support/caller.ts';
import { newLab, PASSWORD, SETUP_CODE, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';

let t: TestLab;
let served: Served;
let base: string;
let maud: Caller;
beforeAll(async () => {
  t = await newLab({ threads: 0 });
  served = await serve(t.lab, { host: '127.0.0.1', port: 0, tls: null });
  base = `http://127.0.0.1:${served.port}`;
  maud = new Caller(base);
  await maud.ask('POST', '/api/setup', { code: SETUP_CODE, name: 'Maud Tarrant', password: PASSWORD });
}, 120_000);
afterAll(async () => {
  await served.close();
  await t.end();
  await stopServer();
});

// Without a server in between, as the other tests ask, none of these faults is there.
it('erasing a trainee, a request without a body, does over a port what it does without', async () => {
  const klass = await maud.ask('POST', '/api/classes', { name: 'Tern Dock' });
  await maud.ask('POST', `/api/classes/${klass.id}/roster`, { csv: 'Ines Calder' });
  const { trainees } = await maud.ask('GET', `/api/classes/${klass.id}/roster`);
  const { id } = (trainees as { id: string }[])[0]!;
  await maud.ask('DELETE', `/api/classes/${klass.id}/trainees/${id}`);
  expect((await maud.ask('GET', `/api/classes/${klass.id}/roster`)).trainees).toEqual([]);
});

it('a body that comes in pieces, its length not said, is taken as one that comes whole, up to the same size', async () => {
  const sent = (text: string): Promise<Response> =>
    fetch(`${base}/api/login`, {
      method: 'POST',
      headers: { origin: base, 'content-type': 'application/json' },
      body: new Blob([text]).stream(),
      duplex: 'half',
    } as RequestInit);
  expect((await sent(JSON.stringify({ name: 'Maud Tarrant', password: PASSWORD }))).status).toBe(200);
  expect((await sent(JSON.stringify({ name: 'x'.repeat(2_000_000), password: PASSWORD }))).status).toBe(413);
});
