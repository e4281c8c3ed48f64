import type { Coupon, CouponReport, Line } from '../../../scoring/index.ts';
import { ready, words } from '../../locale/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { CouponReadings } from './coupon-readings.tsx';

/** The lines of a real coupon, the readings they rest on, and what was not measured. */
export function CouponLines({ report, coupon }: { report: CouponReport; coupon: Coupon }) {
  const { kind } = coupon.joint;
  const decimals = (unit: Line['unit']): number => (unit === 'in' ? 3 : unit === 'mm' ? 2 : 0);
  return (
    <div class="couponlines">
      <p class="ruling" data-testid="coupon-verdict">
        <VerdictMark verdict={report.verdict} /> <span class="unit">{ready(report.profile.title)}</span>
      </p>
      <table class="lines" data-testid="coupon-lines">
        <tbody>
          {report.lines.map((line) => (
            <tr
              key={`${line.measure}${line.side}${line.rule}`}
              class={line.verdict === 'within' ? '' : 'notwithin'}
              title={ready(line.rule)}
            >
              <th scope="row">
                {words.findings.measure(line.measure)} <span class="side">{words.findings.side(kind, line.side)}</span>
              </th>
              <td class="number">
                {trimmed(line.reading, decimals(line.unit))}{' '}
                <span class="unit">± {trimmed(line.plusMinus, decimals(line.unit))}</span>
              </td>
              <td class="number">
                <span class="unit">{line.sense === 'at most' ? '≤' : '≥'} </span>
                {trimmed(line.limit, decimals(line.unit))}{' '}
                <span class="unit">{line.unit === 'deg' ? '°' : line.unit}</span>
              </td>
              <td>
                <VerdictMark verdict={line.verdict} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <CouponReadings coupon={coupon} readings={report.readings} />
      <p class="unit">
        {words.findings.notMeasured}: {report.notMeasured.map((gap) => `${gap.what} (${gap.why})`).join('; ')}.
      </p>
      {report.offSquare_deg !== null && <p class="unit">{real.coupon.offSquare(trimmed(report.offSquare_deg, 1))}</p>}
      {coupon.broken && (
        <p class="unit">
          {real.coupon.brokenSaid(
            trimmed(coupon.broken.tiedIn_mm, 1),
            trimmed(coupon.broken.of_mm, 1),
            coupon.broken.where,
          )}
        </p>
      )}
      <p class="unit">{real.coupon.byHand}</p>
    </div>
  );
}
