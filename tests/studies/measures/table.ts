import { type PlusMinus, plusMinus } from '../../../scoring/measures/precision.ts';
import { consistencyRows, endRows, type Row, stationRows } from './rows.ts';
import { motionRows } from './rows-motion.ts';

export const PICTURES = new URL('../../../assets/measures/', import.meta.url);
export const TABLE = new URL('../../../scoring/MEASURES.md', import.meta.url);

export const allRows: readonly Row[] = [...motionRows, ...stationRows, ...consistencyRows, ...endRows];

/** scoring/MEASURES.md, from the rows and from the plus-minus the scoring itself uses. */
export function measuresText(): string {
  return `# Measures

Every motion and bead measure of a result: what it is in the trade, its unit, where the definition comes from, how far a reading may be off, and a picture. A and B
are the right and the left plate of a tee, the back and the edge plate of a lap. Written, with its pictures, by \`npm run study:measures\` from
tests/studies/measures; the pictures are real cuts and hands of the robot's welds, except where they say that they are made up. Plus-minus is that of the
working cell of 0.75 mm and comes from scoring/measures/precision.ts; a coarser cell scales it.

## What the hand did (\`motion\`)

${tableOf(motionRows)}

## The bead at one height (\`bead.stations\`, \`worst\`, \`mean\`)

${tableOf(stationRows)}

## The bead along its length (\`bead.consistency\`)

${tableOf(consistencyRows)}

## Starts, stops and restarts (\`bead.start\`, \`bead.stops\`)

Read over the whole weld, judged length or not. A crater has a line against a limit only where its deepest place lies in the judged length. Half the spread of the settled face is added to
the plus-minus of lump and crater, so a run that never settles says so.

${tableOf(endRows)}
`;
}

function tableOf(rows: readonly Row[]): string {
  return [
    '| measure | definition | unit | source | plus-minus | picture |',
    '|---|---|---|---|---|---|',
    ...rows.map(
      (r) =>
        `| **${r.name}** ${r.fields.map((f) => `\`${f}\``).join(' ')} | ${r.definition} | ${r.unit} | ${r.source} | ${giveOf(r)} | ![${r.name}](../assets/measures/${r.picture}) |`,
    ),
  ].join('\n');
}

function giveOf({ plusMinus: give }: Row): string {
  if (typeof give !== 'string') return give.said;
  const { value, why, straight }: PlusMinus = plusMinus[give];
  const other = straight === undefined ? '' : `; a straight run ± ${straight.value}: ${straight.why}`;
  return `± ${value}: ${why}${other}`;
}
