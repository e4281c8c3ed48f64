import { profiles } from '../../../scoring/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import type { About, Typed } from './typed.ts';

const w = real.coupon;

interface Props {
  about: About;
  typed: Typed;
  /** The scale has been marked the other way too. */
  twoWays: boolean;
  type: (change: Partial<Typed>) => void;
}

/** What is typed beside the marks: lengths, limits, reader, break test. */
export function CouponEntries({ about, typed, twoWays, type }: Props) {
  const { broken } = typed;
  return (
    <div class="entries">
      <Entry label={w.length} value={typed.length_mm} most={1000} set={(length_mm) => type({ length_mm })} />
      <Entry label={w.height} value={typed.y_mm} most={about.joint.length_mm} set={(y_mm) => type({ y_mm })} />
      <label class="entry">
        {w.profile}
        <select value={typed.profile} onChange={(event) => type({ profile: event.currentTarget.value })}>
          {about.limits && <option value={about.limits.name}>{about.limits.title}</option>}
          {profiles.map((p) => (
            <option key={p.name} value={p.name}>
              {p.title}
            </option>
          ))}
        </select>
      </label>
      {twoWays && (
        <Entry label={w.across} value={typed.across_mm} most={1000} set={(across_mm) => type({ across_mm })} />
      )}
      <TextEntry label={w.reader} value={typed.reader} longest={20} size={6} set={(reader) => type({ reader })} />
      <Entry
        label={w.broken}
        value={broken.tiedIn_mm}
        most={2000}
        set={(tiedIn_mm) => type({ broken: { ...broken, tiedIn_mm } })}
      />
      <Entry
        label={w.brokenOf}
        value={broken.of_mm}
        most={2000}
        set={(of_mm) => type({ broken: { ...broken, of_mm } })}
      />
      {broken.of_mm !== null && (
        <TextEntry
          label={w.brokenWhere}
          value={broken.where}
          longest={200}
          set={(where) => type({ broken: { ...broken, where } })}
        />
      )}
      <p class="unit">{w.asked(trimmed(about.asked.size_mm, 1), about.asked.kind)}</p>
    </div>
  );
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

function TextEntry(props: {
  label: string;
  value: string;
  longest: number;
  size?: number;
  set: (text: string) => void;
}) {
  return (
    <label class="entry">
      {props.label}
      <input
        value={props.value}
        maxLength={props.longest}
        size={props.size}
        onInput={(event) => props.set(event.currentTarget.value)}
      />
    </label>
  );
}
