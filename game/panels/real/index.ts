import '../../style/marking.css';

export { CouponBeside } from './coupon-beside.tsx';
export { CouponDialog } from './coupon-dialog.tsx';
export { CouponFindings } from './coupon-findings.tsx';
export { MeasureDialog } from './measure-dialog.tsx';
