import type { JointKind } from '../../engine/index.ts';
import type { MetricUnit, Result, Station } from '../../scoring/index.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, seconds, trimmed, whole } from '../locale/numbers.ts';
import { exercise } from '../page.ts';
import { inches } from './inch.tsx';

const h = words.hand;

interface Row {
  name: string;
  read: string | null;
  asked: string;
}

/** How the hand did, beside what the exercise asks. It explains the bead and decides nothing. */
export function HandTable({ found }: { found: Result }) {
  const rows = rowsOf(found);
  return (
    <div class="hand" data-testid="hand">
      <h3>{words.findings.hand}</h3>
      <List rows={rows} />
      {found.bead.worst !== null && (
        <>
          <h3>{words.toes.title}</h3>
          <List rows={toeRows(found.bead.worst, exercise.value.joint.kind)} />
        </>
      )}
      <h3>{words.process.title}</h3>
      <List rows={processRows(found)} />
    </div>
  );
}

function List({ rows }: { rows: readonly Row[] }) {
  return (
    <dl>
      {rows.map((row) => (
        <div key={row.name}>
          <dt>{row.name}</dt>
          <dd>
            {row.read ?? <em>{h.notMeasured}</em>}
            {row.asked && <span class="unit"> {row.asked}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function rowsOf(found: Result): Row[] {
  const m = found.motion;
  const { target, joint } = exercise.value;
  const band = (b: { from: number; to: number } | null, decimals: number, unit: string): string =>
    b ? `${h.asked} ${words.setting.range(trimmed(b.from, decimals), trimmed(b.to, decimals))} ${unit}` : '';
  const each = (a: number | null, b: number | null, say: (x: number) => string): string | null => {
    if (a === null && b === null) return null;
    const side = (name: string, x: number | null): string => (x === null ? '' : `${name} ${say(x)}`);
    return [side(words.findings.side(joint.kind, 'B'), b), side(words.findings.side(joint.kind, 'A'), a)]
      .filter((text) => text !== '')
      .join(', ');
  };
  const mm = (x: number | null): string | null => (x === null ? null : withInches(`${oneDecimal(x)} mm`, x, 'mm'));
  const share = (x: number): string => `${whole(x * 100)} %`;
  return [
    { name: h.rows.arcOnFrontShare, read: m.arcOnFrontShare === null ? null : share(m.arcOnFrontShare), asked: '' },
    { name: h.rows.lead, read: mm(m.lead_mm), asked: band(target.lead_mm, 1, 'mm') },
    { name: h.rows.pause, read: each(m.pauseA_s, m.pauseB_s, seconds), asked: band(target.pauseA_s, 2, 's') },
    { name: h.rows.filled, read: each(m.toeFilledShareA, m.toeFilledShareB, share), asked: '' },
    { name: h.rows.reach, read: each(m.reachA_mm, m.reachB_mm, (x) => `${oneDecimal(x)} mm`), asked: '' },
    {
      name: h.rows.period,
      read:
        m.period_s === null
          ? null
          : `${seconds(m.period_s)}${m.periodCv === null ? '' : `, ${h.evenness(m.periodCv)}`}`,
      asked: target.cyclesPerSecond
        ? `${h.asked} ${words.setting.range(trimmed(1 / target.cyclesPerSecond.to, 2), trimmed(1 / target.cyclesPerSecond.from, 2))} s`
        : '',
    },
    { name: h.rows.width, read: mm(m.width_mm), asked: band(target.width_mm, 1, 'mm') },
    { name: h.rows.stepUp, read: mm(m.stepUp_mm), asked: '' },
    {
      name: h.rows.travel,
      read: m.travel_mmps === null ? null : withInches(`${oneDecimal(m.travel_mmps)} mm/s`, m.travel_mmps, 'mm/s'),
      asked: band(target.travel_mmps, 1, 'mm/s'),
    },
    { name: h.rows.tipToWork, read: mm(m.tipToWork_mm), asked: band(target.tipToWork_mm, 0, 'mm') },
    {
      name: h.rows.workAngle,
      read: m.workAngle_deg === null ? null : `${whole(m.workAngle_deg)}°`,
      asked: band(target.workAngle_deg, 0, '°'),
    },
    {
      name: h.rows.travelAngle,
      read: m.travelAngle_deg === null ? null : `${whole(m.travelAngle_deg)}°`,
      asked: band(target.travelAngle_deg, 0, '°'),
    },
  ];
}

function withInches(said: string, x: number, unit: MetricUnit): string {
  const beside = inches(x, unit);
  return beside === '' ? said : `${said} (${beside})`;
}

/** Undercut and toe risk at their worst: the second is no line of any profile and says how near a toe came to the first. */
function toeRows(worst: Station, kind: JointKind): Row[] {
  const w = words.toes;
  const both = (a: number, b: number): string =>
    `${words.findings.side(kind, 'B')} ${oneDecimal(b)}, ${words.findings.side(kind, 'A')} ${oneDecimal(a)} mm`;
  return [
    { name: w.undercut, read: both(worst.undercutA_mm, worst.undercutB_mm), asked: '' },
    { name: w.risk, read: both(worst.toeRiskA_mm, worst.toeRiskB_mm), asked: w.riskSays },
  ];
}

function processRows(found: Result): Row[] {
  const p = found.process;
  const w = words.process;
  const say = (x: number | null, decimals: number, unit: string): string | null =>
    x === null ? null : `${trimmed(x, decimals)} ${unit}`;
  return [
    { name: w.arcTime, read: say(p.arcTime_s, 1, 's'), asked: '' },
    { name: w.current, read: say(p.current_A, 0, 'A'), asked: '' },
    { name: w.heat, read: say(p.heatInput_kJpmm, 2, 'kJ/mm'), asked: '' },
    { name: w.laid, read: say(p.laid_mm2, 1, 'mm²'), asked: '' },
    { name: w.holds, read: say(p.holds_mm2, 1, 'mm²'), asked: '' },
    { name: w.deposited, read: say(p.deposited_g, 1, 'g'), asked: '' },
    { name: w.spatter, read: say(p.spatter_g, 1, 'g'), asked: '' },
    { name: w.dripped, read: say(p.dripped_g, 1, 'g'), asked: '' },
  ];
}
