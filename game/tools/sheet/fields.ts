// Welds the scenes of the sheet and keeps their stills. Usage: tsx fields.ts FOLDER [scene,scene]
import { mkdirSync, writeFileSync } from 'node:fs';
import { type Scene, weldScene } from './scenes.ts';

const SCENES: Scene[] = [
  {
    name: 'warm',
    exercise: 'tee-inverted-v',
    length_mm: 48,
    moments: ['root', 'left', 'right', 'finished'],
    from_s: 15,
  },
  {
    name: 'cold',
    exercise: 'tee-inverted-v',
    length_mm: 46,
    feed: 3.1,
    volts: 15.5,
    moments: ['root', 'left', 'finished'],
    from_s: 14,
  },
  {
    name: 'hot',
    exercise: 'tee-inverted-v',
    length_mm: 46,
    feed: 6.6,
    volts: 20.5,
    moments: ['root', 'left'],
    from_s: 14,
  },
  {
    name: 'far-back',
    exercise: 'tee-inverted-v',
    length_mm: 46,
    faults: { lead_mm: -5 },
    moments: ['root', 'left'],
    from_s: 14,
  },
  { name: 'straight', exercise: 'straight-run', length_mm: 46, moments: ['root', 'finished'], from_s: 8 },
  { name: 'lap', exercise: 'lap-5', length_mm: 46, moments: ['root', 'right', 'finished'], from_s: 14 },
];

const [, , out, named] = process.argv;
if (!out) throw new Error('Say where the stills are to go: tsx fields.ts FOLDER');
const only = named?.split(',');
mkdirSync(out, { recursive: true });
for (const scene of SCENES) {
  if (only && !only.includes(scene.name)) continue;
  weldScene(scene, (moment, still) => {
    writeFileSync(`${out}/${scene.name}-${moment}.json`, JSON.stringify(still));
    process.stdout.write(`${scene.name}-${moment} `);
  });
}
