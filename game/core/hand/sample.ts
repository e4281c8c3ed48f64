/** One reading of the hand: where the torch aims and how it is held. */
export interface TorchSample {
  /** When the device was there, ms since the epoch (performance.timeOrigin + event.timeStamp), so page and Worker agree. */
  at_ms: number;
  u_mm: number;
  y_mm: number;
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  trigger: boolean;
}
