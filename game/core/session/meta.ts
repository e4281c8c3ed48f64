import type { DeviceInfo, Origin } from '../../../engine/index.ts';
import type { AttemptMeta } from '../bench/protocol.ts';
import type { State } from './state.ts';

/** What an attempt is besides its poses: who welds, on what device, with which guides. */
export function attemptMeta(state: State, origin: Origin, started_ms: number): AttemptMeta {
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
  const started = new Date(started_ms).toISOString();
  return { origin, device, aids, trainee: null, started, exercise: state.exercise.value };
}

function robotDevice(): DeviceInfo {
  return { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null };
}

function handDevice(state: State): DeviceInfo {
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
