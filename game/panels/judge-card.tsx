import { useEffect, useRef, useState } from 'preact/hooks';
import { judgedOf, legRead, questionsOf } from '../core/practice/judge.ts';
import type { OwnJudgement } from '../core/practice/record.ts';
import type { Session } from '../core/session/session.ts';
import type { Held } from '../core/session/state.ts';
import { words } from '../locale/index.ts';
import { VerdictMark } from './verdict-mark.tsx';

const w = words.practice.judge;

/** Longest leg anybody guesses, mm. */
const MOST_MM = 25;

/** Asked before the verdict: what is outside, and how long the smallest leg is. */
export function JudgeCard({ session, held }: { session: Session; held: Held }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [outside, setOutside] = useState<readonly string[]>([]);
  const [leg, setLeg] = useState('');
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  const guess = Number(leg.replace(',', '.'));
  const leg_mm = leg.trim() !== '' && guess > 0 && guess <= MOST_MM ? guess : null;
  const tick = (measure: string): void =>
    setOutside((now) => (now.includes(measure) ? now.filter((m) => m !== measure) : [...now, measure]));
  return (
    <form
      class="judge"
      data-testid="judge"
      onSubmit={(event) => {
        event.preventDefault();
        session.practice.judge(outside, leg_mm);
      }}
    >
      <h2 ref={heading} tabIndex={-1}>
        {w.title}
      </h2>
      <p>{w.ask}</p>
      <ul class="ticks">
        {questionsOf(held.result).map(({ measure }) => (
          <li key={measure}>
            <label>
              <input type="checkbox" checked={outside.includes(measure)} onChange={() => tick(measure)} /> {measure}
            </label>
          </li>
        ))}
      </ul>
      {legRead(held.result) && (
        <label class="guess">
          {w.leg}{' '}
          <input
            type="text"
            inputMode="decimal"
            size={4}
            value={leg}
            onInput={(event) => setLeg(event.currentTarget.value)}
          />
        </label>
      )}
      <p class="buttons">
        <button type="submit" class="strong">
          {w.done}
        </button>
        <button type="button" class="link" onClick={() => session.practice.showAtOnce()}>
          {w.atOnce}
        </button>
      </p>
    </form>
  );
}

/** Judgement and verdict side by side. */
export function JudgedBeside({ own }: { own: OwnJudgement }) {
  const { right, of, missed, imagined } = judgedOf(own);
  const told = (measure: string, was: OwnJudgement['said'][number]['was']): string => {
    if (was === 'too close to call') return w.open;
    return missed.includes(measure) ? w.missed : imagined.includes(measure) ? w.imagined : w.agree;
  };
  return (
    <details class="judged" open data-testid="judged">
      <summary>
        {w.beside}: {w.sum(right, of)}
      </summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{w.head.measure}</th>
            <th scope="col">{w.head.yours}</th>
            <th scope="col">{w.head.verdict}</th>
            <th scope="col">
              <span class="spoken">{w.beside}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {own.said.map(({ measure, said, was }) => (
            <tr key={measure} class={missed.includes(measure) || imagined.includes(measure) ? 'notwithin' : ''}>
              <th scope="row">{measure}</th>
              <td>{w.said[said]}</td>
              <td>
                <VerdictMark verdict={was} />
              </td>
              <td>{told(measure, was)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {own.leg && <p>{w.legSaid(own.leg.said_mm, own.leg.was_mm, own.leg.plusMinus_mm)}</p>}
    </details>
  );
}
