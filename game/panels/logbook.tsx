import { useEffect, useState } from 'preact/hooks';
import { practised } from '../core/practice/due.ts';
import { type Log, logsOf } from '../core/session/logbook.ts';
import type { TakenLogbook } from '../core/session/logbook-file.ts';
import type { Session } from '../core/session/session.ts';
import { ready, words } from '../locale/index.ts';
import { exercise, shelf, tests } from '../page.ts';
import { DueNow } from './due-tests.tsx';
import { LogChart, TrendChart } from './log-chart.tsx';
import { dayAndTime } from './when.ts';

const w = words.logbook;
/** Bad records named one by one; of more only the first are. */
const NAMED = 5;

/** What one hand has done, exercise by exercise and measure by measure; the whole shelf out to a file and in from one. */
export function Logbook({ session, opened }: { session: Session; opened: () => void }) {
  const logs = logsOf(practised(shelf.value, tests.value));
  const [chosen, choose] = useState(exercise.value.name);
  const log = logs.find((l) => l.exercise === chosen) ?? logs[0];
  useEffect(() => void session.keeper.fillReadings(), [session]);
  const open = (id: string): void => {
    void session.opener.kept(id);
    opened();
  };
  return (
    <div class="logbook">
      <DueNow
        session={session}
        go={(run) => {
          opened();
          run();
        }}
      />
      {log ? (
        <>
          <label>
            {w.exercise}{' '}
            <select value={log.exercise} onChange={(event) => choose(event.currentTarget.value)}>
              {logs.map((l) => (
                <option key={l.exercise} value={l.exercise}>
                  {ready(l.title ?? words.top.ownJoint)}
                </option>
              ))}
            </select>
          </label>
          <Charts log={log} open={open} />
        </>
      ) : (
        <p>{w.none}</p>
      )}
      <InAndOut session={session} />
    </div>
  );
}

function Charts({ log, open }: { log: Log; open: (id: string) => void }) {
  return (
    <>
      <p>
        {w.sum(log.attempts.length, log.within)} {log.best ? w.best(dayAndTime(log.best.made_ms)) : w.noBest}{' '}
        <span class="unit">{w.bestIs}</span>
      </p>
      <p class="unit">{w.key}</p>
      <ul class="charts">
        {log.series.map((series) => (
          <LogChart
            key={`${series.measure}${series.unit}`}
            series={series}
            attempts={log.attempts}
            best={log.best}
            open={open}
          />
        ))}
        <TrendChart attempts={log.attempts} open={open} />
      </ul>
    </>
  );
}

function InAndOut({ session }: { session: Session }) {
  const [taken, setTaken] = useState<TakenLogbook | null>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (file) setTaken(await session.opener.logbook(file));
  };
  return (
    <>
      <p class="buttons">
        <button type="button" disabled={shelf.value.length === 0} onClick={() => void session.keeper.saveLogbook()}>
          {w.save}
        </button>
        <label class="file">
          {w.take}
          <input
            type="file"
            accept=".json,application/json"
            data-testid="take-logbook"
            onChange={(event) => {
              void take(event.currentTarget.files?.[0]);
              event.currentTarget.value = '';
            }}
          />
        </label>
      </p>
      {taken && (
        <div role="status">
          <p>{w.taken(taken.added, taken.known)}</p>
          {taken.bad.length > 0 && (
            <>
              <p>{w.bad(taken.bad.length)}</p>
              <ul>
                {taken.bad.slice(0, NAMED).map((bad) => (
                  <li key={bad}>{words.problems.refused(bad)}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
    </>
  );
}
