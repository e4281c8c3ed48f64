import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { handScale } from '../core/session/meta.ts';
import { words } from '../locale/index.ts';
import { exercise, page, preferences, stage, steered_pxPerMm } from '../page.ts';
import { lensAtHand } from '../view/lens/atHand.ts';
import { LensStage } from '../view/lens/lensStage.ts';
import { prefersDark } from '../view/room.ts';

const t = words.lens;

/** The close view: follows the arc while it burns, shows the bare joint and the weave asked for before that. */
export function LensPane() {
  const box = useRef<HTMLDivElement>(null);
  const [scale, setScale] = useState(1);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    let gone = false;
    let made: LensStage | null = null;
    const layOut = (): void => {
      if (!made || element.clientWidth === 0) return;
      made.layOut(element.clientWidth, element.clientHeight, Math.max(0, -element.offsetTop));
      setScale(made.scale);
    };
    const sizes = new ResizeObserver(layOut);
    LensStage.create(element).then(
      (lens) => {
        if (gone) return lens.destroy();
        made = lens;
        lens.setJoint(exercise.peek().joint);
        layOut();
        sizes.observe(element);
        lensAtHand.value = lens;
      },
      () => undefined, // Without WebGL 2 the joint's pane has said so already.
    );
    return () => {
      gone = true;
      sizes.disconnect();
      lensAtHand.value = null;
      made?.destroy();
    };
  }, []);

  useSignalEffect(() => {
    lensAtHand.value?.setJoint(exercise.value.joint);
  });
  useSignalEffect(() => {
    document.documentElement.dataset.stage = stage.value;
    preferences.value;
    prefersDark.value;
    lensAtHand.value?.touch();
  });

  const now = stage.value;
  const hand = handScale(page);
  const straight = exercise.value.demonstration.pattern === 'straight';
  return (
    <section class="lens">
      <div ref={box} class="lensbox" role="img" aria-label={t.label} data-testid="lens" data-scale={scale}>
        {now === 'rest' && <p class="lensnote asked">{straight ? t.straight : t.asked}</p>}
        {now === 'weld' && (
          <p class="lensnote">
            <span>{t.larger(scale / steered_pxPerMm.value)}</span>
            {hand !== null && <span>{t.hand(hand)}</span>}
            {lensAtHand.value?.tooSlow && !preferences.value.plainView && <span>{t.slow}</span>}
          </p>
        )}
      </div>
    </section>
  );
}
