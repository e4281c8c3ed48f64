import { useRef } from 'preact/hooks';
import { exercises } from '../../scoring/index.ts';
import type { Session } from '../core/session/session.ts';
import { ready, words } from '../locale/index.ts';
import { exercise, finished, level, paper, preferences, retention, robotWelding, torchState, used } from '../page.ts';
import { deskTab } from './desk/tab.ts';
import type { DialogName } from './dialog.tsx';

const t = words.top;

/** Product, exercise, and what can be done with an attempt. */
export function TopBar({ session, openDialog }: { session: Session; openDialog: (name: DialogName) => void }) {
  const file = useRef<HTMLInputElement>(null);
  const stopped = torchState.value === 'stopped';
  return (
    <div class="topbar">
      <h1 class="product">{words.product}</h1>
      <ExerciseChoice session={session} />
      <span class="level" title={words.level.long(level.value)} data-testid="level-short">
        {retention.value
          ? words.practice.due.running(retention.value.step)
          : words.level.short(level.value, preferences.value.ownGuides)}
        {used.value && ` · ${words.level.used(used.value.used, used.value.allowed)}`}
      </span>
      <Who openDialog={openDialog} />
      <nav class="actions">
        {stopped && (
          <button type="button" class="strong" onClick={() => session.again()}>
            {t.weldAgain}
          </button>
        )}
        {robotWelding.value ? (
          <button type="button" onClick={() => session.stopRobot()}>
            {t.stopRobot}
          </button>
        ) : (
          <button type="button" onClick={() => session.demonstrate()}>
            {t.robot}
          </button>
        )}
        <button type="button" onClick={() => openDialog('attempts')}>
          {t.attempts}
        </button>
        <button type="button" onClick={() => file.current?.click()}>
          {t.open}
        </button>
        <button type="button" disabled={!finished.value} onClick={() => session.save()}>
          {t.save}
        </button>
        <button type="button" disabled={!paper.value} onClick={() => session.desk.printReport()}>
          {t.print}
        </button>
        <button type="button" onClick={() => openDialog('desk')}>
          {words.desk.open}
        </button>
        <button type="button" onClick={() => openDialog('aids')}>
          {t.aids}
        </button>
        <button type="button" onClick={() => openDialog('about')}>
          {t.help}
        </button>
        <input
          ref={file}
          type="file"
          accept=".json,application/json"
          hidden
          data-testid="open-file"
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0];
            event.currentTarget.value = '';
            if (chosen) void session.opener.file(chosen);
          }}
        />
      </nav>
    </div>
  );
}

/** Ready exercises, and those made or taken in here. */
function ExerciseChoice({ session }: { session: Session }) {
  const isReady = exercises.some((e) => e.name === exercise.value.name);
  const made = preferences.value.exercises.some((e) => e.name === exercise.value.name);
  return (
    <label class="exercise">
      <span class="spoken">{t.exercise}</span>
      <select
        value={exercise.value.name}
        onChange={(event) => session.chooseExercise(event.currentTarget.value)}
        title={ready(exercise.value.story)}
      >
        {!isReady && !made && <option value={exercise.value.name}>{t.ownJoint}</option>}
        {exercises.map((e, i) => (
          <option key={e.name} value={e.name}>
            {i + 1}. {ready(e.title)}
          </option>
        ))}
        {preferences.value.exercises.length > 0 && (
          <optgroup label={t.made}>
            {preferences.value.exercises.map((e) => (
              <option key={e.name} value={e.name}>
                {ready(e.title)}
              </option>
            ))}
          </optgroup>
        )}
      </select>
    </label>
  );
}

/** Whose turn it is, where trainees take turns here. */
function Who({ openDialog }: { openDialog: (name: DialogName) => void }) {
  if (preferences.value.trainee === null) return null;
  return (
    <button
      type="button"
      class="who"
      title={words.desk.trainees.whoTitle}
      data-testid="who"
      onClick={() => {
        deskTab.value = 'trainees';
        openDialog('desk');
      }}
    >
      <bdi>
        {preferences.value.namesHidden
          ? words.desk.trainees.hidden
          : words.desk.trainees.who(preferences.value.trainee, preferences.value.bench)}
      </bdi>
    </button>
  );
}
