import { useState } from 'preact/hooks';
import { words } from '../locale/index.ts';
import { preferences, setPreference } from '../state.ts';
import { Dialog } from './dialog.tsx';

const c = words.calibration;

/** Width of an ID-1 card, mm (ISO/IEC 7810). */
const CARD_MM = 85.6;
/** CSS's own idea of a millimetre, to start from. */
const CSS_PX_PER_MM = 96 / 25.4;

/** Finds out how many pixels this screen has to the millimetre, by laying a bank card on it. */
export function CalibrationForm({ close }: { close: () => void }) {
  const ratio = window.devicePixelRatio;
  const [scale, setScale] = useState(() => (preferences.value.devicePxPerMm ?? CSS_PX_PER_MM * ratio) / ratio);
  const most = Math.min(window.innerWidth - 60, 760);
  return (
    <Dialog title={c.title} close={close}>
      <p>{c.text}</p>
      <svg class="card" width={most} height={150} role="img" aria-label={c.title}>
        <title>{c.title}</title>
        <rect x={1} y={10} width={Math.min(most - 2, CARD_MM * scale)} height={130} rx={3.2 * scale} />
        <line x1={1} x2={1} y1={0} y2={150} />
        <line x1={1 + CARD_MM * scale} x2={1 + CARD_MM * scale} y1={0} y2={150} />
      </svg>
      <input
        type="range"
        class="wide"
        style={{ width: `${most}px` }}
        aria-label={c.slider}
        min={120 / CARD_MM}
        max={(most - 2) / CARD_MM}
        step={0.005}
        value={scale}
        onInput={(event) => setScale(Number(event.currentTarget.value))}
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
