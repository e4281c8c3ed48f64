import { useEffect } from 'preact/hooks';
import { words } from '../locale/index.ts';
import { showing } from '../page.ts';

/** Shows the bench to a room: the whole screen, large letters, no names. Escape and the button end it. */
export function ShowButton() {
  const on = showing.value;
  useEffect(() => {
    document.documentElement.toggleAttribute('data-show', on);
    if (!on) return;
    const key = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') showing.value = false;
    };
    // Leaving the full screen by the browser's own key ends the show; where there is none to leave, the show is in the window.
    const left = (): void => {
      if (document.fullscreenElement === null) showing.value = false;
    };
    addEventListener('keydown', key);
    document.addEventListener('fullscreenchange', left);
    return () => {
      removeEventListener('keydown', key);
      document.removeEventListener('fullscreenchange', left);
    };
  }, [on]);
  return (
    <button type="button" aria-pressed={on} onClick={() => void turn(!on)}>
      {on ? words.replay.showEnd : words.replay.show}
    </button>
  );
}

async function turn(on: boolean): Promise<void> {
  showing.value = on;
  try {
    if (on) await document.documentElement.requestFullscreen();
    else if (document.fullscreenElement !== null) await document.exitFullscreen();
  } catch {
    // A browser that gives no full screen shows in its window.
  }
}
