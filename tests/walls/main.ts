/** `npm run walls`: says every breach of today and takes the mended ones off the list. It adds none: the list may only shrink. */
import { writeFileSync } from 'node:fs';
import { deadExports, importBreaches, KNOWN_FILE, known } from './breaches.ts';

const found = [...importBreaches().breaches, ...deadExports()];
const listed = known();
const kept = listed.filter((line) => found.includes(line));
const fresh = found.filter((line) => !listed.includes(line));
writeFileSync(KNOWN_FILE, `${JSON.stringify(kept, null, 2)}\n`);
process.stdout.write(
  `${kept.length} known breaches, ${listed.length - kept.length} taken off the list, ${fresh.length} new\n`,
);
for (const line of fresh) process.stdout.write(`new: ${line}\n`);
process.exitCode = fresh.length === 0 ? 0 : 1;
