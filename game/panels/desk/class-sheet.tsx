import { useEffect } from 'preact/hooks';
import { commonSaid, headline } from '../../../scoring/index.ts';
import type { ClassExport, ClassView } from '../../core/desk/class-room.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { language, onTop } from '../../page.ts';
import { ofFolder } from './class-files.ts';
import { ClassLists } from './class-lists.tsx';
import { ClassTable } from './class-table.tsx';
import { FileButton } from './file-button.tsx';
import { FirstThree } from './first-three.tsx';

const w = words.desk.class;
const KINDS: readonly ClassExport[] = ['pdf', 'html', 'csv', 'rows', 'jsonl'];

/** A class on one sheet, from the files it has saved. */
export function ClassSheetPanel({ session, close }: { session: Session; close: () => void }) {
  const room = session.desk.classRoom;
  const view = room.view.value;
  const { sheet } = view;
  useEffect(() => {
    onTop.value = 'class';
    return () => {
      onTop.value = 'bench';
    };
  }, []);
  return (
    <>
      {view.stage === 'empty' && <p class="teach">{w.teach}</p>}
      <p class="buttons class-files">
        <FileButton
          label={w.files}
          accept=".json,application/json"
          multiple
          strong={view.stage === 'empty'}
          testid="class-files"
          chosen={(files) => void session.desk.addClass({ files, folders: [] })}
        />
        <FileButton
          label={w.folder}
          folder
          testid="class-folder"
          chosen={(files) => void session.desk.addClass(ofFolder(files))}
        />
        {view.stage !== 'empty' && (
          <button type="button" class="link" onClick={() => room.clear()}>
            {w.clear}
          </button>
        )}
      </p>
      <Progress view={view} session={session} />
      {sheet && view.stage !== 'empty' && (
        <>
          <p class="headline">
            {headline(sheet, language.value)} {commonSaid(sheet, language.value)}
          </p>
          <p class="unit">
            {w.counted(view.counted)} {view.known > 0 && w.known(view.known)}
          </p>
          <FirstThree session={session} view={view} sheet={sheet} close={close} />
          <ClassTable session={session} sheet={sheet} close={close} />
          <ClassLists sheet={sheet} passedOver={view.passedOver} />
          {view.stage !== 'scoring' && <Exports session={session} />}
        </>
      )}
    </>
  );
}

function Progress({ view, session }: { view: ClassView; session: Session }) {
  const { stage, done, total } = view;
  const room = session.desk.classRoom;
  if (stage === 'stopped')
    return (
      <p role="status">
        {w.stopped(done, total)}{' '}
        <button type="button" class="link" onClick={() => void room.goOn()}>
          {w.goOn}
        </button>
      </p>
    );
  if (stage !== 'scoring' && stage !== 'cutting') return null;
  return (
    <p role="status" class="class-progress">
      {stage === 'scoring' ? w.scoring(done, total) : w.cutting}{' '}
      {stage === 'scoring' && <progress value={done} max={total} />}
      <button type="button" onClick={() => room.stop()}>
        {w.stop}
      </button>
    </p>
  );
}

function Exports({ session }: { session: Session }) {
  return (
    <p class="buttons exports">
      <button type="button" class="strong" onClick={() => session.desk.printClass()}>
        {w.print}
      </button>
      <span class="unit">{w.save}</span>
      {KINDS.map((kind) => (
        <button key={kind} type="button" onClick={() => void session.desk.saveClass(kind)}>
          {w.kinds[kind]}
        </button>
      ))}
    </p>
  );
}
