/** A gamepad's buttons (or a trigger wired as one) work the arc while the pointer aims. */
export class GamepadTrigger {
  private down = false;
  private plugged = false;

  constructor(private readonly trigger: (down: boolean) => void) {}

  /** Browsers say nothing of a pad until a button on it has been pressed; asking them before that costs time in every frame. */
  attach(): () => void {
    const plug = (): void => {
      this.plugged = true;
    };
    window.addEventListener('gamepadconnected', plug);
    return () => window.removeEventListener('gamepadconnected', plug);
  }

  /** Reads all pads; call once a frame. Costs nothing while none is plugged in. */
  tick(): void {
    if (!this.plugged) return;
    const pads = navigator.getGamepads?.() ?? [];
    let down = false;
    for (const pad of pads) if (pad?.buttons.some((button) => button.pressed)) down = true;
    if (down === this.down) return;
    this.down = down;
    this.trigger(down);
  }
}
