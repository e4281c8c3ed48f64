import { useState } from 'preact/hooks';
import type { Session } from '../../core/session/session.ts';
import { legOf } from '../../core/session/setup.ts';
import { words } from '../../locale/index.ts';
import { exercise, robotWelding, torchState } from '../../page.ts';
import { NumberValue } from '../value.tsx';
import { Balance } from './balance.tsx';
import { HoldValues } from './hold-values.tsx';
import { JointValues } from './joint-values.tsx';
import { ProcessValues } from './process-values.tsx';

const s = words.setting;

/** Joint, size and settings as one sentence in which every value can be edited, and what follows from them. */
export function Sentence({ session }: { session: Session }) {
  const disabled = torchState.value === 'welding' || torchState.value === 'out' || robotWelding.value;
  const [unfolded, setUnfolded] = useState(false);
  return (
    <div class="sentence" data-testid="sentence">
      <p class={unfolded ? 'settings whole' : 'settings'} id="settings">
        <JointValues session={session} disabled={disabled} />
        {s.asks.leg}{' '}
        <NumberValue
          disabled={disabled}
          label={s.fields.size}
          metric="mm"
          value={legOf(exercise.value)}
          from={2}
          to={15}
          step={0.5}
          decimals={1}
          unit="mm"
          set={(size_mm) => session.edit({ size_mm })}
        />
        <span class="dash"> — </span>
        <ProcessValues session={session} disabled={disabled} />
        <span class="dash"> — </span>
        <HoldValues session={session} disabled={disabled} />
      </p>
      <button
        type="button"
        class="link fold"
        aria-expanded={unfolded}
        aria-controls="settings"
        onClick={() => setUnfolded(!unfolded)}
      >
        {unfolded ? s.fewer : s.all}
      </button>
      <Balance />
    </div>
  );
}
