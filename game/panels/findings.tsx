import { useRef } from 'preact/hooks';
import type { WeaveOptions } from '../../engine/index.ts';
import type { Line, Result } from '../../scoring/index.ts';
import type { Session } from '../core/session/session.ts';
import { ready, words } from '../locale/index.ts';
import { oneDecimal, trimmed, whole } from '../locale/numbers.ts';
import { besideCoupon, busy, exercise, finished, otherResult, result, retention, stage, whatIf } from '../page.ts';
import { DueNow } from './due-tests.tsx';
import { type Flag, flagNumber, flagsOf } from './flags.ts';
import { HandTable } from './hand-table.tsx';
import { Inch } from './inch.tsx';
import { CouponFindings } from './real-later.ts';
import { ShowMe } from './ruling.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import { BesideCell, BesideNote } from './what-if.tsx';
import { useWholeRows } from './whole-rows.ts';

const w = words.findings;
/** Where there is room, a replay's close view stands in the findings' place (style/lens.css). */
const COVERED = '(min-width: 821px)';

/** What the attempt came to: verdict, the one thing to change first, then the lines it rests on. */
export function Findings({ session }: { session: Session }) {
  const found = result.value;
  const doing = busy.value;
  const list = useRef<HTMLElement>(null);
  useWholeRows(list, '.more, tr, .hand dl div, summary, dd, dt', found);
  if (doing)
    return (
      <section class="findings">
        <p class="teach" role="status">
          {doing.what === 'measuring' ? w.measuring : w.weldingAgain}{' '}
          {doing.share > 0 && `${whole(doing.share * 100)} %`}
          <progress value={doing.share > 0 ? doing.share : undefined} max={1} />
        </p>
      </section>
    );
  if (!found)
    return (
      <section class="findings">
        <p class="story">{ready(exercise.value.story)}</p>
        <p class="teaches">{ready(exercise.value.teaches)}</p>
        <p class="teaches">{asked(exercise.value.demonstration)}</p>
        {stage.value === 'rest' && retention.value === null && <DueNow session={session} go={(run) => run()} />}
      </section>
    );
  const flags = flagsOf(found);
  return (
    <section
      ref={list}
      class="findings"
      data-testid="findings"
      inert={stage.value === 'replay' && matchMedia(COVERED).matches}
    >
      <BesideNote />
      <More session={session} found={found} />
      <Lines session={session} lines={found.lines} flags={flags} />
      {besideCoupon.value && <CouponFindings kept={besideCoupon.value} />}
      <HandTable found={found} />
      <Footing session={session} found={found} />
    </section>
  );
}

/** What the weave of the exercise is, in a sentence. */
function asked(weave: WeaveOptions): string {
  const say = words.asked;
  if (weave.pattern === 'straight') return say.straight(trimmed(weave.travel_mmps, 1));
  const name = words.weave[weave.pattern];
  const pauses = say.pauses(trimmed(weave.pauseB_s, 2), trimmed(weave.pauseA_s, 2));
  return `${say.weave(capital(name), trimmed(weave.cyclesPerSecond, 2), trimmed(weave.width_mm, 1))}, ${pauses}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What the verdict rests on besides lines, and what else to change after the first thing. */
function More({ session, found }: { session: Session; found: Result }) {
  const rest = found.advice.slice(1);
  const slow = finished.value?.recording.ended === 'too-slow';
  return (
    <div class="more">
      {slow && finished.value && <p class="reason">{words.joint.slow(finished.value.lag_s)}</p>}
      {found.reasons.map((reason) => (
        <p key={reason.code} class="reason">
          {reason.text}
        </p>
      ))}
      {rest.length > 0 && (
        <ul class="rest">
          {rest.map((advice) => (
            <li key={`${advice.code}${advice.y_mm}`}>
              {advice.text} <ShowMe session={session} advice={advice} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Lines({ session, lines, flags }: { session: Session; lines: readonly Line[]; flags: readonly Flag[] }) {
  if (lines.length === 0) return null;
  const kind = exercise.value.joint.kind;
  return (
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">{w.head.measure}</th>
          <th scope="col" class="number">
            {w.head.reading}
          </th>
          {otherResult.value && (
            <th scope="col" class="number">
              {whatIf.value ? words.whatIf.changed : words.whatIf.other}
            </th>
          )}
          <th scope="col" class="number">
            {w.head.limit}
          </th>
          <th scope="col">{w.head.verdict}</th>
          <th scope="col" class="number">
            {w.head.place}
          </th>
          <th scope="col">{w.head.rule}</th>
        </tr>
      </thead>
      <tbody>
        {inOrder(lines).map((line) => {
          const flag = line.verdict === 'within' ? null : flagNumber(flags, line.side, line.y_mm);
          return (
            <tr
              key={`${line.measure}${line.side}${line.rule}`}
              class={line.verdict === 'within' ? '' : 'notwithin'}
              title={ready(line.rule)}
            >
              <th scope="row">
                {w.measure(line.measure)} <span class="side">{w.side(kind, line.side)}</span>
              </th>
              <td class="number">
                {reading(line.reading, line.unit)} <span class="unit">± {reading(line.plusMinus, line.unit)}</span>
                {line.unit === 'mm' && <Inch x={line.reading} />}
              </td>
              {otherResult.value && <BesideCell line={line} />}
              <td class="number">
                <span class="unit">{line.sense === 'at most' ? '≤' : '≥'} </span>
                {reading(line.limit, line.unit)} <span class="unit">{line.unit === 'deg' ? '°' : line.unit}</span>
                {line.unit === 'mm' && <Inch x={line.limit} />}
              </td>
              <td>
                <VerdictMark verdict={line.verdict} />
              </td>
              <td class="number">
                <button type="button" class="link" onClick={() => session.goTo(line.y_mm, null)}>
                  {flag !== null && <span class="flagnumber">{flag}</span>}
                  {oneDecimal(line.y_mm)}
                </button>
              </td>
              <td class="rule">{clause(ready(line.rule))}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What is not within first; otherwise as scoring has them. */
function inOrder(lines: readonly Line[]): Line[] {
  const rank = { outside: 0, 'too close to call': 1, within: 2 };
  return [...lines].sort((a, b) => rank[a.verdict] - rank[b.verdict]);
}

/** The clause a rule cites; its wording is in the tip. */
function clause(rule: string): string {
  return rule.match(/^(?:[^:,(]|\([^)]*\))*/)?.[0].trim() ?? rule;
}

function reading(x: number, unit: Line['unit']): string {
  return trimmed(x, unit === 'in' ? 3 : unit === 'mm' ? 2 : 0);
}

function Footing({ session, found }: { session: Session; found: Result }) {
  const done = finished.value;
  const carried = done?.recording.stateHash ?? null;
  return (
    <details class="footing">
      <summary>{w.details}</summary>
      <dl>
        {found.notes.map((note) => (
          <dd key={note.code}>{note.text}</dd>
        ))}
        {found.notMeasured.length > 0 && <dt>{w.notMeasured}</dt>}
        {found.notMeasured.map((gap) => (
          <dd key={gap.what}>
            {gap.what}: {gap.why}
          </dd>
        ))}
        <dt>{w.notModelled}</dt>
        <dd>{found.notModelled.join(', ')}</dd>
        <dt>{w.cautions}</dt>
        {found.cautions.map((caution) => (
          <dd key={caution}>{caution}</dd>
        ))}
        <dd>
          {w.engine} {found.engine}, {w.check} {found.stateHash}.{' '}
          {done && carried !== null && (carried === done.hash ? w.sameHash : w.otherHash)}
        </dd>
        <dd>
          <button type="button" class="link" onClick={() => session.saver.result()}>
            {w.saveResult}
          </button>
        </dd>
      </dl>
    </details>
  );
}
