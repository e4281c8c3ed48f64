import { useState } from 'preact/hooks';
import { AGREEMENT_RULE, type Agreement } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { twoDecimals, whole } from '../../locale/numbers.ts';
import { FileButton } from './file-button.tsx';

const w = words.desk.readers;

/** How far several readers of the school's own macros agree. */
export function ReadersPanel({ session }: { session: Session }) {
  const { readers } = session.desk;
  const [text, setText] = useState('');
  const view = readers.view.value;
  return (
    <section class="readers">
      <h3>{w.title}</h3>
      <p class="unit">{w.teach}</p>
      <textarea
        aria-label={w.table}
        rows={4}
        value={text}
        spellcheck={false}
        placeholder={w.hint}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <p class="buttons">
        <button type="button" disabled={text.trim() === ''} onClick={() => readers.text(text)}>
          {w.take}
        </button>
        <FileButton
          label={w.open}
          accept=".csv,.txt,.tsv,.json,text/csv,text/plain,application/json"
          multiple
          testid="readings-file"
          chosen={(files) => void readers.open(files)}
        />
        <button type="button" onClick={() => readers.saveBlank()}>
          {w.blank}
        </button>
        {view && (
          <button type="button" onClick={() => readers.print()}>
            {w.print}
          </button>
        )}
      </p>
      {view && (
        <div class="scroll proof" data-testid="agreement">
          <p>{w.of(view.table.readers.length, view.table.macros.length, view.table.trials)}</p>
          <table>
            <thead>
              <tr>
                {w.head.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {view.agreement.map((a) => (
                <Row key={a.name} of={a} />
              ))}
            </tbody>
          </table>
          <p class="unit">{words.problems.phrase(AGREEMENT_RULE)}</p>
        </div>
      )}
    </section>
  );
}

function Row({ of }: { of: Agreement }) {
  const two = (x: number | null): string => (x === null ? w.none : twoDecimals(x));
  return (
    <>
      <tr class="figures">
        <th scope="row">{of.name}</th>
        <td>{two(of.repeatability)}</td>
        <td>{two(of.reproducibility)}</td>
        <td>{two(of.macros)}</td>
        <td>{of.grr_percent === null ? w.none : `${whole(of.grr_percent)} %`}</td>
        <td>{of.categories === null ? w.none : whole(of.categories)}</td>
        <td>{two(of.icc21)}</td>
        <td>{two(of.icc31)}</td>
      </tr>
      <tr class="says">
        <td colSpan={w.head.length}>
          <span>{words.problems.phrase(of.says)}</span>
        </td>
      </tr>
    </>
  );
}
