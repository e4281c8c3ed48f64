/** `npm run study:measures`: welds what the pictures show and writes scoring/MEASURES.md and assets/measures/*.svg. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { cutPictures, madeUpCuts } from './cuts.ts';
import { handPictures } from './hands.ts';
import { madeUpHands } from './made-up.ts';
import { runPictures } from './runs.ts';
import { measuresText, PICTURES, TABLE } from './table.ts';
import { weldAll } from './welds.ts';

const welds = weldAll();
mkdirSync(PICTURES, { recursive: true });
const pictures = [
  ...cutPictures(welds),
  ...runPictures(welds),
  ...handPictures(welds),
  ...madeUpCuts(),
  ...madeUpHands(),
];
for (const old of readdirSync(PICTURES)) if (old.endsWith('.svg')) rmSync(new URL(old, PICTURES));
for (const [name, text] of pictures) writeFileSync(new URL(name, PICTURES), text);
writeFileSync(TABLE, measuresText());
console.log(`${pictures.length} pictures and the table written`);
