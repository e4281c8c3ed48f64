/** Somebody at a browser, over a real port. */
export class Caller {
  #cookie = '';
  #csrf = '';
  constructor(private readonly base: string) {}

  /** The first thing an event stream says, and no more of it. */
  async first(path: string): Promise<string> {
    const stop = new AbortController();
    const answer = await fetch(`${this.base}${path}`, { headers: { cookie: this.#cookie }, signal: stop.signal });
    let text = '';
    for await (const piece of answer.body!.pipeThrough(new TextDecoderStream())) {
      text += piece;
      if (text.includes('\n\n')) break;
    }
    stop.abort();
    return text;
  }

  /** Listens to an event stream until it is stopped, as an open page does, and keeps nothing of it. @throws when it breaks off or is stopped */
  async follow(path: string, until: AbortSignal): Promise<void> {
    const answer = await fetch(`${this.base}${path}`, { headers: { cookie: this.#cookie }, signal: until });
    const reader = answer.body!.getReader();
    while (!(await reader.read()).done);
  }

  /** @throws Error unless the answer is good */
  async ask(method: string, path: string, body?: unknown): Promise<Record<string, never>> {
    const raw = body instanceof Uint8Array;
    const answer = await fetch(`${this.base}${path}`, {
      method,
      headers: {
        origin: this.base,
        cookie: this.#cookie,
        'x-csrf': this.#csrf,
        ...(body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' }),
      },
      ...(body === undefined ? {} : { body: raw ? (body as Uint8Array<ArrayBuffer>) : JSON.stringify(body) }),
    });
    const set = answer.headers.get('set-cookie');
    if (set !== null) this.#cookie = set.split(';')[0]!;
    const json = (await answer.json()) as Record<string, never>;
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${JSON.stringify(json)}`);
    if (typeof json.csrf === 'string') this.#csrf = json.csrf;
    return json;
  }
}
