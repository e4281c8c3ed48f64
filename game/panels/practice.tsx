import { DRILL_ASKS } from '../core/practice/drills.ts';
import { DRILLS, isKind } from '../core/practice/record.ts';
import type { Level } from '../core/practice/views.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { practice, preferences, setPreference } from '../page.ts';
import { DueTests } from './due-tests.tsx';
import { JudgingTrendView } from './judging-trend.tsx';
import { dayAndTime } from './when.ts';

const w = words.practice;
const LEVELS: readonly Level[] = [1, 2, 3];
const JUDGE = ['lessons', 'always', 'never'] as const;

/** What is practised beside attempts: drills, naming a fault, tests after a while, and how well one judges oneself. */
export function PracticeSheet({ session, close }: { session: Session; close: () => void }) {
  const go = (run: () => void): void => {
    close();
    run();
  };
  return (
    <div class="practice" data-testid="practice">
      <DueTests session={session} go={go} />
      <h3>{w.drill.title}</h3>
      <p>{w.drill.text}</p>
      <p class="buttons">
        {DRILLS.map((name) => (
          <button key={name} type="button" title={w.drill.about(name)} onClick={() => go(() => session.drill(name))}>
            {w.drill.begin(name)}
          </button>
        ))}
      </p>
      <KeptDrills />
      <h3>{w.naming.title}</h3>
      <p>{w.naming.text}</p>
      <p class="buttons">
        {LEVELS.map((level) => {
          const { right, of } = session.practice.named(level);
          return (
            <button key={level} type="button" onClick={() => go(() => session.practice.nameFault(level))}>
              {w.naming.level(level, right, of)}
            </button>
          );
        })}
      </p>
      <h3>{w.trend.title}</h3>
      <p>
        <label>
          {w.judge.when}{' '}
          <select
            value={preferences.value.judgeFirst}
            onChange={(event) => {
              const chosen = JUDGE.find((name) => name === event.currentTarget.value);
              if (chosen) setPreference('judgeFirst', chosen);
            }}
          >
            {JUDGE.map((name) => (
              <option key={name} value={name}>
                {w.judge.switch[name]}
              </option>
            ))}
          </select>
        </label>
      </p>
      <JudgingTrendView judgements={practice.value.filter(isKind('judgement'))} />
    </div>
  );
}

/** Drills kept, newest first; older ones are in the saved logbook. */
const SHOWN = 6;

function KeptDrills() {
  const kept = practice.value.filter(isKind('drill')).sort((a, b) => b.made_ms - a.made_ms);
  return (
    <>
      <p class="unit">{w.drill.kept(kept.length)}</p>
      <ul>
        {kept.slice(0, SHOWN).map((d) => {
          const about = d.readings.filter((r) => DRILL_ASKS[d.drill].includes(r.measure));
          return (
            <li key={d.id}>
              {w.drill.last(d.drill, about.filter((r) => r.inside).length, about.length, dayAndTime(d.made_ms))}
            </li>
          );
        })}
      </ul>
    </>
  );
}
