import { useMemo } from 'preact/hooks';
import { couponReport } from '../../../scoring/index.ts';
import type { StoredCoupon } from '../../core/session/shelf.ts';
import { oneDecimal } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import { CouponLines } from './coupon-lines.tsx';

/** The lines of the coupon that lies beside the cut, under those of the attempt. */
export function CouponFindings({ kept }: { kept: StoredCoupon }) {
  const report = useMemo(() => couponReport(kept.coupon), [kept]);
  const title = real.coupon.beside(oneDecimal(kept.coupon.y_mm));
  return (
    <section class="couponfindings" aria-label={title}>
      <h3>{title.charAt(0).toUpperCase() + title.slice(1)}</h3>
      <CouponLines report={report} coupon={kept.coupon} />
    </section>
  );
}
