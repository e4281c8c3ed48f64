import { useEffect, useState } from 'preact/hooks';
import { now_ms } from '../core/bench/real-time.ts';
import type { Session } from '../core/session/session.ts';
import { busy, deviceKind, exercise, finished, result, robotWelding, torchState } from '../core/session/state.ts';
import { words } from '../locale/index.ts';
import { oneDecimal, whole } from '../locale/numbers.ts';

const LIVE_MS = 150;

/** Words over the joint: what to do when nothing has happened, quiet read-outs while welding, why it ended. */
export function JointWords({ session }: { session: Session }) {
  const torch = torchState.value;
  const kind = exercise.value.joint.kind;
  const live = torch === 'welding' || torch === 'out' || robotWelding.value;
  return (
    <>
      {!live && <span class="platename left">{words.joint.left[kind]}</span>}
      {!live && <span class="platename right">{words.joint.right[kind]}</span>}
      {torch === 'idle' && !live && !busy.value && (
        <p class="teach">{matchMedia('(pointer: coarse)').matches ? words.joint.emptyTouch : words.joint.empty}</p>
      )}
      {live && <LiveLine session={session} />}
      {torch === 'out' && <OutLine session={session} />}
      {torch === 'stopped' && finished.value?.recording.ended === 'too-slow' && !result.value && (
        <p class="teach stopped" role="alert">
          {words.joint.slow(finished.value.lag_s)}
        </p>
      )}
    </>
  );
}

/** Time, height, amps; tip-to-work with "held" where the device does not tell. Redrawn a few times a second, outside the frame loop. */
function LiveLine({ session }: { session: Session }) {
  const [, again] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => again((n) => n + 1), LIVE_MS);
    return () => clearInterval(timer);
  }, []);
  const { trace } = session;
  const row = trace.length - 1;
  const at = (name: Parameters<typeof trace.value>[1]): number => (row < 0 ? 0 : trace.value(row, name));
  const held = deviceKind.value !== 'pen' || robotWelding.value ? words.live.held : '';
  return (
    <p class="live" data-testid="live">
      {robotWelding.value && <b>{words.joint.robot}</b>}
      <span>
        {oneDecimal(at('t_s'))} <i>{words.live.time}</i>
      </span>
      <span>
        {whole(at('aimY_mm'))} <i>{words.live.height}</i>
      </span>
      <span>
        {whole(at('current_A'))} <i>{words.live.current}</i>
      </span>
      <span>
        {whole(at('tipToWork_mm'))} <i>tip-to-work {robotWelding.value ? '' : held}</i>
      </span>
      {at('nozzleTouching') === 1 && <b>{words.live.touching}</b>}
    </p>
  );
}

function OutLine({ session }: { session: Session }) {
  const [left, setLeft] = useState(session.tool.restrikeLeft_s(now_ms()));
  useEffect(() => {
    const timer = setInterval(() => setLeft(session.tool.restrikeLeft_s(now_ms())), 200);
    return () => clearInterval(timer);
  }, [session]);
  return (
    <p class="teach out">
      {words.joint.out(Math.ceil(left))}{' '}
      <button
        type="button"
        onPointerDown={(event) => event.stopPropagation()}
        onClick={() => session.tool.finish(now_ms())}
      >
        {words.joint.finish}
      </button>
    </p>
  );
}
