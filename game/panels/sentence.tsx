import { useState } from 'preact/hooks';
import type { GasName, JointKind, ProcessOptions } from '../../engine/index.ts';
import { leftToTrainee, wordsIn } from '../../scoring/index.ts';
import type { Session } from '../core/session/session.ts';
import { legOf } from '../core/session/setup.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, trimmed, whole } from '../locale/numbers.ts';
import { balance, exercise, language, robotWelding, torchState } from '../page.ts';
import { ChoiceValue, NumberValue } from './value.tsx';

const s = words.setting;
const f = s.fields;
const j = s.joins;
const WIRES = ['0.8', '0.9', '1', '1.2'] as const;
const KINDS: readonly JointKind[] = ['tee', 'lap'];
const GASES: readonly GasName[] = ['M21-ArC-18', 'M21-ArC-25', 'C1'];

/** Joint, size and settings as one sentence in which every value can be edited, and what follows from them. */
export function Sentence({ session }: { session: Session }) {
  const e = exercise.value;
  const { joint, process, hold } = e;
  const busy = torchState.value === 'welding' || torchState.value === 'out' || robotWelding.value;
  const common = { disabled: busy };
  const [unfolded, setUnfolded] = useState(false);
  return (
    <div class="sentence" data-testid="sentence">
      <p class={unfolded ? 'settings whole' : 'settings'} id="settings">
        <ChoiceValue
          {...common}
          label={f.kind}
          value={joint.kind}
          options={KINDS.map((value) => ({ value, text: s.kind[value] }))}
          set={(kind) => session.edit({ joint: { kind } })}
        />
        {j.comma}
        <NumberValue
          {...common}
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
          {...common}
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
          {...common}
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
          {...common}
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
          {...common}
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
          {...common}
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
          {...common}
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
        {s.asks.leg}{' '}
        <NumberValue
          {...common}
          label={f.size}
          metric="mm"
          value={legOf(e)}
          from={2}
          to={15}
          step={0.5}
          decimals={1}
          unit="mm"
          set={(size_mm) => session.edit({ size_mm })}
        />
        <span class="dash"> — </span>
        <ProcessValues session={session} process={process} disabled={busy} />
        <span class="dash"> — </span>
        <NumberValue
          {...common}
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
          {...common}
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
          {...common}
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
          {...common}
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

function ProcessValues({
  session,
  process,
  disabled,
}: {
  session: Session;
  process: ProcessOptions;
  disabled: boolean;
}) {
  const { free } = exercise.value;
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

/** Metal laid against metal held, said before the arc is struck. */
function Balance() {
  const { laid_mm2, holds_mm2, most_mm2, stands, current_A, regime, dips_V } = balance.value;
  const { vary, piece } = exercise.value;
  const left = leftToTrainee(exercise.value, wordsIn(language.value).left);
  const thick = legOf(exercise.value) > 6;
  return (
    <p class="balance" data-testid="balance">
      {whole(current_A)}
      <span class="unit"> A</span>
      {j.laying}
      <b>{oneDecimal(laid_mm2)}</b>
      <span class="unit"> mm²</span>
      {j.holds}
      <b>{oneDecimal(holds_mm2)}</b>
      {j.colon}
      {stands === 'even' && s.even}
      {stands === 'within' && s.within(most_mm2 ?? holds_mm2)}
      {stands === 'over' && s.over(laid_mm2 - (most_mm2 ?? holds_mm2), most_mm2)}
      {stands === 'short' && s.under(holds_mm2 - laid_mm2)}
      {j.stop}
      {left.length > 0 && s.left(left.join('; '))}
      {vary && (piece ? s.piece(piece.number) : s.noPiece)}
      {thick && s.thick}
      {regime === 'stubbing' || regime === 'globular' ? s.transfer[regime](dips_V.low, dips_V.high) : ''}
    </p>
  );
}
