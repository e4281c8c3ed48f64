// Runs one compiled example and writes what it exports as JSON: node run-example.mjs EXAMPLE.js OUT.json
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const [example, out] = process.argv.slice(2);
const exported = { ...(await import(pathToFileURL(example).href)) };
// Bytes and columns of numbers as plain lists.
const plain = (_key, value) => (ArrayBuffer.isView(value) ? Array.from(value) : value);
writeFileSync(out, JSON.stringify(exported, plain));
