import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { exercise } from '../../page.ts';
import { NumberValue } from '../value.tsx';

const s = words.setting;
const f = s.fields;
const j = s.joins;

/** How the torch is to be held and moved. */
export function HoldValues({ session, disabled }: { session: Session; disabled: boolean }) {
  const e = exercise.value;
  const { hold } = e;
  return (
    <>
      <NumberValue
        disabled={disabled}
        label={f.tipToWork}
        metric="mm"
        value={hold.tipToWork_mm}
        from={e.free?.tipToWork_mm?.from ?? 5}
        to={e.free?.tipToWork_mm?.to ?? 25}
        step={1}
        decimals={0}
        set={(tipToWork_mm) => session.edit({ hold: { tipToWork_mm } })}
      />
      {j.held}
      <NumberValue
        disabled={disabled}
        label={f.workAngle}
        value={hold.workAngle_deg}
        from={e.free?.workAngle_deg?.from ?? 20}
        to={e.free?.workAngle_deg?.to ?? 70}
        step={5}
        decimals={0}
        unit="°"
        set={(workAngle_deg) => session.edit({ hold: { workAngle_deg } })}
      />
      {j.and}
      <NumberValue
        disabled={disabled}
        label={f.travelAngle}
        value={hold.travelAngle_deg}
        from={e.free?.travelAngle_deg?.from ?? -20}
        to={e.free?.travelAngle_deg?.to ?? 30}
        step={5}
        decimals={0}
        unit="°"
        set={(travelAngle_deg) => session.edit({ hold: { travelAngle_deg } })}
      />
      {j.climbing}
      <NumberValue
        disabled={disabled}
        label={f.travel}
        metric="mm/s"
        value={e.demonstration.travel_mmps}
        from={0.8}
        to={6}
        step={0.2}
        decimals={1}
        unit="mm/s"
        set={(travel_mmps) => session.edit({ travel_mmps })}
      />
      {j.stop}
    </>
  );
}
