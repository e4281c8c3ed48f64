import type { Verdict } from '../../scoring/index.ts';
import { words } from '../locale/index.ts';

const SHAPES: Record<Verdict, string> = {
  // An open ring, a filled square, a half-filled ring, a bare stroke: told apart by shape, in black and white.
  within: 'M7 2a5 5 0 1 0 .01 0z',
  outside: 'M2 2h10v10h-10z',
  'too close to call': 'M7 2a5 5 0 1 0 .01 0zM7 2v10a5 5 0 0 0 0 -10z',
  'no verdict': 'M2 7h10',
};

/** A verdict as word and shape; colour has no part in it. @param bare the word is for listeners only, where there is no room for it */
export function VerdictMark({ verdict, bare }: { verdict: Verdict; bare?: boolean }) {
  return (
    <span class={`verdict ${verdict.replaceAll(' ', '-')}`}>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
        <path d={SHAPES[verdict]} />
      </svg>
      {bare ? <span class="spoken">{words.findings.verdict[verdict]}</span> : words.findings.verdict[verdict]}
    </span>
  );
}
