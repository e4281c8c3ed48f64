/** The exercises and what hands come to at them, as a page. */
import { type Exercise, exercises } from '../../../scoring/index.ts';
import { DECENT_AMOUNT, POOR_AMOUNT } from './hands.ts';
import { DECENT_WITHIN, FIRST_SEED, MOUSE_SEEDS, machineFor, POOR_WITHIN, SEEDS } from './set.ts';
import type { Came } from './study.ts';

const percent = (share: number): string => `${Math.round(100 * share)} %`;

export function exercisesPage(all: readonly Came[]): string {
  return `# What a hand comes to at the ready exercises

Written by \`npm run exercises\`; \`tests/slow/exercises.test.ts\` holds the figures to their aims. An exercise is there to be learnt by: its demonstration has to pass its own lines
for certain, a decent hand has to be within in ${percent(DECENT_WITHIN)} of its attempts, a poor one in at most ${percent(POOR_WITHIN)}.

A **decent hand** has ${DECENT_AMOUNT} of every human failing, a **poor** one all of a beginner's (amount ${POOR_AMOUNT}: 0.6 mm of tremor, a quarter of unevenness, drift, lag, arc a little back) and
one plain habit besides, in turn: arc 3 mm back at the root, no wait at the toes, half as fast again, 0.6 of the speed, 2.5 mm to one side, half as wide again. All are robots: what people
come to was not tried. On a **mouse** is the decent hand as a page gets it from one: read every 8 ms to a whole pixel, tip and angles held. Seeds ${FIRST_SEED} to ${FIRST_SEED + SEEDS - 1} of each are welded, ${MOUSE_SEEDS} of
them on a mouse; how many were is in the table. Seeds 1 to 30 were looked at while the exercises were set, and are not among them. *Settings by ear* is set as
*tee-inverted-v* is, so the two are one weld.

Settings, travel and sizes of the exercises were moved until this held; the model, the plus-minus and the limits of the standards were not.

| exercise | machine | climbs | asked | demonstration | least room | start lump | crater | decent within | on a mouse | poor within |
|---|---|---|---|---|---|---|---|---|---|---|
${exercises
  .map((e) =>
    row(
      e,
      all.filter((c) => c.exercise === e.name),
    ),
  )
  .join('\n')}

*Least room*: of the demonstration's lines the one nearest its limit, in units of its own plus-minus; 1 and more is within for certain. *Start lump*, *crater*: mm over and under the settled face.

## What kept decent hands from being within, and let poor ones be

${exercises
  .map((e) =>
    reasons(
      e,
      all.filter((c) => c.exercise === e.name),
    ),
  )
  .join('\n')}
`;
}

function row(e: Exercise, came: readonly Came[]): string {
  const shown = came.find((c) => c.kind === 'shown');
  const { asked } = e;
  const p = machineFor(e);
  const least = shown === undefined ? null : tightest(shown);
  const room = least === null ? '' : `${least.room.toFixed(1)} (${least.name})`;
  const most = asked.atMost_mm === null ? '' : ` to ${asked.atMost_mm}`;
  const mm = (x: number | null | undefined): string => (x === null || x === undefined ? '' : x.toFixed(1));
  return `| ${e.name} | ${p.feed_mpmin} m/min, ${p.volts_V} V | ${e.demonstration.travel_mmps} mm/s | ${asked.size_mm}${most} mm | ${shown?.verdict ?? ''} | ${room} | ${mm(shown?.lump_mm)} | ${mm(shown?.crater_mm)} | ${share(came, 'decent')} | ${share(came, 'mouse')} | ${share(came, 'poor')} |`;
}

function share(came: readonly Came[], kind: Came['kind']): string {
  const own = came.filter((c) => c.kind === kind);
  return `${own.filter((c) => c.verdict === 'within').length} of ${own.length}`;
}

export function tightest(came: Came): Came['lines'][number] | null {
  return came.lines.reduce<Came['lines'][number] | null>((a, b) => (a === null || b.room < a.room ? b : a), null);
}

function reasons(e: Exercise, came: readonly Came[]): string {
  const decent = came.filter((c) => (c.kind === 'decent' || c.kind === 'mouse') && c.verdict !== 'within');
  const poor = came.filter((c) => c.kind === 'poor' && c.verdict === 'within');
  const what = (c: Came): string =>
    `${c.verdict}: ${[...c.reasons, ...c.lines.filter((l) => l.verdict !== 'within').map((l) => l.name)].join(', ')}`;
  const count = (texts: string[]): string =>
    [...new Set(texts)].map((t) => `${texts.filter((x) => x === t).length} × ${t}`).join('; ');
  const parts = [
    ...(decent.length === 0 ? [] : [`decent ${count(decent.map(what))}`]),
    ...(poor.length === 0 ? [] : [`poor within: ${count(poor.map((c) => c.habit ?? ''))}`]),
  ];
  return `- ${e.name}: ${parts.length === 0 ? 'none' : parts.join('; ')}`;
}
