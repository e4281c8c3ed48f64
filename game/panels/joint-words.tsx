import { wireState } from '../../engine/index.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, whole } from '../locale/numbers.ts';
import {
  busy,
  deviceKind,
  drill,
  exercise,
  finished,
  live,
  preferences,
  restrikeLeft_s,
  result,
  robotWelding,
  torchState,
} from '../page.ts';

/** Words over the joint: what to do when nothing has happened, quiet read-outs while welding, why it ended. */
export function JointWords({ session }: { session: Session }) {
  const torch = torchState.value;
  const kind = exercise.value.joint.kind;
  const welding = torch === 'welding' || torch === 'out' || robotWelding.value;
  return (
    <>
      {!welding && <span class="platename left">{words.joint.left[kind]}</span>}
      {!welding && <span class="platename right">{words.joint.right[kind]}</span>}
      {torch === 'idle' && !welding && !busy.value && !drill.value && (
        <p class="teach">{matchMedia('(pointer: coarse)').matches ? words.joint.emptyTouch : words.joint.empty}</p>
      )}
      {welding && <LiveLine />}
      {welding && preferences.value.captions && <Caption />}
      {torch === 'out' && <OutLine session={session} />}
      {torch === 'stopped' && finished.value?.recording.ended === 'too-slow' && !result.value && (
        <p class="teach stopped" role="alert">
          {words.joint.slow(finished.value.lag_s)}
        </p>
      )}
    </>
  );
}

/** Time, height, amps; tip-to-work with "held" where the device does not tell. */
function LiveLine() {
  const now = live.value;
  const l = words.live;
  const held = deviceKind.value !== 'pen' || robotWelding.value ? l.held : '';
  return (
    <p class="live" data-testid="live">
      {robotWelding.value && <b>{words.joint.robot}</b>}
      <span>
        {oneDecimal(now?.t_s ?? 0)} <i>{l.time}</i>
      </span>
      <span>
        {whole(now?.aimY_mm ?? 0)} <i>{l.height}</i>
      </span>
      <span>
        {whole(now?.current_A ?? 0)} <i>{l.current}</i>
      </span>
      <span>
        {whole(now?.tipToWork_mm ?? 0)} <i>{l.tipToWork(robotWelding.value ? '' : held)}</i>
      </span>
      {now?.nozzleTouching && <b>{l.touching}</b>}
    </p>
  );
}

/** The sound of the arc in words, from the same wire that the sound is made from. */
function Caption() {
  const now = live.value;
  if (!now || now.current_A <= 0) return null;
  const { regime, shortCircuit_Hz } = wireState(exercise.value.process, now.tipToWork_mm);
  return (
    <p class="caption" data-testid="caption">
      {words.live.sound[regime](shortCircuit_Hz)}
    </p>
  );
}

function OutLine({ session }: { session: Session }) {
  return (
    <p class="teach out">
      {words.joint.out(restrikeLeft_s.value)}{' '}
      <button type="button" onPointerDown={(event) => event.stopPropagation()} onClick={() => session.finish()}>
        {words.joint.finish}
      </button>
    </p>
  );
}
