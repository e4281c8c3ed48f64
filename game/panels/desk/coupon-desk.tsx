import type { Session } from '../../core/session/session.ts';
import { ReadersPanel } from './readers.tsx';
import { TechniquesPanel } from './techniques.tsx';

/** What is sawn and read at the desk: two techniques on one coupon, and how far several readers of macros agree. */
export function CouponDeskPanel({ session }: { session: Session }) {
  return (
    <>
      <TechniquesPanel session={session} />
      <ReadersPanel session={session} />
    </>
  );
}
