import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { Dialog, type DialogName } from '../dialog.tsx';
import { ProblemNote } from '../problem.tsx';
import { ClassSheetPanel } from './class-sheet.tsx';
import { CouponDeskPanel } from './coupon-desk.tsx';
import { EditorPanel } from './editor-panel.tsx';
import { GuidePanel } from './guide.tsx';
import { type DeskTab, deskTab } from './tab.ts';
import { TraineesPanel } from './trainees.tsx';

const w = words.desk;
const TABS: readonly DeskTab[] = ['class', 'exercise', 'coupon', 'trainees', 'guide'];

/** The instructor's desk, over the whole window. What lies on the bench stays there. */
export function DeskDialog({
  session,
  open,
  close,
}: {
  session: Session;
  open: (name: DialogName) => void;
  close: () => void;
}) {
  const tab = deskTab.value;
  return (
    <Dialog title={w.title} close={close} wide>
      <nav class="desk-tabs" aria-label={w.title}>
        {TABS.map((name) => (
          <button
            key={name}
            type="button"
            aria-current={tab === name ? 'page' : undefined}
            onClick={() => {
              deskTab.value = name;
            }}
          >
            {w.tabs[name]}
          </button>
        ))}
        <button type="button" class="back" onClick={close}>
          {w.close}
        </button>
      </nav>
      <div class="desk">
        {tab === 'class' && <ClassSheetPanel session={session} close={close} />}
        {tab === 'exercise' && <EditorPanel session={session} close={close} />}
        {tab === 'coupon' && <CouponDeskPanel session={session} />}
        {tab === 'guide' && <GuidePanel />}
        {tab === 'trainees' && <TraineesPanel session={session} close={close} />}
      </div>
      <ProblemNote session={session} open={open} />
    </Dialog>
  );
}
