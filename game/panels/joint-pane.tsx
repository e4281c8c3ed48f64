import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Camera, fitCamera } from '../core/hand/camera.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { exercise, preferences, problem, screen_pxPerMm, steered_pxPerMm, torchState } from '../page.ts';
import { prefersDark } from '../view/room.ts';
import { Stage } from '../view/stage.ts';
import { JointMarks } from './joint-marks.tsx';
import { JointWords } from './joint-words.tsx';
import { darkPane } from './room-light.ts';
import { RootStripView } from './root-strip.tsx';

/** Sets devices and frames going on a stage; main.tsx hands it in. */
export type Drive = (stage: Stage, pane: HTMLElement) => { touch(): void; destroy(): void };

/** CSS pixels per millimetre when welding at 1:1; null fits the joint to the pane. Zoom is in devicePixelRatio, so it drops out. */
function fixedScale(): number | null {
  const { devicePxPerMm, oneToOne } = preferences.value;
  return oneToOne && devicePxPerMm !== null ? devicePxPerMm / window.devicePixelRatio : null;
}

/** The joint: canvas for the metal, and over it the marks, which are lines and text and stay sharp. */
export function JointPane({ session, drive }: { session: Session; drive: Drive }) {
  const pane = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const loop = useRef<ReturnType<Drive> | null>(null);
  const [camera, setCamera] = useState<Camera>(() =>
    fitCamera({ width_px: 600, height_px: 600, low_mm: 0, high_mm: 90, fixedScale: null }),
  );

  const layOut = (): void => {
    const element = pane.current;
    if (!element || !stage.current) return;
    const made = stage.current.layOut(element.clientWidth, element.clientHeight, exercise.value.joint, fixedScale());
    const { devicePxPerMm } = preferences.peek();
    steered_pxPerMm.value = made.scale;
    screen_pxPerMm.value = devicePxPerMm === null ? null : devicePxPerMm / window.devicePixelRatio;
    setCamera(made);
    loop.current?.touch();
  };

  useEffect(() => {
    const element = pane.current;
    if (!element) return;
    // The pane takes the torch's keys, so it has to take focus.
    element.tabIndex = 0;
    let gone = false;
    const sizes = new ResizeObserver(layOut);
    Stage.create(element).then(
      (made) => {
        if (gone) return made.destroy();
        stage.current = made;
        loop.current = drive(made, element);
        session.again();
        layOut();
        sizes.observe(element);
      },
      () => {
        problem.value = { code: 'no-webgl' };
      },
    );
    return () => {
      gone = true;
      sizes.disconnect();
      loop.current?.destroy();
      stage.current?.destroy();
    };
  }, [session]);

  useSignalEffect(() => {
    exercise.value;
    preferences.value;
    prefersDark.value;
    layOut();
  });

  const fits = camera.originY_px / camera.scale;
  const tooLong = fixedScale() !== null && fits < exercise.value.joint.length_mm;

  return (
    <section class="joint">
      <div
        ref={pane}
        class="pane"
        role="application"
        aria-label={words.joint.label}
        data-room={darkPane.value ? 'dark' : 'light'}
        data-state={torchState.value}
        data-scale={camera.scale.toFixed(4)}
        data-origin={`${camera.originX_px.toFixed(2)} ${camera.originY_px.toFixed(2)}`}
      >
        <JointMarks session={session} camera={camera} />
        <JointWords session={session} />
        {tooLong && <span class="toolong">{words.aids.tooLong(fits)}</span>}
      </div>
      <RootStripView session={session} camera={camera} />
    </section>
  );
}
