import type { DeviceInfo, Origin } from '../../engine/index.ts';
import { steeredScale } from '../benchStage.ts';
import * as state from '../state.ts';
import type { AttemptMeta } from '../worker/protocol.ts';

/** What an attempt is besides its poses: who welds, on what device, with which guides. */
export function attemptMeta(origin: Origin): AttemptMeta {
  const p = state.preferences.value;
  const guides = state.guides.value;
  const robot = origin.kind === 'robot';
  const aids = {
    ghost: guides.ghost && !robot,
    beat: (guides.beatHeard || guides.beatSeen) && !robot,
    toeMarks: guides.toeMarks && !robot,
    plainView: p.plainView,
    handRig: robot ? null : p.handRig,
  };
  return { origin, device: robot ? robotDevice() : handDevice(), aids, seed: 1, exercise: state.exercise.value };
}

function robotDevice(): DeviceInfo {
  return { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null };
}

/**
 * Joint millimetres per millimetre moved on the screen by pointer, finger or pen; null where the screen's size is not known, or keys
 * move the torch.
 */
export function handScale(): number | null {
  const { devicePxPerMm } = state.preferences.value;
  const kind = state.deviceKind.value;
  if (devicePxPerMm === null || kind === 'keyboard' || kind === 'gamepad') return null;
  return Math.round((devicePxPerMm / window.devicePixelRatio / steeredScale.value) * 1000) / 1000;
}

function handDevice(): DeviceInfo {
  const { penTilts } = state.preferences.value;
  const kind = state.deviceKind.value ?? 'mouse';
  const tilts = kind === 'pen' && penTilts;
  return {
    kind,
    measures: { tipToWork: false, workAngle: tilts, travelAngle: tilts },
    scale: handScale(),
  };
}
