/** A gamepad's buttons (or a trigger wired as one) work the arc while the pointer aims. */
export class GamepadTrigger {
  private down = false;

  constructor(private readonly trigger: (down: boolean) => void) {}

  /** Reads all pads; call once a frame. Costs nothing while none is plugged in. */
  tick(): void {
    const pads = navigator.getGamepads?.() ?? [];
    let down = false;
    for (const pad of pads) if (pad?.buttons.some((button) => button.pressed)) down = true;
    if (down === this.down) return;
    this.down = down;
    this.trigger(down);
  }
}
