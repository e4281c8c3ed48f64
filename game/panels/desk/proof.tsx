import type { ProofHand, ProofRow } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { VerdictMark } from '../verdict-mark.tsx';

const w = words.desk.editor;

/** What robot hands made of the exercise. */
export function ProofPanel({ session }: { session: Session }) {
  const { editor } = session.desk;
  const { stage, hands, rows, failed } = editor.proof.value;
  if (stage === 'none') return null;
  const done = rows.filter((row) => row !== null);
  const { kind } = editor.draft.value.joint;
  return (
    <section class="proof" data-testid="proof">
      <h3>{w.proof.title}</h3>
      {stage === 'welding' && (
        <p role="status" class="class-progress">
          {w.proving(done.length, hands.length)} <progress value={done.length} max={hands.length} />
          <button type="button" onClick={() => editor.stop()}>
            {words.desk.class.stop}
          </button>
        </p>
      )}
      {stage === 'stopped' && <p role="status">{w.stopped}</p>}
      {stage === 'done' && <Summary session={session} />}
      {failed.map((why) => (
        <p key={why} class="wrong">
          {why}
        </p>
      ))}
      <div class="scroll">
        <table>
          <thead>
            <tr>
              {w.proof.head.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {hands.map((hand, i) => (
              <Row key={nameOf(hand)} name={nameOf(hand)} row={rows[i] ?? null} kind={kind} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="unit">{w.proof.model}</p>
    </section>
  );
}

function Summary({ session }: { session: Session }) {
  const { good, faults, tolerates } = session.desk.editor.summary();
  return (
    <p class="headline" data-testid="proof-summary">
      {w.proof.good(good.within, good.of, good.least)} {w.proof.faults(faults.told, faults.of)}{' '}
      {faults.close.length > 0 && w.proof.close(faults.close.map((fault) => w.faults[fault]))}{' '}
      {faults.missed.length > 0 && w.proof.missed(faults.missed.map((fault) => w.faults[fault]))}{' '}
      {w.proof.tolerates(tolerates)}
    </p>
  );
}

function Row({ name, row, kind }: { name: string; row: ProofRow | null; kind: 'tee' | 'lap' | 'corner' }) {
  if (row === null)
    return (
      <tr>
        <th scope="row">{name}</th>
        <td colSpan={3}>…</td>
      </tr>
    );
  const { nearest } = row;
  const line =
    nearest === null
      ? ''
      : `${words.findings.measure(nearest.measure)} ${words.findings.side(kind, nearest.side)}`.trim();
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <VerdictMark verdict={row.verdict} />
      </td>
      <td>{nearest === null ? '' : w.proof.nearest(line, nearest.by)}</td>
      <td>{row.says}</td>
    </tr>
  );
}

function nameOf({ fault, amount, seed }: ProofHand): string {
  if (fault !== null) return w.faults[fault];
  return amount === 0 ? w.proof.good1 : w.proof.amount(amount, seed);
}
