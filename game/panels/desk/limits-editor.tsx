import { type Extent, type Limit, type Profile, profiles, type Rule, ruleMeasures } from '../../../scoring/index.ts';
import type { Typed } from '../../core/desk/editor.ts';
import type { Session } from '../../core/session/session.ts';
import { ready, words } from '../../locale/index.ts';
import { Numbers } from './editor-field.tsx';
import { FileButton } from './file-button.tsx';

const e = words.desk.editor;
const w = e.limits;

/** What an exercise is judged by: a profile that comes with Toehold, or limits of the school's own, edited as data. */
export function LimitsEditor({ session }: { session: Session }) {
  const { editor } = session.desk;
  const { limits, profile } = editor.draft.value;
  const wrongAt = wrongIn(session);
  return (
    <fieldset class="limits">
      <legend>{w.title}</legend>
      <div class="field">
        <label for="field-profile">{w.profile}</label>
        <select
          id="field-profile"
          value={profile}
          onChange={(event) => editor.chooseProfile(event.currentTarget.value)}
        >
          {limits && <option value={profile}>{w.ownTitle(limits.title)}</option>}
          {profiles.map((p) => (
            <option key={p.name} value={p.name}>
              {`${ready(p.title)} (${ready(p.edition)})`}
            </option>
          ))}
        </select>
        <Wrong text={wrongAt('profile')} />
      </div>
      <p class="buttons long">
        {!limits && (
          <button type="button" onClick={() => editor.ownLimits()}>
            {w.own}
          </button>
        )}
        <FileButton
          label={w.open}
          accept=".json,application/json"
          testid="profile-file"
          chosen={([file]) => file && void editor.profileFile(file)}
        />
        {limits && (
          <button type="button" onClick={() => editor.saveProfile()}>
            {w.save}
          </button>
        )}
      </p>
      {limits && <Own session={session} limits={limits} wrongAt={wrongAt} />}
    </fieldset>
  );
}

type WrongAt = (path: string) => string;

/** What is wrong at a path or below it, said. */
function wrongIn(session: Session): WrongAt {
  const problems = session.desk.editor.problems.value;
  return (path) =>
    problems
      .filter(
        (p) =>
          p.path.replace(/\[(\d+)\]/g, '.$1') === path || p.path.replace(/\[(\d+)\]/g, '.$1').startsWith(`${path}.`),
      )
      .map((p) => e.wrong(p.found, p.allowed))
      .join('; ');
}

function Wrong({ text }: { text: string }) {
  return text === '' ? null : <p class="wrong">{text}</p>;
}

function Own({ session, limits, wrongAt }: { session: Session; limits: Profile; wrongAt: WrongAt }) {
  const { editor } = session.desk;
  const heads = ['name', 'title', 'standard', 'edition', 'source'] as const;
  return (
    <>
      <p class="unit long">{w.teach}</p>
      {heads.map((name) => (
        <div key={name} class={name === 'source' ? 'field long' : 'field'}>
          <label for={`limits-${name}`}>{w.fields[name]}</label>
          <input
            id={`limits-${name}`}
            value={limits[name]}
            aria-invalid={wrongAt(`limits.${name}`) !== ''}
            onInput={(event) => editor.set(`limits.${name}`, event.currentTarget.value)}
          />
          <Wrong text={wrongAt(`limits.${name}`)} />
        </div>
      ))}
      <div class="field">
        <label for="limits-unit">{w.unit}</label>
        <Choice
          id="limits-unit"
          label={w.unit}
          value={limits.unit}
          of={{ mm: 'mm', in: 'in' }}
          set={(unit) => editor.set('limits.unit', unit)}
        />
      </div>
      <div class="scroll long">
        <table class="rules">
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
            {limits.rules.map((rule, i) => (
              <RuleRow key={w.rule(i)} session={session} rule={rule} at={i} wrong={wrongAt(`limits.rules.${i}`)} />
            ))}
          </tbody>
        </table>
        <button type="button" onClick={() => editor.addRule()}>
          {w.add}
        </button>
      </div>
    </>
  );
}

const MEASURES = Object.fromEntries(ruleMeasures.map((m) => [m, m])) as Record<Rule['measure'], string>;
const START_LIMIT: Record<Limit['form'], Limit> = {
  none: { form: 'none' },
  line: { form: 'line', base: 1, slope: 0, of: 'plate', most: null },
  steps: { form: 'steps', of: 'plate', rows: [{ upTo: null, open: false, limit: 1 }] },
  floor: { form: 'floor', value: 0 },
};
const START_EXTENT: Record<Extent['kind'], Extent> = {
  anywhere: { kind: 'anywhere' },
  short: { kind: 'short', share: 0.25, length: 25, per: 100 },
  accumulated: { kind: 'accumulated', deeper: 1, length: 50, per: 300 },
  share: { kind: 'share', share: 0.1, piece: 0 },
};

function RuleRow({ session, rule, at, wrong }: { session: Session; rule: Rule; at: number; wrong: string }) {
  const { editor } = session.desk;
  const path = `limits.rules.${at}`;
  const set = (rest: string) => (value: Typed) => editor.set(`${path}.${rest}`, value);
  const n = w.rule(at + 1);
  return (
    <>
      <tr>
        <td>
          <Choice label={`${n}, ${w.head[0]}`} value={rule.measure} of={MEASURES} set={set('measure')} />
        </td>
        <td>
          <Choice
            label={`${n}, ${w.head[1]}`}
            value={rule.limit.form}
            of={w.forms}
            set={(form) => editor.setRule(at, { limit: START_LIMIT[form] })}
          />{' '}
          <LimitNumbers limit={rule.limit} n={n} set={set} />
        </td>
        <td>
          <Choice
            label={`${n}, ${w.head[2]}`}
            value={rule.extent.kind}
            of={w.extents}
            set={(kind) => editor.setRule(at, { extent: START_EXTENT[kind] })}
          />{' '}
          <ExtentNumbers extent={rule.extent} n={n} set={set} />
        </td>
        <td>
          <input
            aria-label={`${n}, ${w.head[3]}`}
            value={rule.clause}
            onInput={(event) => set('clause')(event.currentTarget.value)}
          />
        </td>
        <td>
          <Choice label={`${n}, ${w.head[4]}`} value={rule.status} of={w.status} set={set('status')} />
        </td>
        <td>
          <button type="button" class="link" onClick={() => editor.dropRule(at)}>
            {w.remove}
          </button>
        </td>
      </tr>
      {wrong !== '' && (
        <tr>
          <td colSpan={6}>
            <Wrong text={wrong} />
          </td>
        </tr>
      )}
    </>
  );
}

type SetAt = (rest: string) => (value: Typed) => void;

function Figure({
  name,
  value,
  n,
  set,
}: {
  name: keyof typeof w.numbers;
  value: number | null;
  n: string;
  set: (value: Typed) => void;
}) {
  const none = name === 'most' || name === 'upTo';
  return (
    <Numbers
      kind={none ? 'number or none' : 'number'}
      value={value}
      set={set}
      about={{ 'aria-label': `${n}, ${w.numbers[name]}` }}
    />
  );
}

function LimitNumbers({ limit, n, set }: { limit: Limit; n: string; set: SetAt }) {
  switch (limit.form) {
    case 'none':
      return null;
    case 'floor':
      return <Figure name="value" value={limit.value} n={n} set={set('limit.value')} />;
    case 'line':
      return (
        <>
          <Figure name="base" value={limit.base} n={n} set={set('limit.base')} /> {w.plus}{' '}
          <Figure name="slope" value={limit.slope} n={n} set={set('limit.slope')} /> {w.times}{' '}
          <Choice label={`${n}, ${w.times}`} value={limit.of} of={w.of} set={set('limit.of')} /> {w.never}{' '}
          <Figure name="most" value={limit.most} n={n} set={set('limit.most')} />
        </>
      );
    case 'steps':
      return (
        <>
          <Choice label={`${n}, ${w.times}`} value={limit.of} of={w.of} set={set('limit.of')} />
          {limit.rows.map((row, i) => (
            <span key={w.rule(i)} class="step">
              {w.upTo} <Figure name="upTo" value={row.upTo} n={n} set={set(`limit.rows.${i}.upTo`)} />:{' '}
              <Figure name="limit" value={row.limit} n={n} set={set(`limit.rows.${i}.limit`)} />
            </span>
          ))}
        </>
      );
  }
}

function ExtentNumbers({ extent, n, set }: { extent: Extent; n: string; set: SetAt }) {
  const { kind: _kind, ...figures } = extent;
  return (
    <>
      {(Object.entries(figures) as [keyof typeof w.numbers, number][]).map(([name, value]) => (
        <span key={name} class="step">
          <span class="unit">{w.numbers[name]}</span>{' '}
          <Figure name={name} value={value} n={n} set={set(`extent.${name}`)} />
        </span>
      ))}
    </>
  );
}

function Choice<T extends string>({
  id,
  label,
  value,
  of,
  set,
}: {
  id?: string;
  label: string;
  value: T;
  of: Record<T, string>;
  set: (value: T) => void;
}) {
  const names = Object.keys(of) as T[];
  return (
    <select
      {...(id === undefined ? {} : { id })}
      aria-label={label}
      value={value}
      onChange={(event) => set(names[event.currentTarget.selectedIndex] ?? value)}
    >
      {names.map((name) => (
        <option key={name} value={name}>
          {of[name]}
        </option>
      ))}
    </select>
  );
}
