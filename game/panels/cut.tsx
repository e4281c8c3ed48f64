import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, whole } from '../locale/numbers.ts';
import {
  besideCoupon,
  coupons,
  cut,
  cutAt,
  exercise,
  finished,
  held,
  other,
  otherBusy,
  otherCut,
  otherStretch,
  readingsHidden,
  revealedAt,
  shelf,
  whatIf,
} from '../page.ts';
import { CutReadings } from './cut-readings.tsx';
import type { DialogName } from './dialog.tsx';
import { Drawing } from './drawing.tsx';
import { cutLetter } from './joint-marks.tsx';
import { CouponBeside } from './real-later.ts';
import { WhatIfSelect } from './what-if.tsx';
import { timeOfDay } from './when.ts';

/** The section at the cutting line, and beside it another attempt's at the same height, or a real coupon. */
export function CutPanel({ session, openDialog }: { session: Session; openDialog: (name: DialogName) => void }) {
  const e = exercise.value;
  const done = finished.value;
  const beside = other.value;
  const coupon = besideCoupon.value;
  // Whoever judges the attempt before the verdict is shown no reading of it, nor of one like it.
  const judging = held.value?.why === 'judge';
  return (
    <section class="cut" aria-label={words.cut.title(cutAt.value)}>
      <div class="cuthead">
        <h2>{words.cut.title(cutAt.value)}</h2>
        <span class="fixed">
          {e.cuts_mm.map((at, i) => (
            <button
              key={at}
              type="button"
              class={at === cutAt.value ? 'here' : ''}
              title={words.joint.fixedCut(at)}
              onClick={() => session.cutAt(at)}
            >
              {cutLetter(i)} {oneDecimal(at)}
            </button>
          ))}
        </span>
        {done && cut.value?.station && (
          <button type="button" class="link" onClick={() => openDialog('measure')}>
            {words.cut.measure}
          </button>
        )}
        {done && cut.value?.station && !readingsHidden.value && (
          <button type="button" class="link" title={words.cut.saveLong} onClick={() => session.saver.cut()}>
            {words.cut.save}
          </button>
        )}
        {done && !judging && <WhatIfSelect session={session} />}
        {(done || beside) && !judging && <CompareSelect session={session} openDialog={openDialog} />}
      </div>
      <div class={beside ? 'plates two' : coupon ? 'plates real' : 'plates'}>
        {cut.value ? (
          <Drawing cut={cut.value} leads caption={beside || coupon ? words.cut.thisOne : undefined} />
        ) : (
          <p class="teach">{words.cut.empty}</p>
        )}
        {beside ? (
          otherCut.value ? (
            <Drawing
              cut={otherCut.value}
              leads={false}
              caption={`${besideTitle(beside.title)}; ${otherStretch.value ? words.whatIf.stretch : words.cut.difference}`}
              against={cut.value}
            />
          ) : (
            <p class="teach">
              {words.findings.weldingAgain} {whole((otherBusy.value?.share ?? 0) * 100)} %
            </p>
          )
        ) : coupon ? (
          <CouponBeside kept={coupon} open={() => openDialog('coupon')} />
        ) : (
          cut.value?.station &&
          (readingsHidden.value ? !judging && <Hidden /> : <CutReadings station={cut.value.station} />)
        )}
      </div>
    </section>
  );
}

function besideTitle(title: string | null): string {
  const change = whatIf.value;
  if (change) return words.whatIf.yours(change, exercise.value.joint.kind);
  return title ?? words.shelf.untitled;
}

/** The choice that opens the sheet for a coupon not yet marked. */
const ANOTHER = 'another coupon';

/** What may be laid beside the cut: a kept attempt, or a real coupon kept with this one. */
function CompareSelect({ session, openDialog }: { session: Session; openDialog: (name: DialogName) => void }) {
  const others = shelf.value.filter((entry) => entry.id !== finished.value?.id && entry.damaged === null);
  const real = coupons.value;
  const choose = (value: string): void => {
    if (value === ANOTHER) {
      besideCoupon.value = null;
      void session.opener.beside(null);
      openDialog('coupon');
      return;
    }
    const coupon = real.find((kept) => kept.id === value) ?? null;
    besideCoupon.value = coupon;
    if (coupon) session.cutAt(coupon.coupon.y_mm);
    void session.opener.beside(coupon || value === '' ? null : value);
  };
  return (
    <label class="compare">
      {words.cut.compare}{' '}
      <select
        value={besideCoupon.value?.id ?? (whatIf.value ? '' : (other.value?.id ?? ''))}
        onChange={(event) => {
          const { value } = event.currentTarget;
          // Nothing lies beside the cut until the coupon has been marked and kept.
          if (value === ANOTHER) event.currentTarget.value = '';
          choose(value);
        }}
      >
        <option value="">{words.cut.nothing}</option>
        {real.map((kept) => (
          <option key={kept.id} value={kept.id}>
            {words.cut.coupon(kept.coupon.y_mm)}
          </option>
        ))}
        {others.map((entry) => (
          <option key={entry.id} value={entry.id}>
            {entry.title ?? words.shelf.untitled}, {timeOfDay(entry.made_ms)}
            {entry.verdict ? `, ${words.findings.verdict[entry.verdict]}` : ''}
          </option>
        ))}
        <option value={ANOTHER}>{words.cut.real}</option>
      </select>
    </label>
  );
}

/** Readings held back until the user has measured, or asks for them. */
function Hidden() {
  return (
    <p class="heldback">
      {words.cut.hidden}{' '}
      <button
        type="button"
        class="link"
        onClick={() => {
          revealedAt.value = cutAt.value;
        }}
      >
        {words.cut.show}
      </button>
    </p>
  );
}
