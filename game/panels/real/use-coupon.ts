import { useEffect, useMemo, useState } from 'preact/hooks';
import { type Coupon, type CouponReport, couponReport, readCoupon } from '../../../scoring/index.ts';
import type { CouponPicture } from '../../core/ports.ts';
import { readText } from '../../core/session/files.ts';
import type { Session } from '../../core/session/session.ts';
import type { StoredCoupon } from '../../core/session/shelf.ts';
import { real } from '../../locale/real-words.ts';
import { cutAt, exercise, finished } from '../../page.ts';
import { couponFile } from '../../panels/dropped.ts';
import { couponFrom, marksFrom, whyNot } from './coupon-marks.ts';
import { missing } from './marks.ts';
import { couponSteps } from './steps.ts';
import { aboutOf, brokenOf, nothingTyped, typedOf } from './typed.ts';
import { useMarks } from './use-marks.ts';

/** A coupon in the making: picture, marks and what is typed beside them, and what they come to. */
export function useCoupon(session: Session, kept: StoredCoupon | null) {
  const own = kept?.coupon ?? null;
  const [about, setAbout] = useState(() => aboutOf(own ?? exercise.peek()));
  const [typed, setTyped] = useState(() => (own ? typedOf(own) : nothingTyped(cutAt.peek(), exercise.peek().profile)));
  const steps = useMemo(() => couponSteps(about.joint.kind), [about.joint.kind]);
  const set = useMarks(steps);
  const [picture, setPicture] = useState<CouponPicture | null>(null);
  const [size, setSize] = useState<Coupon['picture'] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState(false);

  const show = async (blob: Blob, name: string): Promise<void> => {
    const opened = await session.coupons.openPicture(blob, name);
    setPicture(opened);
    setSize({ name: opened.name.slice(0, 200), width_px: opened.width_px, height_px: opened.height_px });
  };
  const take = (coupon: Coupon): void => {
    setAbout(aboutOf(coupon));
    setTyped(typedOf(coupon));
    setSize(coupon.picture);
    set.change(marksFrom(coupon));
  };
  const open = async (file: File): Promise<void> => {
    setProblem(null);
    setDone(false);
    try {
      if (file.name.endsWith('.json')) take(readCoupon(await readText(file), file.name));
      else await show(file, file.name);
    } catch (error) {
      setProblem(`${file.name}: ${whyNot(error)}`);
    }
  };

  useEffect(() => {
    if (kept) {
      take(kept.coupon);
      if (kept.picture) show(kept.picture, kept.coupon.picture.name).catch((error) => setProblem(whyNot(error)));
    }
    const dropped = couponFile.peek();
    couponFile.value = null;
    if (dropped) void open(dropped);
  }, []);
  useEffect(
    () => () => {
      if (picture) session.coupons.closePicture(picture);
    },
    [picture, session],
  );

  const { length_mm, y_mm, profile, across_mm, reader } = typed;
  const left = missing(steps, set.marks);
  const coupon =
    size && left.length === 0 && length_mm !== null
      ? couponFrom(set.marks, {
          picture: size,
          length_mm,
          y_mm,
          profile,
          attempt: own ? own.attempt : (finished.value?.hash ?? null),
          exercise: about,
          across_mm,
          reader,
          broken: brokenOf(typed.broken),
        })
      : null;
  const still = [...left.map((step) => step.name), ...(length_mm === null ? [real.coupon.length] : [])];
  return {
    about,
    steps,
    set,
    picture,
    board: size && { href: picture?.address ?? null, width: size.width_px, height: size.height_px },
    typed,
    type: (change: Partial<typeof typed>) => setTyped({ ...typed, ...change }),
    problem,
    /** It has been kept as it stands. */
    done,
    setDone,
    open,
    /** Names of what is still to be marked or typed. */
    still: still.map((name) => name.toLowerCase()),
    coupon,
    report: reported(coupon),
  };
}

function reported(coupon: Coupon | null): { found: CouponReport | null; refused: string | null } {
  if (!coupon) return { found: null, refused: null };
  try {
    return { found: couponReport(coupon), refused: null };
  } catch (error) {
    return { found: null, refused: whyNot(error) };
  }
}
