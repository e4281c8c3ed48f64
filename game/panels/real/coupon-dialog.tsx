import { useRef } from 'preact/hooks';
import type { Session } from '../../core/session/session.ts';
import type { StoredCoupon } from '../../core/session/shelf.ts';
import { real } from '../../locale/real-words.ts';
import { finished } from '../../page.ts';
import { Dialog } from '../dialog.tsx';
import { Board, Loupe } from './board.tsx';
import { CouponEntries } from './coupon-entries.tsx';
import { CouponLines } from './coupon-lines.tsx';
import { StepFoot, StepList } from './step-list.tsx';
import { useCoupon } from './use-coupon.ts';

const w = real.coupon;

/** A photograph of a real cut: scale, root, plates, toes, face and fusion line are marked on it and read by the same geometry. */
export function CouponDialog(props: { session: Session; kept: StoredCoupon | null; close: () => void }) {
  const { session, kept, close } = props;
  const made = useCoupon(session, kept);
  const { steps, set, board, coupon, report } = made;
  const chooser = useRef<HTMLInputElement>(null);
  const choose = (): void => chooser.current?.click();
  const attempt = finished.value;
  const change: typeof set.change = (marks, held) => {
    made.setDone(false);
    set.change(marks, held);
  };

  return (
    <Dialog title={w.title} close={close} wide>
      <div class="marking">
        {board ? (
          <Board
            picture={board}
            steps={steps}
            marks={set.marks}
            active={set.active}
            chosen={set.chosen}
            fixed={false}
            place={set.place}
            foot={<StepFoot steps={steps} marks={set.marks} active={set.active} choose={set.setActive} />}
            change={change}
          />
        ) : (
          <div class="choose">
            <p>{w.teach}</p>
            <button type="button" class="strong" onClick={choose}>
              {w.choose}
            </button>
          </div>
        )}
        <div class="markside">
          <input
            ref={chooser}
            type="file"
            accept="image/png,image/jpeg,.json"
            hidden
            data-testid="coupon-file"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              event.currentTarget.value = '';
              if (file) void made.open(file);
            }}
          />
          {made.problem && <p role="alert">{made.problem}</p>}
          {board && (
            <>
              {!made.picture && <p class="unit">{w.marksOnly}</p>}
              <StepList steps={steps} marks={set.marks} active={set.active} choose={set.setActive} change={change} />
              <Loupe picture={board} steps={steps} marks={set.marks} chosen={set.chosen} />
              <CouponEntries
                about={made.about}
                typed={made.typed}
                twoWays={(set.marks.across?.length ?? 0) > 1}
                type={made.type}
              />
              {made.still.length > 0 && <p class="unit">{real.board.still(made.still.join('; '))}</p>}
              {report.refused && <p role="alert">{report.refused}</p>}
              {coupon && report.found && <CouponLines report={report.found} coupon={coupon} />}
            </>
          )}
          {made.done && <p role="status">{w.kept}</p>}
          <p class="buttons">
            {coupon && report.found && attempt && (
              <button
                type="button"
                class="strong"
                onClick={() =>
                  void session.coupons.keep(attempt.id, coupon, made.picture?.blob ?? null).then(made.setDone)
                }
              >
                {w.keep}
              </button>
            )}
            {coupon && report.found && (
              <button type="button" onClick={() => session.coupons.save(coupon)}>
                {w.save}
              </button>
            )}
            {board && (
              <button type="button" onClick={choose}>
                {w.other}
              </button>
            )}
            <button type="button" onClick={close}>
              {w.close}
            </button>
          </p>
          {coupon && !attempt && <p class="unit">{w.alone}</p>}
        </div>
      </div>
    </Dialog>
  );
}
