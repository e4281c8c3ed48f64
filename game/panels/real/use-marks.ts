import { useState } from 'preact/hooks';
import type { PictureSpot } from '../../../scoring/index.ts';
import { type Chosen, type MarkSet, type Step, setPoint, stepAfter } from './marks.ts';

/** Marks being set on a picture: which step is on, which mark is held. */
export function useMarks(steps: readonly Step[]) {
  const [marks, setMarks] = useState<MarkSet>({});
  const [active, setActive] = useState(steps[0].id);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  return {
    marks,
    active,
    chosen,
    setActive,
    place(at: PictureSpot): void {
      const step = steps.find((s) => s.id === active) ?? steps[0];
      const set = setPoint(marks, step, at);
      setMarks(set.marks);
      setChosen(set.chosen);
      setActive(stepAfter(steps, set.marks, step.id));
    },
    change(next: MarkSet, held: Chosen | null = null): void {
      setMarks(next);
      setChosen(held);
    },
  };
}
