/** The lab's answer when it will not do what was asked. */
export class Refused extends Error {
  override readonly name = 'Refused';
  constructor(
    readonly status: number,
    /** Name of the field at fault; empty where it is none. */
    readonly field: string,
    message: string,
  ) {
    super(message);
  }

  /** A later try may well be taken: too many asked, or disk or database do not answer. */
  get passing(): boolean {
    return this.status === 429 || this.status >= 500;
  }
}

/** Who the lab takes this browser for. */
export interface Me {
  role: 'nobody' | 'instructor' | 'trainee';
  name: string | null;
  id: string | null;
  class: string | null;
  csrf: string | null;
  /** An instructor in charge of the lab. */
  keeper: boolean;
  setup: boolean;
}

/** Longest wait for an answer, ms: a network that is there and takes nothing must not hold an attempt for ever. */
const PATIENCE_MS = 30_000;

/** Requests to the lab that serves this page. */
export class Line {
  private csrf: string | null = null;

  /** @param root the lab's address as seen from this page */
  constructor(private readonly root: string) {}

  /** @throws Refused; TypeError or DOMException when the lab cannot be reached */
  async me(): Promise<Me> {
    return this.remember(await this.once('GET', 'me'));
  }

  /** Logs in, joins or makes the first instructor. @throws like `me` */
  async enter(path: 'setup' | 'login' | 'join', body: object): Promise<Me> {
    return this.remember(await this.ask<Me>('POST', path, body));
  }

  /** @throws like `me` */
  async ask<T>(method: string, path: string, body?: object): Promise<T> {
    try {
      return await this.once<T>(method, path, body);
    } catch (error) {
      // The page's word belongs to a session that another tab has ended, or to none yet.
      if (!(error instanceof Refused && error.field === 'x-csrf')) throw error;
      await this.me();
      return this.once<T>(method, path, body);
    }
  }

  private remember(me: Me): Me {
    this.csrf = me.csrf;
    return me;
  }

  private async once<T>(method: string, path: string, body?: object): Promise<T> {
    const raw = body instanceof Uint8Array;
    const answer = await fetch(`${this.root}api/${path}`, {
      method,
      headers: {
        ...(this.csrf === null ? {} : { 'x-csrf': this.csrf }),
        ...(body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' }),
      },
      signal: AbortSignal.timeout(PATIENCE_MS),
      ...(body === undefined ? {} : { body: raw ? (body as Uint8Array<ArrayBuffer>) : JSON.stringify(body) }),
    });
    if (answer.ok) return (await answer.json()) as T;
    const said = (await answer.json().catch(() => ({}))) as {
      error?: string;
      problems?: { field: string; message: string }[];
    };
    const [first] = said.problems ?? [];
    throw new Refused(answer.status, first?.field ?? '', first?.message ?? said.error ?? answer.statusText);
  }
}
