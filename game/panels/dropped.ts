import { signal } from '@preact/signals';

/** A picture or marks file dropped on the page, for the coupon sheet to take up. */
export const couponFile = signal<File | null>(null);
