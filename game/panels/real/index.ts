import '../../style/marking.css';

export { CouponBeside } from './couponBeside.tsx';
export { CouponDialog } from './couponDialog.tsx';
export { CouponFindings } from './couponFindings.tsx';
export { MeasureDialog } from './measureDialog.tsx';
