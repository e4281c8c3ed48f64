import { type PlusMinusName, plusMinusAt, runKindOf, type Station, weldedDown } from '../../scoring/index.ts';
import { CELL_MM } from '../core/session/setup.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, trimmed } from '../locale/numbers.ts';
import { exercise, result } from '../page.ts';
import { Inch } from './inch.tsx';

interface Row {
  name: string;
  value: number;
  plusMinus: PlusMinusName;
}

/** What was measured on one cut, each with its give or take; as many decimals as the drawing letters, so that both say the same. */
export function CutReadings({ station }: { station: Station }) {
  const kind = exercise.value.joint.kind;
  const c = words.cut.readings;
  const right = words.findings.side(kind, 'A');
  const left = words.findings.side(kind, 'B');
  const rows: Row[] = [
    { name: `${c.leg} ${left}`, value: station.legB_mm, plusMinus: 'leg' },
    { name: `${c.leg} ${right}`, value: station.legA_mm, plusMinus: 'leg' },
    { name: c.throat, value: station.throat_mm, plusMinus: 'throat' },
    { name: c.convexity, value: station.convexity_mm, plusMinus: 'convexity' },
    { name: `${c.undercut} ${left}`, value: station.undercutB_mm, plusMinus: 'undercut' },
    { name: `${c.undercut} ${right}`, value: station.undercutA_mm, plusMinus: 'undercut' },
    { name: `${c.fused} ${left}`, value: station.fusionDepthB_mm, plusMinus: 'fusion' },
    { name: `${c.fused} ${right}`, value: station.fusionDepthA_mm, plusMinus: 'fusion' },
  ];
  const off = plusMinusAt('root fusion', CELL_MM);
  const straight = exercise.value.demonstration.pattern === 'straight';
  // Before it has been measured, as it was asked for.
  const run = result.value === null ? (straight ? 'straight' : 'woven') : runKindOf(result.value.motion.width_mm);
  return (
    <table class="readings">
      <tbody>
        {rows.map((row) => (
          <tr key={row.name}>
            <th scope="row">{row.name}</th>
            <td>
              {oneDecimal(row.value)}
              <Inch x={row.value} />
            </td>
            <td class="unit">± {trimmed(plusMinusAt(row.plusMinus, CELL_MM, run), 2)}</td>
          </tr>
        ))}
        <tr class="root">
          <th scope="row">{c.root}</th>
          <td colSpan={2}>
            {result.value !== null && weldedDown(result.value) ? (
              c.down
            ) : (
              <>
                {rootSaid(station.rootFusion_mm, off)}
                <Inch x={station.rootFusion_mm} /> <span class="unit">± {trimmed(off, 2)}</span>
              </>
            )}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

/** A root is called tied in, or short, only where it is so by more than the reading may be off. */
function rootSaid(root_mm: number, off_mm: number): string {
  const c = words.cut.readings;
  if (Math.abs(root_mm) <= off_mm) return c.doubt(root_mm > 0 ? `+${oneDecimal(root_mm)}` : oneDecimal(root_mm));
  return root_mm > 0 ? c.past(oneDecimal(root_mm)) : c.short(oneDecimal(-root_mm));
}
