import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Lesson } from './core/session/lesson.ts';
import type { Session } from './core/session/session.ts';
import { words } from './locale/index.ts';
import { announcement, besideCoupon, finished, result } from './page.ts';
import { AboutDialog } from './panels/about.tsx';
import { AidsDialog } from './panels/aids.tsx';
import { BeatSheet } from './panels/beat-sheet.tsx';
import { Cautions } from './panels/cautions.tsx';
import { Chalk } from './panels/chalk.tsx';
import { CutPanel } from './panels/cut.tsx';
import { dropped, isClass } from './panels/desk/class-files.ts';
import { deskTab } from './panels/desk/tab.ts';
import { DeskDialog } from './panels/desk-later.ts';
import type { DialogName } from './panels/dialog.tsx';
import { DrillCard } from './panels/drill-card.tsx';
import { couponFile } from './panels/dropped.ts';
import { Findings } from './panels/findings.tsx';
import { type Drive, JointPane } from './panels/joint-pane.tsx';
import { LensPane } from './panels/lens-pane.tsx';
import { LessonCard } from './panels/lesson-card.tsx';
import { ProblemNote } from './panels/problem.tsx';
import { CouponDialog, MeasureDialog } from './panels/real-later.ts';
import { darkPage } from './panels/room-light.ts';
import { Ruling } from './panels/ruling.tsx';
import { Sentence } from './panels/sentence/sentence.tsx';
import { ShelfDialog } from './panels/shelf.tsx';
import { TopBar } from './panels/top-bar.tsx';
import { Notices } from './panels/unfinished.tsx';

/** A photograph, or the marks of one. */
function isOfCoupon(file: File): boolean {
  return file.type.startsWith('image/') || file.name.endsWith('.coupon.json');
}

/** One screen, three zones: the joint, the cut, and below it what the attempt says. */
export function App({ session, lesson, drive }: { session: Session; lesson: Lesson; drive: Drive }) {
  const [dialog, setDialog] = useState<DialogName>(null);
  const head = useRef<HTMLElement>(null);
  const close = () => setDialog(null);

  // A piece taken off the bench takes its sheet with it.
  useSignalEffect(() => {
    if (finished.value === null) setDialog((open) => (open === 'measure' ? null : open));
  });

  useSignalEffect(() => {
    document.documentElement.dataset.room = darkPage.value ? 'dark' : 'light';
  });

  // On a phone the joint takes what the head leaves of the first screen, however many lines the sentence needs.
  useEffect(() => {
    const element = head.current;
    if (!element) return;
    const sizes = new ResizeObserver(() =>
      document.documentElement.style.setProperty('--head', `${Math.ceil(element.getBoundingClientRect().height)}px`),
    );
    sizes.observe(element);
    return () => sizes.disconnect();
  }, []);

  useEffect(() => {
    const over = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      event.preventDefault();
      const items = event.dataTransfer?.items;
      if (items && isClass(items)) {
        const files = dropped(items);
        deskTab.value = 'class';
        setDialog('desk');
        void session.desk.addClass(files);
        return;
      }
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      if (!isOfCoupon(file)) void session.opener.file(file);
      else {
        couponFile.value = file;
        setDialog('coupon');
      }
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [session]);

  return (
    <div class="sheet">
      <header ref={head} class="head quiet">
        <TopBar session={session} openDialog={setDialog} />
        <Sentence session={session} />
        <Notices session={session} />
      </header>
      <main class="zones">
        <LensPane />
        <Ruling session={session} />
        <JointPane session={session} drive={drive} />
        <div class="reading quiet">
          <CutPanel session={session} openDialog={setDialog} />
          <Findings session={session} />
          <BeatSheet session={session} />
        </div>
      </main>
      <LessonCard lesson={lesson} />
      <DrillCard session={session} />
      <ProblemNote session={session} open={setDialog} />
      {dialog === 'attempts' && <ShelfDialog session={session} open={setDialog} close={close} />}
      {dialog === 'desk' && <DeskDialog session={session} open={setDialog} close={close} />}
      {dialog === 'aids' && <AidsDialog close={close} />}
      {dialog === 'about' && <AboutDialog lesson={lesson} close={close} />}
      {dialog === 'measure' && <MeasureDialog session={session} close={close} />}
      {dialog === 'coupon' && <CouponDialog session={session} kept={besideCoupon.value} close={close} />}
      <Chalk />
      <Cautions />
      <div class="spoken" aria-live="polite">
        {announcement.value && words.announce.say(announcement.value, result.value)}
      </div>
    </div>
  );
}
