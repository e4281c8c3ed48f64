import { leftToTrainee, wordsIn } from '../../../scoring/index.ts';
import { legOf } from '../../core/session/setup.ts';
import { words } from '../../locale/index.ts';
import { oneDecimal, whole } from '../../locale/numbers.ts';
import { balance, exercise, language } from '../../page.ts';

const s = words.setting;
const j = s.joins;

/** Metal laid against metal held, said before the arc is struck. */
export function Balance() {
  const { laid_mm2, holds_mm2, most_mm2, stands, current_A, regime, dips_V } = balance.value;
  const { vary, piece } = exercise.value;
  const left = leftToTrainee(exercise.value, wordsIn(language.value).left);
  const thick = legOf(exercise.value) > 6;
  return (
    <p class="balance" data-testid="balance">
      {whole(current_A)}
      <span class="unit"> A</span>
      {j.laying}
      <b>{oneDecimal(laid_mm2)}</b>
      <span class="unit"> mm²</span>
      {j.holds}
      <b>{oneDecimal(holds_mm2)}</b>
      {j.colon}
      {stands === 'even' && s.even}
      {stands === 'within' && s.within(most_mm2 ?? holds_mm2)}
      {stands === 'over' && s.over(laid_mm2 - (most_mm2 ?? holds_mm2), most_mm2)}
      {stands === 'short' && s.under(holds_mm2 - laid_mm2)}
      {j.stop}
      {left.length > 0 && s.left(left.join('; '))}
      {vary && (piece ? s.piece(piece.number) : s.noPiece)}
      {thick && s.thick}
      {regime === 'stubbing' || regime === 'globular' ? s.transfer[regime](dips_V.low, dips_V.high) : ''}
    </p>
  );
}
