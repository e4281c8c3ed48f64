import type { Coupon } from '../../../scoring/index.ts';
import type { CouponPicture, Ports } from '../ports.ts';
import { fileName } from './files.ts';
import type { State } from './state.ts';

/** Real coupons kept beside attempts. One coupon for each height; marking it anew replaces the marks. */
export class Coupons {
  private shown: string | null = null;

  constructor(
    private readonly ports: Pick<Ports, 'clock' | 'coupons' | 'files'>,
    private readonly state: State,
  ) {}

  /** Shows the coupons of an attempt; null shows none. */
  async show(attempt: string | null): Promise<void> {
    const { state } = this;
    this.shown = attempt;
    state.besideCoupon.value = null;
    state.coupons.value = [];
    if (attempt === null) return;
    try {
      const found = await this.ports.coupons.of(attempt);
      if (this.shown === attempt) state.coupons.value = found.sort((a, b) => b.made_ms - a.made_ms);
    } catch {
      state.coupons.value = [];
    }
  }

  /** Keeps a coupon with its attempt and lays it beside the cut. Says whether it could. */
  async keep(attempt: string, coupon: Coupon, picture: Blob | null): Promise<boolean> {
    const kept = {
      id: `${attempt}@${coupon.y_mm}`,
      attempt,
      made_ms: this.ports.clock.date_ms(),
      coupon,
      picture,
    };
    try {
      await this.ports.coupons.put(kept);
      await this.show(attempt);
      this.state.besideCoupon.value = kept;
      return true;
    } catch {
      this.state.problem.value = { code: 'coupon-not-kept' };
      return false;
    }
  }

  /** Hands the marks to the user as a file. */
  save(coupon: Coupon): void {
    const name = fileName(this.ports.clock.written(this.ports.clock.date_ms()), 'cut').replace('.json', '.coupon.json');
    this.ports.files.save(coupon, name);
  }

  /** @throws InputError or PictureProblem */
  openPicture(blob: Blob, name: string): Promise<CouponPicture> {
    return this.ports.files.openPicture(blob, name);
  }

  closePicture(picture: CouponPicture): void {
    this.ports.files.closePicture(picture);
  }
}
