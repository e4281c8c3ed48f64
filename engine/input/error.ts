/** Input the engine cannot compute: which field, what was found, what is allowed; the message says the same in one sentence. */
export class EngineError extends Error {
  readonly code: string;
  readonly path: string;
  readonly found: unknown;
  readonly allowed: string;

  constructor(code: string, path: string, found: unknown, allowed: string) {
    super(`${path}: found ${show(found)}, allowed is ${allowed}`);
    this.name = 'EngineError';
    this.code = code;
    this.path = path;
    this.found = found;
    this.allowed = allowed;
  }
}

function show(value: unknown): string {
  if (typeof value === 'string') return `"${value.length > 60 ? `${value.slice(0, 57)}...` : value}"`;
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'a list' : 'an object';
  return String(value);
}
