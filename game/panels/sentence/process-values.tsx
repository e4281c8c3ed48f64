import type { GasName, ProcessOptions } from '../../../engine/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { oneDecimal, trimmed } from '../../locale/numbers.ts';
import { exercise } from '../../page.ts';
import { ChoiceValue, NumberValue } from '../value.tsx';

const s = words.setting;
const f = s.fields;
const j = s.joins;
const WIRES = ['0.8', '0.9', '1', '1.2'] as const;
const GASES: readonly GasName[] = ['M21-ArC-18', 'M21-ArC-25', 'C1'];

/** The machine's settings; where the exercise leaves them free in a range, within it. */
export function ProcessValues({ session, disabled }: { session: Session; disabled: boolean }) {
  const { free, process } = exercise.value;
  return (
    <>
      <ChoiceValue
        disabled={disabled}
        label={f.wire}
        value={WIRES.find((w) => Number(w) === process.wire_mm) ?? '0.9'}
        options={WIRES.filter((value) => free?.wire_mm?.some((wire) => wire === Number(value)) ?? true).map(
          (value) => ({ value, text: oneDecimal(Number(value)) }),
        )}
        set={(wire) => session.edit({ process: { wire_mm: Number(wire) as ProcessOptions['wire_mm'] } })}
      />
      {j.wire}
      <NumberValue
        disabled={disabled}
        label={f.feed}
        metric="m/min"
        value={process.feed_mpmin}
        from={free?.feed_mpmin?.from ?? 1}
        to={free?.feed_mpmin?.to ?? 12}
        step={0.1}
        decimals={1}
        unit="m/min"
        set={(feed_mpmin) => session.edit({ process: { feed_mpmin } })}
      />
      {j.comma}
      <NumberValue
        disabled={disabled}
        label={f.volts}
        value={process.volts_V}
        from={free?.volts_V?.from ?? 12}
        to={free?.volts_V?.to ?? 30}
        step={0.5}
        decimals={1}
        unit="V"
        set={(volts_V) => session.edit({ process: { volts_V } })}
      />
      {j.comma}
      <ChoiceValue
        disabled={disabled}
        label={f.gas}
        value={process.gas}
        options={GASES.filter((value) => free?.gas?.includes(value) ?? true).map((value) => ({
          value,
          text: s.gas[value],
        }))}
        set={(gas) => session.edit({ process: { gas } })}
      />
      {j.tip}
      <NumberValue
        disabled={disabled}
        label={f.tip}
        value={process.tip_mm}
        from={free?.tip_mm?.from ?? -6}
        to={free?.tip_mm?.to ?? 6}
        step={1}
        decimals={0}
        say={(x) => (x === 0 ? s.flush : x > 0 ? s.out(trimmed(x, 0)) : s.in(trimmed(-x, 0)))}
        set={(tip_mm) => session.edit({ process: { tip_mm } })}
      />
      {j.inA}
      <NumberValue
        disabled={disabled}
        label={f.nozzle}
        metric="mm"
        value={process.nozzle_mm}
        from={free?.nozzle_mm?.from ?? 10}
        to={free?.nozzle_mm?.to ?? 26}
        step={1}
        decimals={0}
        set={(nozzle_mm) => session.edit({ process: { nozzle_mm } })}
      />
      {j.nozzle}
    </>
  );
}
