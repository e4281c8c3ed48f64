import {
  type ClassSheet,
  classWordsIn,
  type First,
  type FirstCut,
  faultSaid,
  withInches,
} from '../../../scoring/index.ts';
import type { ClassView } from '../../core/desk/class-room.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { language, preferences } from '../../page.ts';
import { nameSaid } from './names.ts';
import { Still } from './still.tsx';

const w = words.desk.class;

interface Props {
  session: Session;
  view: ClassView;
  sheet: ClassSheet;
  close: () => void;
}

/** The three to see first, each with the cut to put on the table. */
export function FirstThree({ session, view, sheet, close }: Props) {
  const three = sheet.firstThree;
  if (three.length === 0) return sheet.rows.length > 0 ? <p>{w.first.none}</p> : null;
  return (
    <section class="first-three" data-testid="first-three">
      <h3>{three.length === 3 ? w.first.three : w.first.fewer}</h3>
      <ol>
        {three.map((first, place) => (
          <One
            key={first.trainee}
            session={session}
            first={first}
            place={place}
            sheet={sheet}
            cut={view.cuts[place] ?? null}
            close={close}
          />
        ))}
      </ol>
      <p class="unit">{classWordsIn(language.value).firstRule}</p>
    </section>
  );
}

interface OneProps {
  session: Session;
  first: First;
  place: number;
  sheet: ClassSheet;
  cut: FirstCut | null;
  close: () => void;
}

function One({ session, first, place, sheet, cut, close }: OneProps) {
  const who = nameSaid(sheet, first.trainee);
  return (
    <li>
      <figure>
        {cut?.cut ? (
          <Still svg={cut.cut} name="first-cut" />
        ) : (
          <div class="first-cut waiting">{cut === null ? w.sawing : ''}</div>
        )}
        <figcaption class="unit">{sized(words.problems.refused(cut?.caption ?? ''))}</figcaption>
      </figure>
      <h4>
        {place + 1}. <bdi>{who}</bdi>
      </h4>
      <p>
        <b>{first.entry.fault ? faultSaid(first.entry.fault.code, language.value) : first.fault}</b>,{' '}
        <span class="unit">{w.times(first.times, first.of, words.problems.phrase(first.device))}</span>
      </p>
      <Says first={first} cut={cut} />
      <button
        type="button"
        class="link"
        aria-label={w.openFirst(who)}
        onClick={() => {
          void session.desk.openOfClass(first.entry.file, first.y_mm);
          close();
        }}
      >
        {w.open}
      </button>
    </li>
  );
}

/** A kept score carries its sentence in English, as files do; in another language it is said anew by whoever welds the attempt again for its cut. */
function Says({ first, cut }: { first: First; cut: FirstCut | null }) {
  const here = language.value;
  if (here === 'en') return <p>{sized(first.says)}</p>;
  if (cut === null) return null;
  return cut.said?.language === here ? <p>{sized(cut.said.text)}</p> : <p lang="en">{sized(first.says)}</p>;
}

/** With inches beside, where the user wants them. */
function sized(text: string): string {
  return preferences.value.inches ? withInches(text, language.value) : text;
}
