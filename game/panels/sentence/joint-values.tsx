import type { JointKind } from '../../../engine/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import { exercise } from '../../page.ts';
import { ChoiceValue, NumberValue } from '../value.tsx';

const s = words.setting;
const f = s.fields;
const j = s.joins;
const KINDS: readonly JointKind[] = ['tee', 'lap'];

/** Joint: its kind, plates, gap and temperature. */
export function JointValues({ session, disabled }: { session: Session; disabled: boolean }) {
  const { joint } = exercise.value;
  return (
    <>
      <ChoiceValue
        disabled={disabled}
        label={f.kind}
        value={joint.kind}
        options={KINDS.map((value) => ({ value, text: s.kind[value] }))}
        set={(kind) => session.edit({ joint: { kind } })}
      />
      {j.comma}
      <NumberValue
        disabled={disabled}
        label={f.plateB[joint.kind]}
        metric="mm"
        value={joint.plateB_mm}
        from={2}
        to={20}
        step={0.5}
        decimals={1}
        set={(plateB_mm) => session.edit({ joint: { plateB_mm } })}
      />
      {j.on}
      <NumberValue
        disabled={disabled}
        label={f.plateA[joint.kind]}
        metric="mm"
        value={joint.plateA_mm}
        from={2}
        to={20}
        step={0.5}
        decimals={1}
        unit="mm"
        set={(plateA_mm) => session.edit({ joint: { plateA_mm } })}
      />
      {j.plate}
      <NumberValue
        disabled={disabled}
        label={f.plateWidth}
        metric="mm"
        value={joint.plateWidth_mm}
        from={30}
        to={300}
        step={5}
        decimals={0}
        set={(plateWidth_mm) => session.edit({ joint: { plateWidth_mm } })}
      />
      {j.wide}
      <NumberValue
        disabled={disabled}
        label={f.length}
        metric="mm"
        value={joint.length_mm}
        from={30}
        to={300}
        step={5}
        decimals={0}
        set={(length_mm) => session.edit({ joint: { length_mm } })}
      />
      {j.long}
      <NumberValue
        disabled={disabled}
        label={f.gap}
        metric="mm"
        value={joint.gap_mm}
        from={0}
        to={3}
        step={0.25}
        decimals={2}
        say={(x) => (x === 0 ? s.noGap : s.gap(trimmed(x, 2)))}
        set={(gap_mm) => session.edit({ joint: { gap_mm } })}
      />
      {j.comma}
      <ChoiceValue
        disabled={disabled}
        label={f.tabs}
        value={joint.tabs ? 'yes' : 'no'}
        options={[
          { value: 'no', text: s.tabs.no },
          { value: 'yes', text: s.tabs.yes },
        ]}
        set={(tabs) => session.edit({ joint: { tabs: tabs === 'yes' } })}
      />
      {j.at}
      <NumberValue
        disabled={disabled}
        label={f.startTemp}
        value={joint.startTemp_C}
        from={-20}
        to={350}
        step={10}
        decimals={0}
        unit="°C"
        set={(startTemp_C) => session.edit({ joint: { startTemp_C } })}
      />
      {j.comma}
    </>
  );
}
