import type { DeviceInfo, Origin } from '../../../engine/index.ts';
import type { AttemptMeta } from '../bench/protocol.ts';
import type { State } from './state.ts';

/** What an attempt is besides its poses: who welds, on what device, with which guides. */
export function attemptMeta(state: State, origin: Origin, started: string): AttemptMeta {
  const p = state.preferences.value;
  const guides = state.guides.value;
  const robot = origin.kind === 'robot';
  const aids = {
    pacer: guides.pacer && !robot,
    beat: (guides.beatHeard || guides.beatSeen) && !robot,
    toeMarks: guides.toeMarks && !robot,
    plainView: p.plainView,
    handRig: robot ? null : p.handRig,
  };
  const device = robot ? robotDevice() : handDevice(state);
  const trainee = robot || p.trainee === null ? null : { name: p.trainee, bench: p.bench };
  return { origin, device, aids, trainee, started, exercise: state.exercise.value };
}

function robotDevice(): DeviceInfo {
  return { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null };
}

/**
 * Joint millimetres per millimetre moved on the screen by pointer, finger or pen; null where the screen's size is not known, or keys
 * move the torch.
 */
export function handScale(state: State): number | null {
  const kind = state.deviceKind.value;
  const screen = state.screen_pxPerMm.value;
  if (screen === null || kind === 'keyboard' || kind === 'gamepad') return null;
  return Math.round((screen / state.steered_pxPerMm.value) * 1000) / 1000;
}

function handDevice(state: State): DeviceInfo {
  const { penTilts } = state.preferences.value;
  const kind = state.deviceKind.value ?? 'mouse';
  const tilts = kind === 'pen' && penTilts;
  return {
    kind,
    measures: { tipToWork: false, workAngle: tilts, travelAngle: tilts },
    scale: handScale(state),
  };
}
