import { rangeSvg } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { language } from '../../page.ts';
import { Still } from './still.tsx';

const w = words.desk.editor.map;

/** Where root and profile both hold round the settings of the exercise: a study, and called one. */
export function RangePanel({ session }: { session: Session }) {
  const { editor } = session.desk;
  const { stage, done, total, map } = editor.map.value;
  if (stage === 'none') return null;
  return (
    <section class="range-map" data-testid="range-map">
      <h3>{w.title}</h3>
      {stage === 'welding' && (
        <p role="status" class="class-progress">
          {w.welding(done, total)} <progress value={done} max={total} />
          <button type="button" onClick={() => editor.stopMap()}>
            {w.stop}
          </button>
        </p>
      )}
      {stage === 'stopped' && <p role="status">{w.stopped}</p>}
      {map && <Still svg={rangeSvg(map, language.value)} name="range-drawing" tall />}
    </section>
  );
}
