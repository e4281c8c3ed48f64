import type { DeviceInfo, Origin } from '../../engine/index.ts';
import * as state from '../state.ts';
import type { AttemptMeta } from '../worker/protocol.ts';

/** What an attempt is besides its poses: who welds, on what device, with which guides. */
export function attemptMeta(origin: Origin): AttemptMeta {
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
  const started = new Date().toISOString();
  return {
    origin,
    device: robot ? robotDevice() : handDevice(),
    aids,
    trainee: null,
    started,
    exercise: state.exercise.value,
  };
}

function robotDevice(): DeviceInfo {
  return { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null };
}

function handDevice(): DeviceInfo {
  const { devicePxPerMm, oneToOne, penTilts } = state.preferences.value;
  const kind = state.deviceKind.value ?? 'mouse';
  const tilts = kind === 'pen' && penTilts;
  return {
    kind,
    measures: { tipToWork: false, workAngle: tilts, travelAngle: tilts },
    // Joint millimetres per millimetre of hand: known to be 1 when welding at 1:1, unknown otherwise.
    scale: devicePxPerMm !== null && oneToOne ? 1 : null,
  };
}
