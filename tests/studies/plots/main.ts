/** `npm run reference:plots`: writes assets/reference/*.svg from the same cases the checks run. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { drawAll, FOLDER } from './all.ts';

mkdirSync(FOLDER, { recursive: true });
for (const [name, text] of drawAll()) writeFileSync(new URL(name, FOLDER), text);
