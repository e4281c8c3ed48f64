import type { Session } from '../../core/session/session.ts';
import { TechniquesPanel } from './techniques.tsx';

/** What is sawn and read at the desk: two techniques on one coupon. */
export function CouponDeskPanel({ session }: { session: Session }) {
  return <TechniquesPanel session={session} />;
}
