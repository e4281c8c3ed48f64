import { useEffect } from 'preact/hooks';
import { faultSaid } from '../../../scoring/index.ts';
import { labWords } from '../../locale/lab-words.ts';
import { language } from '../../locale/language.ts';
import { foundOut } from '../../locale/live.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;

/** The class sheet, by the code that makes it from a folder of files, and what can be taken out. */
export function Table({ desk }: { desk: Desk }) {
  useEffect(() => {
    void desk.showTable();
  }, []);
  const table = desk.table.value;
  return (
    <>
      <h3>{w.seeFirst}</h3>
      {table?.seeFirst.length === 0 && <p>{w.nobodyFirst}</p>}
      <ol>
        {table?.seeFirst.map((f) => (
          <li key={f.trainee}>
            <b>{f.trainee}</b> {language.value === 'en' ? f.says : faultSaid(f.faultCode, language.value)}{' '}
            <span class="unit">{w.times(f.times, f.of)}</span>
          </li>
        ))}
      </ol>
      <div class="scroll">
        <table class="stack" data-testid="class-table">
          <thead>
            <tr>
              {(['trainee', 'exercise', 'attempts', 'within', 'median', 'fault'] as const).map((c) => (
                <th key={c}>{w.columns[c]}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table?.rows.map((r) => (
              <tr key={`${r.trainee} ${r.exercise}`}>
                <td data-label={w.columns.trainee}>{r.trainee}</td>
                <td data-label={w.columns.exercise}>{r.exercise}</td>
                <td data-label={w.columns.attempts}>{r.attempts}</td>
                <td data-label={w.columns.within}>{r.within}</td>
                <td data-label={w.columns.median}>{r.median}</td>
                <td data-label={w.columns.fault}>{r.commonFault && faultSaid(r.commonFault, language.value)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {[...(table?.notes ?? []), ...(table?.waiting ?? [])].map((note) => (
        <p key={note} class="unit">
          {foundOut(note)}
        </p>
      ))}
      <h3>{w.out}</h3>
      <p class="deskrow">
        <a href={desk.address('class.pdf')}>{w.pdf}</a>
        <a href={desk.address('results.csv')}>{w.csv}</a>
        <a href={desk.address('results.jsonl')}>{w.jsonl}</a>
      </p>
    </>
  );
}
