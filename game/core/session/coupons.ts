import { signal } from '@preact/signals';
import {
  type Coupon,
  InputError,
  PICTURE_HEAD_BYTES,
  PICTURE_TAIL_BYTES,
  pictureEnds,
  pictureHead,
} from '../../../scoring/index.ts';
import { keepCoupon, listCoupons, type StoredCoupon } from '../../browser/stores/attempts.ts';
import { words } from '../../locale/index.ts';
import { problem } from './state.ts';

/** Real coupons kept with the attempt on the bench, newest first. */
export const coupons = signal<StoredCoupon[]>([]);
/** The one laid beside the cut, or null. */
export const besideCoupon = signal<StoredCoupon | null>(null);
/** A picture or marks file dropped on the page, for the coupon sheet to take up. */
export const couponFile = signal<File | null>(null);

/** A picture of a coupon, in this page only. */
export interface CouponPicture {
  name: string;
  blob: Blob;
  address: string;
  width_px: number;
  height_px: number;
}

let shown: string | null = null;

export async function refreshCoupons(attempt: string | null): Promise<void> {
  shown = attempt;
  besideCoupon.value = null;
  coupons.value = [];
  if (attempt === null) return;
  try {
    const found = await listCoupons(attempt);
    if (shown === attempt) coupons.value = found;
  } catch {
    coupons.value = [];
  }
}

/** Keeps a coupon with its attempt and lays it beside the cut. One coupon for each height; marking it anew replaces the marks. */
export async function keepWith(attempt: string, coupon: Coupon, picture: Blob | null): Promise<boolean> {
  const kept = { id: `${attempt}@${coupon.y_mm}`, attempt, made_ms: Date.now(), coupon, picture };
  try {
    await keepCoupon(kept);
    await refreshCoupons(attempt);
    besideCoupon.value = kept;
    return true;
  } catch {
    problem.value = words.problems.couponNotKept;
    return false;
  }
}

/**
 * Opens a picture without sending it anywhere. Its size is read from its first bytes before any of it is unpacked.
 * @throws InputError when it is no picture, too large or damaged
 */
export async function openPicture(blob: Blob, name: string): Promise<CouponPicture> {
  const head = new Uint8Array(await blob.slice(0, PICTURE_HEAD_BYTES).arrayBuffer());
  const { kind } = pictureHead(head, blob.size, name);
  const from = blob.size - Math.min(PICTURE_TAIL_BYTES, blob.size / 2);
  if (!pictureEnds(kind, new Uint8Array(await blob.slice(from).arrayBuffer())))
    throw new InputError(name, [
      { path: '', found: 'a picture that is cut off', allowed: 'a complete PNG or JPEG file' },
    ]);
  const address = URL.createObjectURL(blob.slice(0, blob.size, kind));
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
  } catch {
    URL.revokeObjectURL(address);
    throw new InputError(name, [
      { path: '', found: 'a picture this browser cannot show', allowed: 'a complete PNG or JPEG file' },
    ]);
  }
  return { name, blob, address, width_px: image.naturalWidth, height_px: image.naturalHeight };
}
