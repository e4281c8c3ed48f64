import { useEffect } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import { foundOut } from '../../locale/live.ts';
import { dayAndTime } from '../../panels/when.ts';
import type { Differences, Records, Trail } from './answers.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk.records;

/** What stands behind the class's tables: how long it is kept, which versions judged it and where they differ, who did what. */
export function RecordsPage({ desk }: { desk: Desk }) {
  useEffect(() => {
    void desk.showRecords();
  }, []);
  const records = desk.records.value;
  if (records === null) return null;
  const { current, versions } = records;
  const others = versions.filter((v) => v.engine !== current.engine || v.scoring !== current.scoring);
  return (
    <>
      <h3>{w.kept}</h3>
      <Kept of={records.retention} />
      <h3>{w.versions}</h3>
      <p>{w.current(current.engine, current.scoring)}</p>
      {others.length === 0 && <p class="unit">{w.oneVersion}</p>}
      {others.map((v) => (
        <p key={`${v.engine} ${v.scoring}`}>
          {w.older(v.engine, v.scoring, v.scores)}{' '}
          <button type="button" class="link" onClick={() => void desk.compareWith(v)}>
            {w.compare}
          </button>
        </p>
      ))}
      {desk.differences.value && <Differing of={desk.differences.value} />}
      <h3>{w.trail}</h3>
      <p class="unit">{w.trailSays}</p>
      <div class="scroll">
        <table class="stack" data-testid="trail">
          <thead>
            <tr>
              {(['at', 'who', 'did', 'detail'] as const).map((c) => (
                <th key={c}>{w.columns[c]}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {records.trail.map((t, i) => (
              <tr key={i}>
                <td data-label={w.columns.at}>{dayAndTime(Date.parse(t.at))}</td>
                <td data-label={w.columns.who}>{whoDid(desk, t)}</td>
                <td data-label={w.columns.did}>{foundOut(t.did)}</td>
                <td class="unit" data-label={w.columns.detail}>
                  {detailSaid(desk, t.detail)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function Kept({ of: { keepDays, trainees, attempts } }: { of: Records['retention'] }) {
  if (keepDays === null) return <p>{w.forEver}</p>;
  return (
    <p>
      {w.keptFor(keepDays)} {w.goes(trainees, attempts)}
    </p>
  );
}

function Differing({ of: { compared, differing } }: { of: Differences }) {
  return (
    <>
      <p role="status">{w.compared(compared, differing.length)}</p>
      {differing.length > 0 && (
        <div class="scroll">
          <table class="stack" data-testid="differences">
            <thead>
              <tr>
                {(['trainee', 'exercise', 'number', 'before', 'after'] as const).map((c) => (
                  <th key={c}>{w.columns[c]}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {differing.map((d) => (
                <tr key={d.id}>
                  <td data-label={w.columns.trainee}>{d.trainee}</td>
                  <td data-label={w.columns.exercise}>{d.assignment}</td>
                  <td data-label={w.columns.number}>{d.number}</td>
                  <td data-label={w.columns.before}>{w.judged(d.before.fault ?? d.before.verdict, d.before.score)}</td>
                  <td data-label={w.columns.after}>{w.judged(d.after.fault ?? d.after.verdict, d.after.score)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

/** The trail holds ids; whoever is still on the roster is named by it. */
function whoDid(desk: Desk, { role, who }: Trail): string {
  const me = desk.me.value;
  return who === '' ? w.roles.lab : who === me?.id ? (me.name ?? '') : (nameOf(desk, who) ?? w.roles.other(role, who));
}

function nameOf(desk: Desk, id: string): string | undefined {
  return desk.roster.value.find((t) => t.id === id)?.name ?? desk.assignments.value.find((a) => a.id === id)?.title;
}

function detailSaid(desk: Desk, detail: Record<string, unknown>): string {
  return Object.entries(detail)
    .map(([key, value]) => {
      const text = typeof value === 'string' ? (nameOf(desk, value) ?? value.slice(0, 12)) : JSON.stringify(value);
      return `${key}: ${text}`;
    })
    .join(', ');
}
