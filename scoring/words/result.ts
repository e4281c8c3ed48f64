import type { JointOptions } from '../../engine/index.ts';
import type { Line, Result } from '../schema/result.ts';
import { endSentences } from './ends.ts';
import { measureName, said, toeName, upper } from './names.ts';
import { tiedInSaid } from './root.ts';

type Kind = JointOptions['kind'];

/** A result for people, line by line: sentences, then a small table. */
export function reportLines(r: Result, kind: Kind): string[] {
  if (r.reasons.some((x) => x.code === 'books-open')) {
    return [
      verdictSentence(r),
      ...r.reasons.map((x) => `  ${x.text}`),
      ...r.notes.map((x) => `  Note: ${x.text}`),
      ...r.cautions,
    ];
  }
  return [
    verdictSentence(r),
    ...r.reasons.map((x) => `  ${x.text}`),
    ...r.notes.map((x) => `  Note: ${x.text}`),
    '',
    ...adviceSentences(r),
    '',
    ...lineTable(r.lines, kind),
    ...beadSentences(r, kind),
    ...handSentences(r, kind),
    ...endSentences(r),
    ...processSentences(r),
    '',
    ...notMeasuredSentences(r),
    `Not modelled: ${r.notModelled.join('; ')}.`,
    ...r.cautions,
  ];
}

function verdictSentence(r: Result): string {
  const what = r.exercise === null ? 'Attempt without an exercise' : r.exercise.title;
  const by = r.profile === null ? '' : `, judged by ${r.profile.title}`;
  const number = r.score === null ? '' : ` Trend number ${r.score} of 100.`;
  return `${what}${by}: ${r.verdict}.${number}`;
}

function adviceSentences(r: Result): string[] {
  const [first, ...rest] = r.advice;
  if (first === undefined) return ['Nothing to say about the hand.'];
  const at =
    first.y_mm === null
      ? ''
      : `  (at ${said(first.y_mm)} mm${first.t_s === null ? '' : `, ${said(first.t_s)} s`}${first.cycle === null ? '' : `, cycle ${first.cycle}`})`;
  return [`First: ${first.text}${at}`, ...rest.map((a) => `Then:  ${a.text}`)];
}

function lineTable(lines: readonly Line[], kind: Kind): string[] {
  if (lines.length === 0) return [];
  const rows = [
    ['measure', 'reading', 'limit', 'verdict', 'at', 'rule'],
    ...lines.map((l) => [
      measureName(l.measure, l.side, kind),
      `${fixed(l.reading, l.unit)} ± ${fixed(l.plusMinus, l.unit)} ${l.unit === 'deg' ? '°' : l.unit}`,
      `${l.sense === 'at most' ? '≤' : '≥'} ${fixed(l.limit, l.unit)}`,
      l.verdict,
      said(l.y_mm),
      `${l.rule}${l.status === 'memory' ? ' (from memory)' : ''}`,
    ]),
  ];
  const widths = rows[0]!.map((_, c) => Math.max(...rows.map((row) => row[c]!.length)));
  return [
    ...rows.map((row) => row.map((cell, c) => (c === row.length - 1 ? cell : cell.padEnd(widths[c]!))).join('  ')),
    '',
  ];
}

function fixed(x: number, unit: Line['unit']): string {
  return x.toFixed(unit === 'in' ? 3 : unit === 'mm' ? 2 : 0);
}

function beadSentences(r: Result, kind: Kind): string[] {
  const m = r.bead.mean;
  if (m === null) return ['No bead over the judged length.'];
  const root = tiedInSaid(r);
  const share = root === null ? '' : ` ${upper(root)}.`;
  const c = r.bead.consistency;
  const even =
    c === null
      ? ''
      : ` Along the length: size even to ± ${said(c.size_mm)}, face ± ${said(c.faceWidth_mm)}, crown ± ${said(c.convexity_mm)} (standard deviation).`;
  const edge = m.edgeMeltedBack_mm === null ? '' : ` Edge melted back ${said(m.edgeMeltedBack_mm)}.`;
  const risk = Math.max(r.bead.worst?.toeRiskA_mm ?? 0, r.bead.worst?.toeRiskB_mm ?? 0);
  const [a, b] = kind === 'lap' ? ['back plate', 'edge plate'] : ['right', 'left'];
  return [
    `Bead, mean: legs ${said(m.legA_mm)} ${a}, ${said(m.legB_mm)} ${b}; throat ${said(m.throat_mm)}; face ${said(m.faceWidth_mm)} wide, crowned ${said(m.convexity_mm)}; fused ${said(m.fusionDepthA_mm)} and ${said(m.fusionDepthB_mm)} deep.${share}${even}${edge}`,
    ...(risk > 0
      ? [`Melted plate outside the metal: up to ${said(risk)} mm (toe risk; on steel it may show as undercut).`]
      : []),
  ];
}

function handSentences(r: Result, kind: Kind): string[] {
  const m = r.motion;
  const parts: string[] = [];
  if (m.arcOnFrontShare !== null)
    parts.push(
      `arc on the front of the puddle at ${said(100 * m.arcOnFrontShare, 0)} % of the crossings (${m.lead_mm !== null && m.lead_mm < 0 ? `${said(-m.lead_mm)} behind` : `${said(m.lead_mm ?? 0)} ahead`} on the mean)`,
    );
  for (const side of ['A', 'B'] as const) {
    const pause = side === 'A' ? m.pauseA_s : m.pauseB_s;
    const filled = side === 'A' ? m.toeFilledShareA : m.toeFilledShareB;
    if (pause !== null)
      parts.push(
        `${toeName(kind, side)} ${said(pause, 2)} s${filled === null ? '' : `, filled when left ${said(100 * filled, 0)} %`}`,
      );
  }
  if (m.period_s !== null)
    parts.push(`${said(1 / m.period_s, 2)} cycles a second, ${said(100 * (m.periodCv ?? 0), 0)} % uneven`);
  if (m.width_mm !== null) parts.push(`${said(m.width_mm)} wide`);
  if (m.stepUp_mm !== null) parts.push(`step up ${said(m.stepUp_mm)}`);
  if (m.travel_mmps !== null) parts.push(`travel ${said(m.travel_mmps, 2)} mm/s`);
  if (m.tipToWork_mm !== null) parts.push(`tip-to-work ${said(m.tipToWork_mm)}`);
  if (m.workAngle_deg !== null) parts.push(`work angle ${said(m.workAngle_deg, 0)}°`);
  if (m.travelAngle_deg !== null) parts.push(`travel angle ${said(m.travelAngle_deg, 0)}°`);
  return parts.length === 0 ? [] : [`Hand: ${parts.join('; ')}.`];
}

function processSentences(r: Result): string[] {
  const p = r.process;
  if (p.current_A === null || p.voltage_V === null) return [];
  const metal =
    p.laid_mm2 === null
      ? ''
      : ` Laid ${said(p.laid_mm2)} mm²${p.holds_mm2 === null ? '' : `, joint holds ${said(p.holds_mm2)}`}.`;
  const heat =
    p.heatInput_kJpmm === null ? '' : ` Heat input ${said(p.heatInput_kJpmm, 2)} kJ/mm (${p.heatInputRule}).`;
  return [
    `Machine: ${said(p.current_A, 0)} A, ${said(p.voltage_V)} V, arc time ${said(p.arcTime_s)} s.${metal}${heat}`,
    `Metal: ${said(p.deposited_g ?? 0, 2)} g laid, ${said(p.spatter_g ?? 0, 2)} g spatter, ${said(p.dripped_g ?? 0, 2)} g dropped out. Check number ${r.stateHash}, engine ${r.engine}.`,
  ];
}

function notMeasuredSentences(r: Result): string[] {
  return r.notMeasured.map((x) => `Not measured: ${x.what} - ${x.why}.`);
}
