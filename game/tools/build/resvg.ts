import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm } from '@resvg/resvg-wasm';

const fromHere = createRequire(import.meta.url);
let ready: Promise<void> | null = null;

/** Starts the drawing of SVG as PNG; once is enough. */
export function withResvg(): Promise<void> {
  ready ??= initWasm(readFileSync(fromHere.resolve('@resvg/resvg-wasm/index_bg.wasm')));
  return ready;
}
