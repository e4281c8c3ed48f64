import { type Camera, toJoint } from '../core/hand/camera.ts';
import { penAngles } from '../core/hand/pen.ts';
import type { InputRouter, PointerKind } from '../core/hand/router.ts';
import type { TorchSample } from '../core/hand/sample.ts';

/** A press needs no focus ring; browsers that know `focusVisible` leave it out. */
const QUIETLY: FocusOptions & { focusVisible: boolean } = { preventScroll: true, focusVisible: false };

/** Reads mouse, finger and pen over the joint's pane. Pressure is not used: a torch has none. */
export function listenPointer(pane: HTMLElement, host: InputRouter, camera: () => Camera): () => void {
  let holding: number | null = null;

  /** Where the pane lies: asking makes the browser lay out the page, so once for all readings of an event. */
  const placed = () => {
    const box = pane.getBoundingClientRect();
    // The pane may be scaled by the browser's zoom or a transform; its own layout pixels are what the camera counts in.
    return { box, shrink: box.width > 0 ? pane.offsetWidth / box.width : 1 };
  };

  const sampleOf = (event: PointerEvent, trigger: boolean, { box, shrink } = placed()): TorchSample => {
    const reach = event.pointerType === 'touch' ? host.fingerReach_px() : 0;
    const x = (event.clientX - box.left) * shrink - pane.clientLeft;
    const y = (event.clientY - box.top) * shrink - pane.clientTop - reach;
    const hold = host.hold();
    const angles = event.pointerType === 'pen' && host.penTilts() ? penAngles(event.tiltX, event.tiltY) : hold;
    return {
      at_ms: performance.timeOrigin + event.timeStamp,
      ...toJoint(camera(), x, y),
      tipToWork_mm: hold.tipToWork_mm,
      workAngle_deg: angles.workAngle_deg,
      travelAngle_deg: angles.travelAngle_deg,
      trigger,
    };
  };

  const kindOf = (event: PointerEvent): PointerKind =>
    event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';

  const down = (event: PointerEvent): void => {
    if (event.button !== 0 || holding !== null) return;
    if (!host.ready()) {
      host.point(sampleOf(event, false));
      return;
    }
    event.preventDefault();
    pane.focus(QUIETLY);
    pane.setPointerCapture(event.pointerId);
    holding = event.pointerId;
    host.press(kindOf(event), sampleOf(event, true));
  };
  const move = (event: PointerEvent): void => {
    if (holding !== null && event.pointerId !== holding) return;
    const between = event.getCoalescedEvents?.() ?? [];
    const trigger = holding !== null;
    const place = placed();
    host.near(
      kindOf(event),
      (between.length > 0 ? between : [event]).map((e) => sampleOf(e, trigger, place)),
    );
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== holding) return;
    holding = null;
    host.release(sampleOf(event, false));
  };
  const leave = (event: PointerEvent): void => {
    if (holding === null && event.pointerType !== 'touch') host.leave();
  };
  const menu = (event: Event): void => event.preventDefault();

  pane.addEventListener('pointerdown', down);
  pane.addEventListener('pointermove', move);
  pane.addEventListener('pointerup', up);
  pane.addEventListener('pointercancel', up);
  pane.addEventListener('lostpointercapture', up);
  pane.addEventListener('pointerleave', leave);
  pane.addEventListener('contextmenu', menu);
  return () => {
    pane.removeEventListener('pointerdown', down);
    pane.removeEventListener('pointermove', move);
    pane.removeEventListener('pointerup', up);
    pane.removeEventListener('pointercancel', up);
    pane.removeEventListener('lostpointercapture', up);
    pane.removeEventListener('pointerleave', leave);
    pane.removeEventListener('contextmenu', menu);
  };
}
