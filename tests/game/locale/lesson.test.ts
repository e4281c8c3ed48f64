import { describe, expect, it } from 'vitest';
import { LESSON_STEPS } from '../../../game/core/session/lesson.ts';
import { words } from '../../../game/locale/index.ts';

/** A slow reader's words a minute: half of what adults read silently in English (238; Brysbaert, J. Mem. Lang. 109, 2019, from memory). */
const SLOW_WPM = 119;
/** Five seconds of robot; a straight run of 90 mm at 2.7 mm/s with its shelf and the time to find the place; a cut dragged and a root looked at. */
const DOING_S = 5 + 45 + 30 + 20;

describe('the first lesson', () => {
  it('is read and done in under five minutes by a slow reader', () => {
    const text = LESSON_STEPS.map((step) => `${words.lesson.steps[step].title} ${words.lesson.steps[step].text}`).join(
      ' ',
    );
    const reading_s = (60 * text.split(/\s+/).length) / SLOW_WPM;
    expect(reading_s + DOING_S).toBeLessThan(300);
  });
});
