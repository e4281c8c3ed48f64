import { useMemo } from 'preact/hooks';
import { type AttemptRecording, type Change, inSteps, knobSteps, knobsOf, type Line } from '../../scoring/index.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { exercise, finished, otherResult, result, whatIf } from '../page.ts';
import { VerdictMark } from './verdict-mark.tsx';

const w = words.whatIf;

/** One thing changed on one's own attempt: what it would have come to, laid beside the cut. */
export function WhatIfSelect({ session }: { session: Session }) {
  const done = finished.value;
  const changes = useMemo(
    () => (done ? knobsOf(done.recording as AttemptRecording).flatMap((k) => [inSteps(k, 1), inSteps(k, -1)]) : []),
    [done],
  );
  if (!done) return null;
  const { kind } = exercise.value.joint;
  const now = whatIf.value;
  return (
    <span class="whatif">
      <label>
        {w.label}{' '}
        <select
          value={now ? keyOf(now) : ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            session.whatIf(changes.find((c) => keyOf(c) === value) ?? null);
          }}
        >
          <option value="">{w.none}</option>
          {changes.map((change) => (
            <option key={keyOf(change)} value={keyOf(change)}>
              {w.say(now && keyOf(now) === keyOf(change) ? now : change, kind)}
            </option>
          ))}
        </select>
      </label>
      {now && (
        <>
          <Step session={session} change={now} by={-1} />
          <Step session={session} change={now} by={1} />
        </>
      )}
    </span>
  );
}

/** Knob and direction; the size is stepped. */
function keyOf({ what, by }: Change): string {
  return `${what}${by > 0 ? '+' : '-'}`;
}

function Step({ session, change, by }: { session: Session; change: Change; by: 1 | -1 }) {
  const { step, most } = knobSteps[change.what];
  const steps = Math.round(Math.abs(change.by) / step) + by;
  return (
    <button
      type="button"
      class="step"
      aria-label={by > 0 ? w.more : w.less}
      disabled={steps < 1 || steps * step > most + step / 100}
      onClick={() => session.whatIf(inSteps(change.what, Math.sign(change.by) * steps))}
    >
      {by > 0 ? '+' : '−'}
    </button>
  );
}

/** What the one laid beside came to, in words; its readings stand in the lines. */
export function BesideNote() {
  const other = otherResult.value;
  if (!other) return null;
  const change = whatIf.value;
  const said = new Set(result.value?.reasons.map((reason) => reason.text));
  const fresh = other.reasons.filter((reason) => !said.has(reason.text));
  return (
    <p class="reason" data-testid="beside">
      {change ? capital(w.yours(change, exercise.value.joint.kind)) : w.besideIs}:{' '}
      <VerdictMark verdict={other.verdict} />
      {fresh.map((reason) => ` ${reason.text}`)} {change && <span class="unit">{w.note}</span>}
    </p>
  );
}

/** The same line of the one laid beside. */
export function BesideCell({ line }: { line: Line }) {
  const same = otherResult.value?.lines.find(
    (l) => l.measure === line.measure && l.side === line.side && l.rule === line.rule,
  );
  return (
    <td class="number beside">
      {same && w.reading(same.reading, same.unit)} {same && <VerdictMark verdict={same.verdict} bare />}
    </td>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
