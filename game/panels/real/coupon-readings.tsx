import { byHandOn, type Coupon, type MarkedReadings, type PictureScale, scaleOf } from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';

type Name = Parameters<typeof byHandOn>[0];

/** What the marks come to, each with what a hand may be off; a line for everything that was marked. */
export function CouponReadings({ coupon, readings }: { coupon: Coupon; readings: MarkedReadings }) {
  const scale = scaleOf(coupon.scale.from, coupon.scale.to, coupon.scale.length_mm);
  return (
    <table class="readings whole" data-testid="coupon-readings">
      <tbody>
        {rowsOf(readings, coupon.joint.kind).map((row) => (
          <tr key={row.name}>
            <th scope="row">{row.name}</th>
            <td>{row.said}</td>
            <td class="unit">± {offBy(row.plusMinus, row.value, scale)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface Row {
  name: string;
  value: number;
  said: string;
  plusMinus: Name;
}

function offBy(name: Name, value: number, scale: PictureScale): string {
  const off = byHandOn(name, Math.abs(value), scale);
  return name === 'toe angle' ? `${trimmed(off, 0)}°` : trimmed(off, 2);
}

function rowsOf(r: MarkedReadings, kind: Coupon['joint']['kind']): Row[] {
  const c = words.cut.readings;
  const right = words.findings.side(kind, 'A');
  const left = words.findings.side(kind, 'B');
  const rows: Row[] = [];
  const row = (name: string, value: number | null, plusMinus: Name): void => {
    if (value !== null)
      rows.push({
        name,
        value,
        plusMinus,
        said: plusMinus === 'toe angle' ? `${trimmed(value, 0)}°` : trimmed(value, 2),
      });
  };
  row(`${c.leg} ${left}`, r.legB_mm, 'leg');
  row(`${c.leg} ${right}`, r.legA_mm, 'leg');
  row(c.throat, r.throat_mm, 'throat');
  row(c.convexity, r.convexity_mm, 'convexity');
  if (r.concavity_mm > r.convexity_mm) row(real.coupon.hollow, r.concavity_mm, 'convexity');
  row(`${real.coupon.toeAngle} ${left}`, r.toeAngleB_deg, 'toe angle');
  row(`${real.coupon.toeAngle} ${right}`, r.toeAngleA_deg, 'toe angle');
  row(`${c.undercut} ${left}`, r.undercutB_mm, 'undercut');
  row(`${c.undercut} ${right}`, r.undercutA_mm, 'undercut');
  row(`${c.fused} ${left}`, r.fusionDepthB_mm, 'fusion');
  row(`${c.fused} ${right}`, r.fusionDepthA_mm, 'fusion');
  if (r.rootFusion_mm !== null)
    rows.push({
      name: c.root,
      value: r.rootFusion_mm,
      plusMinus: 'root fusion',
      said: r.rootFusion_mm > 0 ? c.past(trimmed(r.rootFusion_mm, 2)) : c.short(trimmed(-r.rootFusion_mm, 2)),
    });
  return rows;
}
