import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Coupon, type CouponReport, couponReport, profiles, readCoupon } from '../../../scoring/index.ts';
import type { CouponPicture } from '../../core/ports.ts';
import { readText } from '../../core/session/files.ts';
import type { Session } from '../../core/session/session.ts';
import type { StoredCoupon } from '../../core/session/shelf.ts';
import { trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import { cutAt, exercise, finished } from '../../page.ts';
import { couponFile } from '../../panels/dropped.ts';
import { Dialog } from '../dialog.tsx';
import { Board, Loupe } from './board.tsx';
import { CouponLines } from './coupon-lines.tsx';
import { couponFrom, marksFrom, whyNot } from './coupon-marks.ts';
import { missing } from './marks.ts';
import { StepFoot, StepList } from './step-list.tsx';
import { couponSteps } from './steps.ts';
import { useMarks } from './use-marks.ts';

const w = real.coupon;

/** A photograph of a real cut: scale, root, plates, toes, face and fusion line are marked on it and read by the same geometry. */
export function CouponDialog(props: { session: Session; kept: StoredCoupon | null; close: () => void }) {
  const { session, kept, close } = props;
  const own = kept?.coupon ?? null;
  const [about, setAbout] = useState(() => ({
    joint: own?.joint ?? exercise.peek().joint,
    asked: own?.asked ?? exercise.peek().asked,
    ...limitsOf(own ?? exercise.peek()),
  }));
  const { kind } = about.joint;
  const steps = useMemo(() => couponSteps(kind), [kind]);
  const set = useMarks(steps);
  const [picture, setPicture] = useState<CouponPicture | null>(null);
  const [size, setSize] = useState<Coupon['picture'] | null>(null);
  const [length, setLength] = useState<number | null>(own?.scale.length_mm ?? null);
  const [height, setHeight] = useState(own?.y_mm ?? cutAt.peek());
  const [profile, setProfile] = useState(own?.profile ?? exercise.peek().profile);
  const [across, setAcross] = useState<number | null>(own?.across?.length_mm ?? null);
  const [reader, setReader] = useState(own?.reader ?? '');
  const [broken, setBroken] = useState<Broken>(own?.broken ?? NOT_BROKEN);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);

  const show = async (blob: Blob, name: string): Promise<void> => {
    const opened = await session.coupons.openPicture(blob, name);
    setPicture(opened);
    setSize({ name: opened.name.slice(0, 200), width_px: opened.width_px, height_px: opened.height_px });
  };
  const take = (coupon: Coupon): void => {
    setAbout({ joint: coupon.joint, asked: coupon.asked, ...limitsOf(coupon) });
    setAcross(coupon.across?.length_mm ?? null);
    setReader(coupon.reader ?? '');
    setBroken(coupon.broken ?? NOT_BROKEN);
    setSize(coupon.picture);
    setLength(coupon.scale.length_mm);
    setHeight(coupon.y_mm);
    setProfile(coupon.profile);
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

  const left = missing(steps, set.marks);
  const attempt = finished.value;
  const coupon =
    size && left.length === 0 && length !== null
      ? couponFrom(set.marks, {
          picture: size,
          length_mm: length,
          y_mm: height,
          profile,
          attempt: own ? own.attempt : (attempt?.hash ?? null),
          exercise: about,
          across_mm: across,
          reader,
          broken: brokenOf(broken),
        })
      : null;
  const still = [...left.map((step) => step.name), ...(length === null ? [w.length] : [])].map((name) =>
    name.toLowerCase(),
  );
  const report = reported(coupon);
  const board = size && { href: picture?.address ?? null, width: size.width_px, height: size.height_px };
  const change: typeof set.change = (marks, held) => {
    setDone(false);
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
            <button type="button" class="strong" onClick={() => chooser.current?.click()}>
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
              if (file) void open(file);
            }}
          />
          {problem && <p role="alert">{problem}</p>}
          {board && (
            <>
              {!picture && <p class="unit">{w.marksOnly}</p>}
              <StepList steps={steps} marks={set.marks} active={set.active} choose={set.setActive} change={change} />
              <Loupe picture={board} steps={steps} marks={set.marks} chosen={set.chosen} />
              <div class="entries">
                <Entry label={w.length} value={length} most={1000} set={setLength} />
                <Entry label={w.height} value={height} most={about.joint.length_mm} set={setHeight} />
                <label class="entry">
                  {w.profile}
                  <select value={profile} onChange={(event) => setProfile(event.currentTarget.value)}>
                    {about.limits && <option value={about.limits.name}>{about.limits.title}</option>}
                    {profiles.map((p) => (
                      <option key={p.name} value={p.name}>
                        {p.title}
                      </option>
                    ))}
                  </select>
                </label>
                {(set.marks.across?.length ?? 0) > 1 && (
                  <Entry label={w.across} value={across} most={1000} set={setAcross} />
                )}
                <label class="entry">
                  {w.reader}
                  <input
                    value={reader}
                    maxLength={20}
                    size={6}
                    onInput={(event) => setReader(event.currentTarget.value)}
                  />
                </label>
                <Entry
                  label={w.broken}
                  value={broken.tiedIn_mm}
                  most={2000}
                  set={(tiedIn_mm) => setBroken({ ...broken, tiedIn_mm })}
                />
                <Entry
                  label={w.brokenOf}
                  value={broken.of_mm}
                  most={2000}
                  set={(of_mm) => setBroken({ ...broken, of_mm })}
                />
                {broken.of_mm !== null && (
                  <label class="entry">
                    {w.brokenWhere}
                    <input
                      value={broken.where}
                      maxLength={200}
                      onInput={(event) => setBroken({ ...broken, where: event.currentTarget.value })}
                    />
                  </label>
                )}
                <p class="unit">{w.asked(trimmed(about.asked.size_mm, 1), about.asked.kind)}</p>
              </div>
              {still.length > 0 && <p class="unit">{real.board.still(still.join('; '))}</p>}
              {report.refused && <p role="alert">{report.refused}</p>}
              {coupon && report.found && <CouponLines report={report.found} coupon={coupon} />}
            </>
          )}
          {done && <p role="status">{w.kept}</p>}
          <p class="buttons">
            {coupon && report.found && (
              <>
                {attempt && (
                  <button
                    type="button"
                    class="strong"
                    onClick={() => void session.coupons.keep(attempt.id, coupon, picture?.blob ?? null).then(setDone)}
                  >
                    {w.keep}
                  </button>
                )}
                <button type="button" onClick={() => session.coupons.save(coupon)}>
                  {w.save}
                </button>
              </>
            )}
            {board && (
              <button type="button" onClick={() => chooser.current?.click()}>
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

/** The result of breaking the rest, as far as it has been typed. */
interface Broken {
  tiedIn_mm: number | null;
  of_mm: number | null;
  where: string;
}

const NOT_BROKEN: Broken = { tiedIn_mm: null, of_mm: null, where: '' };

function brokenOf({ tiedIn_mm, of_mm, where }: Broken): NonNullable<Coupon['broken']> | null {
  if (tiedIn_mm === null || of_mm === null || of_mm <= 0) return null;
  return { tiedIn_mm: Math.min(tiedIn_mm, of_mm), of_mm, where };
}

/** Limits of a school's own that go with the coupon; nothing where it is judged by a ready profile. */
function limitsOf({ limits }: Pick<Coupon, 'limits'>): Pick<Coupon, 'limits'> {
  return limits === undefined ? {} : { limits };
}

function reported(coupon: Coupon | null): { found: CouponReport | null; refused: string | null } {
  if (!coupon) return { found: null, refused: null };
  try {
    return { found: couponReport(coupon), refused: null };
  } catch (error) {
    return { found: null, refused: whyNot(error) };
  }
}

function Entry(props: { label: string; value: number | null; most: number; set: (x: number) => void }) {
  return (
    <label class="entry">
      {props.label}
      <span>
        <input
          type="number"
          min={0}
          max={props.most}
          step={0.5}
          value={props.value ?? ''}
          onChange={(event) => {
            const x = event.currentTarget.valueAsNumber;
            if (Number.isFinite(x)) props.set(Math.min(props.most, Math.max(0, x)));
          }}
        />{' '}
        mm
      </span>
    </label>
  );
}
