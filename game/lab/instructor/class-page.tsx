import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import type { ClassInfo } from './answers.ts';
import { AttemptList } from './attempt-list.tsx';
import type { Desk } from './desk.ts';
import { HandOut } from './hand-out.tsx';
import { Marks } from './marks.tsx';
import { RecordsPage } from './records-page.tsx';
import { Roster } from './roster.tsx';
import { Table } from './table.tsx';

const w = labWords.desk;
const TABS = ['attempts', 'roster', 'exercises', 'marks', 'table', 'records'] as const;

/** One class: its code, what is happening, and what stands behind it. */
export function ClassPage({ desk, open }: { desk: Desk; open: ClassInfo }) {
  const [tab, turn] = useState<(typeof TABS)[number]>('attempts');
  const { handed, scored } = desk.progress.value;
  const bench = new URL('../', location.href).href;
  return (
    <section>
      <p>
        <button type="button" class="link" onClick={() => desk.close()}>
          {w.back}
        </button>
      </p>
      <h2>{open.name}</h2>
      <p>
        {w.joinBy(bench)} <span class="classcode">{open.code}</span>
      </p>
      <p class="unit" aria-live="polite" data-testid="progress">
        {w.progress(handed, scored)} {desk.live.value ? w.live.open : w.live.closed}
      </p>
      <div class="tabs" role="tablist">
        {TABS.map((name) => (
          <button key={name} type="button" role="tab" aria-selected={tab === name} onClick={() => turn(name)}>
            {w.tabs[name]}
          </button>
        ))}
      </div>
      {tab === 'attempts' && <AttemptList desk={desk} />}
      {tab === 'roster' && <Roster desk={desk} open={open} />}
      {tab === 'exercises' && <HandOut desk={desk} />}
      {tab === 'marks' && <Marks desk={desk} open={open} />}
      {tab === 'table' && <Table desk={desk} />}
      {tab === 'records' && <RecordsPage desk={desk} />}
    </section>
  );
}
