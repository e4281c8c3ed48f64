import {
  type ClassSheet,
  classWordsIn,
  clean,
  type Entry,
  mismatchesSaid,
  notCountedSaid,
} from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';
import { language } from '../../page.ts';
import { fileSaid } from './names.ts';

const w = words.desk.class;

/** Every file that does not fit, by name, and things of note. */
export function ClassLists({ sheet, passedOver }: { sheet: ClassSheet; passedOver: readonly string[] }) {
  const said = (entry: Entry, what: readonly string[]): string => `${fileSaid(entry.file)}: ${what.join('; ')}`;
  return (
    <div class="class-lists">
      <List title={w.lists.bad} items={sheet.bad.map((b) => words.problems.refused(b.reason))} />
      <List
        title={w.lists.notCounted}
        items={sheet.notCounted.map((e) => said(e, notCountedSaid(e, language.value)))}
      />
      <List
        title={w.lists.mismatched}
        items={sheet.mismatched.map((e) => said(e, mismatchesSaid(e, language.value)))}
      />
      <List
        title={w.lists.unnamed}
        items={sheet.unnamed.map((e) => said(e, [words.findings.verdict[e.scored.result.verdict]]))}
      />
      <List
        title={classWordsIn(language.value).lists.others}
        items={sheet.others.map((o) => `${fileSaid(o.file)}: ${classWordsIn(language.value).kinds[o.kind]}`)}
      />
      <List title={w.lists.folders} items={sheet.folders.map((f) => `${clean(f)}/`)} />
      {sheet.notes.map((note) => (
        <p key={note}>{words.problems.phrase(note)}</p>
      ))}
      {passedOver.length > 0 && <p>{w.passedOver(passedOver.map(fileSaid))}</p>}
    </div>
  );
}

function List({ title, items }: { title: string; items: readonly string[] }) {
  if (items.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <ul>
        {items.map((item) => (
          <li key={item}>
            <bdi>{item}</bdi>
          </li>
        ))}
      </ul>
    </section>
  );
}
