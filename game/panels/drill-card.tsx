import type { HandReading } from '../../scoring/index.ts';
import { DRILL_ASKS } from '../core/practice/drills.ts';
import type { DrillView } from '../core/practice/views.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { drill } from '../page.ts';

const w = words.practice.drill;

/** A drill at the edge of the bench: what the hand does, live and afterwards. */
export function DrillCard({ session }: { session: Session }) {
  const view = drill.value;
  if (!view) return null;
  return (
    <section class="lesson drill" aria-label={w.title} data-testid="drill" data-phase={view.phase}>
      <h2>{w.name(view.drill)}</h2>
      <p>{w.about(view.drill)}</p>
      <p role="status">{said(view)}</p>
      <Readings view={view} />
      <p class="buttons">
        <button type="button" onClick={() => session.drill(null)}>
          {w.leave}
        </button>
      </p>
    </section>
  );
}

function said({ phase, duration_s }: DrillView): string {
  if (phase === 'ready') return w.ready;
  if (phase === 'short') return w.short;
  return phase === 'done' ? w.done(duration_s) : '';
}

/** What the drill is about first, the rest of the hand below it. */
function Readings({ view: { drill: what, phase, readings, duration_s } }: { view: DrillView }) {
  if (phase === 'ready' || phase === 'short') return null;
  const about = (r: HandReading): boolean => DRILL_ASKS[what].includes(r.measure);
  const list = [...readings.filter(about), ...readings.filter((r) => !about(r))];
  return (
    <>
      {phase === 'running' && <p class="unit">{w.running(duration_s)}</p>}
      {list.length === 0 && <p>{w.nothing}</p>}
      <dl>
        {list.map((r) => (
          <div key={r.measure} class={about(r) ? 'about' : ''}>
            <dt>{w.measure[r.measure]}</dt>
            <dd>
              {w.reading(r)} <b>{r.inside === null ? w.state.free : r.inside ? w.state.in : w.state.out}</b>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
