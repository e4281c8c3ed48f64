import { useState } from 'preact/hooks';
import type { TechniqueRow, TwoTechniques } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { ready, words } from '../../locale/index.ts';
import { fixed, trimmed } from '../../locale/numbers.ts';
import { finished, shelf } from '../../page.ts';
import { timeOfDay } from '../when.ts';
import { Still } from './still.tsx';

const w = words.desk.techniques;

/** Two techniques on one coupon: which, and what comes of it. */
export function TechniquesPanel({ session }: { session: Session }) {
  const { desk } = session;
  const { stage, both, why } = desk.techniques.view.value;
  const [change, setChange] = useState('');
  const done = finished.value;
  const others = shelf.value.filter((entry) => entry.id !== done?.id && entry.damaged === null);
  return (
    <section class="techniques">
      <h3>{w.title}</h3>
      <p class="unit">{w.teach}</p>
      {done === null ? (
        <p>{w.nothing}</p>
      ) : (
        <>
          <p class="buttons">
            <label>
              {w.change}{' '}
              <input
                class="number"
                size={5}
                inputMode="decimal"
                value={change}
                onInput={(event) => setChange(event.currentTarget.value)}
              />
            </label>
            <button type="button" class="strong" onClick={() => void desk.sawHalves(heightOf(change))}>
              {w.halves}
            </button>
          </p>
          <p class="buttons">
            <label>
              {w.sides}{' '}
              <select
                value=""
                disabled={others.length === 0}
                onChange={(event) => {
                  void desk.sawSides(event.currentTarget.value);
                  event.currentTarget.value = '';
                }}
              >
                <option value="">{others.length === 0 ? w.noOther : '…'}</option>
                {others.map((entry) => (
                  <option key={entry.id} value={entry.id}>
                    {ready(entry.title ?? words.shelf.untitled)}, {timeOfDay(entry.made_ms)}
                  </option>
                ))}
              </select>
            </label>
          </p>
        </>
      )}
      {stage === 'welding' && <p role="status">{w.welding}</p>}
      {why !== '' && <p class="wrong">{words.problems.refused(why)}</p>}
      {both && <Both both={both} />}
    </section>
  );
}

/** A height as typed; null: in the middle. */
function heightOf(text: string): number | null {
  return text.trim() === '' ? null : Number(text.trim().replace(',', '.'));
}

/** What the comparison says in English, in the language in use. */
function phrase(text: string): string {
  return words.problems.phrase(text);
}

function Both({ both }: { both: TwoTechniques }) {
  return (
    <div data-testid="two-techniques">
      <p class="headline">{phrase(both.says)}</p>
      <div class="sawn">
        {both.cuts.map((cut) => (
          <figure key={cut.name}>
            <Still svg={cut.svg} name="first-cut" />
            <figcaption class="unit">{w.cut(phrase(cut.name), cut.y_mm)}</figcaption>
          </figure>
        ))}
        <figure>
          <Still svg={both.over} name="first-cut" />
          <figcaption class="unit">{w.over}</figcaption>
        </figure>
      </div>
      <div class="scroll proof">
        <table>
          <thead>
            <tr>
              <th scope="col" />
              {both.names.map((name, i) => (
                <th key={name} scope="col">
                  {phrase(name)} <span class="unit">{phrase(both.lengths[i] ?? '')}</span>
                </th>
              ))}
              <th scope="col">{w.difference}</th>
              <th scope="col">{w.differs}</th>
            </tr>
          </thead>
          <tbody>
            {both.rows.map((row) => (
              <Row key={row.what} row={row} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="unit">{phrase(both.note)}</p>
    </div>
  );
}

function Row({ row }: { row: TechniqueRow }) {
  const { what, unit, first, second, difference, plusMinus, differs } = row;
  return (
    <tr>
      <th scope="row">
        {phrase(what)} <span class="unit">{phrase(unit)}</span>
      </th>
      <td>{said(first)}</td>
      <td>{said(second)}</td>
      <td>
        {difference === null ? '' : `${difference > 0 ? '+' : ''}${trimmed(difference, 2)}`}
        {plusMinus !== null && difference !== null && <span class="unit"> ± {fixed(plusMinus, 2)}</span>}
      </td>
      <td>{differs === null ? '' : differs ? w.yes : w.no}</td>
    </tr>
  );
}

function said(x: number | null): string {
  return x === null ? w.none : trimmed(x, 2);
}
