import { useState } from 'preact/hooks';
import { words } from '../locale/index.ts';
import { preferences, setPreference } from '../page.ts';
import { Dialog } from './dialog.tsx';

const c = words.calibration;

/** Long and short edge of an ID-1 card, mm (ISO/IEC 7810). */
const LONG_MM = 85.6;
const SHORT_MM = 53.98;
/** A window narrower than this is a phone, on which the card has to stand upright. */
const NARROW_PX = 620;
/** Widest the card may be drawn in the dialog, and what the dialog takes of a narrow window. */
const WIDEST_PX = 590;
const FRAME_PX = 66;
/** No screen is coarser than this. */
const LEAST_PX_PER_MM = 1.2;
/** CSS's own idea of a millimetre, to start from. */
const CSS_PX_PER_MM = 96 / 25.4;

/** Finds out how many pixels this screen has to the millimetre, by laying a bank card on it. */
export function CalibrationForm({ close }: { close: () => void }) {
  const ratio = window.devicePixelRatio;
  const [scale, setScale] = useState(() => (preferences.value.devicePxPerMm ?? CSS_PX_PER_MM * ratio) / ratio);
  const upright = window.innerWidth < NARROW_PX;
  const edge_mm = upright ? SHORT_MM : LONG_MM;
  const most = Math.min(window.innerWidth - FRAME_PX, WIDEST_PX);
  return (
    <Dialog title={c.title} close={close}>
      <p>{upright ? c.upright : c.text}</p>
      <svg class="card" width={most} height={150} role="img" aria-label={c.title}>
        <title>{c.title}</title>
        <rect x={1} y={10} width={Math.min(most - 2, edge_mm * scale)} height={130} rx={3.2 * scale} />
        <line x1={1} x2={1} y1={0} y2={150} />
        <line x1={1 + edge_mm * scale} x2={1 + edge_mm * scale} y1={0} y2={150} />
      </svg>
      <input
        type="range"
        class="wide"
        style={{ width: `${most}px` }}
        aria-label={c.slider}
        min={0}
        max={(most - 2) / edge_mm}
        step={0.005}
        value={scale}
        // From nothing, so that the thumb stands under the line it moves.
        onInput={(event) => setScale(Math.max(LEAST_PX_PER_MM, Number(event.currentTarget.value)))}
      />
      <p class="buttons">
        <button
          type="button"
          class="strong"
          onClick={() => {
            setPreference('devicePxPerMm', scale * ratio);
            setPreference('oneToOne', true);
            close();
          }}
        >
          {c.keep}
        </button>
        <button type="button" onClick={close}>
          {c.cancel}
        </button>
      </p>
    </Dialog>
  );
}
