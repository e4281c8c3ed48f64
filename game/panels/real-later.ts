import { later } from './later.tsx';

const fetchReal = () => import('./real/index.ts');

/** Sheets for measuring by hand; fetched when first shown. */
export const MeasureDialog = later(() => fetchReal().then((real) => real.MeasureDialog));
export const CouponDialog = later(() => fetchReal().then((real) => real.CouponDialog));
export const CouponBeside = later(() => fetchReal().then((real) => real.CouponBeside));
export const CouponFindings = later(() => fetchReal().then((real) => real.CouponFindings));
