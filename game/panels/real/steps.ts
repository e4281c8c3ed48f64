import { real } from '../../locale/real-words.ts';
import type { Step } from './marks.ts';

type Kind = 'tee' | 'lap' | 'corner';

const s = real.steps;
const one = { points: 1, least: 1, joined: false } as const;
const line = { points: 'many', shape: 'dot', joined: true } as const;

/** What is marked on a cut of the bench: the plates' ways are known there. */
export function cutSteps(kind: Kind): Step[] {
  return [
    { id: 'root', ...s.root, ...one, shape: 'cross' },
    { id: 'toeB', ...s.toe(kind, 'B'), ...one, shape: 'ring' },
    { id: 'toeA', ...s.toe(kind, 'A'), ...one, shape: 'ring' },
    { id: 'face', ...s.face, ...line, least: 1 },
    { id: 'fusionB', ...s.fusion(kind, 'B'), ...line, least: 2 },
    { id: 'fusionA', ...s.fusion(kind, 'A'), ...line, least: 2 },
  ];
}

/** What is marked on a photograph: scale and ways first, and undercut where there is one. The fusion line may be left out. */
export function couponSteps(kind: Kind): Step[] {
  const [root, ...rest] = cutSteps(kind);
  return [
    { id: 'scale', ...s.scale, points: 2, least: 2, shape: 'cross', joined: true },
    root,
    { id: 'plateB', ...s.plate(kind, 'B'), ...one, shape: 'ring' },
    { id: 'plateA', ...s.plate(kind, 'A'), ...one, shape: 'ring' },
    ...rest.map((step) => (step.id.startsWith('fusion') ? { ...step, least: 0 } : step)),
    { id: 'across', ...s.across, points: 2, least: 0, shape: 'cross', joined: true },
    { id: 'undercutB', ...s.undercut(kind, 'B'), ...one, least: 0, shape: 'dot' },
    { id: 'undercutA', ...s.undercut(kind, 'A'), ...one, least: 0, shape: 'dot' },
  ];
}
