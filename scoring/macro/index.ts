export { type ByHandName, byHand, byHandOn, MARK_PX, type PictureScale } from './by-hand.ts';
export { type Coupon, checkCoupon, couponSchema, couponVersions, readCoupon } from './coupon.ts';
export { type CouponReport, couponReport } from './coupon-report.ts';
export { type CutFrame, cutFrame, type EtchedCut, etchedCut } from './etched.ts';
export { type JointFrame, jointFrame, placeMarks, placeOf, scaleOf } from './joint-frame.ts';
export { type PictureMarks, type PictureSpot, type PlacedMarks, pictureMarksSchema } from './marks.ts';
export {
  compareOwn,
  type LineMet,
  type OwnMark,
  type OwnMarks,
  type OwnReading,
  type OwnRow,
  type OwnSide,
} from './own-reading.ts';
export {
  MOST_PICTURE_BYTES,
  MOST_PICTURE_PX,
  PICTURE_HEAD_BYTES,
  PICTURE_TAIL_BYTES,
  type PictureHead,
  pictureEnds,
  pictureHead,
} from './picture.ts';
export { type MarkedReadings, readMarks } from './read-marks.ts';
