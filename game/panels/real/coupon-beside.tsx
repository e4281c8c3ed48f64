import { useEffect, useMemo, useState } from 'preact/hooks';
import {
  type CutFrame,
  couponReport,
  jointFrame,
  type MarkedReadings,
  type PictureSpot,
  type Station,
  scalesOf,
} from '../../../scoring/index.ts';
import type { StoredCoupon } from '../../core/session/shelf.ts';
import type { Cut } from '../../core/session/state.ts';
import { words } from '../../locale/index.ts';
import { oneDecimal, trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import { cut, cutShown } from '../../page.ts';
import { MarkShapes } from './board.tsx';
import { marksFrom } from './coupon-marks.ts';
import { couponSteps } from './steps.ts';

const w = real.coupon;
/** Marks are shown smaller than they are set. */
const MARK_SIZE = 0.6;

/** A real coupon turned and sized to lie beside the model's cut: same frame, same scale, and the two readings in one table. */
export function CouponBeside({ kept, open }: { kept: StoredCoupon; open: () => void }) {
  const { coupon, picture } = kept;
  const address = useAddress(picture);
  const readings = useMemo(() => couponReport(coupon).readings, [coupon]);
  const model = cut.value;
  const [overlaid, setOverlaid] = useState(true);
  if (!model) return null;
  const size = cutShown.value / model.scale;
  const { width_px, height_px } = model.frame;
  const turn = turnOf(kept, model.frame);
  // Scale and directions have done their work once the picture lies on the cut.
  const steps = couponSteps(coupon.joint.kind).filter(
    (step) => step.id !== 'scale' && step.id !== 'across' && !step.id.startsWith('plate'),
  );
  return (
    <>
      <figure class="couponcut">
        <svg
          viewBox={`0 0 ${width_px} ${height_px}`}
          style={{ width: `${width_px * size}px`, height: `${height_px * size}px` }}
          role="img"
          aria-label={w.beside(oneDecimal(coupon.y_mm))}
          data-testid="coupon-beside"
        >
          <g transform={`matrix(${turn.matrix.map((x) => x.toFixed(5)).join(' ')})`}>
            {address && <image href={address} width={coupon.picture.width_px} height={coupon.picture.height_px} />}
            <MarkShapes steps={steps} marks={marksFrom(coupon)} chosen={null} unit={MARK_SIZE / turn.scale / size} />
          </g>
          {overlaid && <path class="modelface" d={faceOf(model)} />}
        </svg>
        <figcaption>
          {w.beside(oneDecimal(coupon.y_mm))}
          {!picture && `, ${w.noPicture}`}{' '}
          <label>
            <input type="checkbox" checked={overlaid} onChange={(event) => setOverlaid(event.currentTarget.checked)} />
            {w.overlay}
          </label>{' '}
          <button type="button" class="link" onClick={open}>
            {w.open}
          </button>
        </figcaption>
      </figure>
      {model.station && <Both model={model.station} coupon={readings} kind={coupon.joint.kind} />}
    </>
  );
}

/** The model's surface on the picture: root on root, to the same scale. */
function faceOf({ surface_mm, frame }: Cut): string {
  const spots: string[] = [];
  for (let i = 0; i + 1 < surface_mm.length; i += 2) {
    const x = frame.root.x + frame.scale * surface_mm[i];
    const y = frame.root.y - frame.scale * surface_mm[i + 1];
    spots.push(`${x.toFixed(1)} ${y.toFixed(1)}`);
  }
  return `M${spots.join('L')}`;
}

function useAddress(picture: Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (!picture) return;
    const made = URL.createObjectURL(picture);
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
      setAddress(null);
    };
  }, [picture]);
  return address;
}

/** From the picture's pixels to the drawing's: what turns, sizes and shifts it so that root and plates lie on those of the cut. */
function turnOf({ coupon }: StoredCoupon, frame: CutFrame): { matrix: number[]; scale: number } {
  const scales = scalesOf(coupon);
  const { root, alongA: p, alongB: q } = jointFrame(coupon.marks, scales);
  const det = p.x * q.y - p.y * q.x;
  const to = (x: number, y: number): PictureSpot => ({
    x: (frame.scale * (x * q.y - y * q.x)) / det,
    y: (-frame.scale * (p.x * y - p.y * x)) / det,
  });
  const [i, j, o] = [to(1, 0), to(0, 1), to(root.x, root.y)];
  return {
    matrix: [i.x, i.y, j.x, j.y, frame.root.x - o.x, frame.root.y - o.y],
    scale: frame.scale * scales.alongA.mmPerPx,
  };
}

type Kind = 'tee' | 'lap' | 'corner';

/** The model's readings and the coupon's, side by side. */
function Both({ model, coupon, kind }: { model: Station; coupon: MarkedReadings; kind: Kind }) {
  const c = words.cut.readings;
  const right = words.findings.side(kind, 'A');
  const left = words.findings.side(kind, 'B');
  const rows: [string, number, number | null][] = [
    [`${c.leg} ${left}`, model.legB_mm, coupon.legB_mm],
    [`${c.leg} ${right}`, model.legA_mm, coupon.legA_mm],
    [c.throat, model.throat_mm, coupon.throat_mm],
    [c.convexity, model.convexity_mm, coupon.convexity_mm],
    [`${c.fused} ${left}`, model.fusionDepthB_mm, coupon.fusionDepthB_mm],
    [`${c.fused} ${right}`, model.fusionDepthA_mm, coupon.fusionDepthA_mm],
    [c.root, model.rootFusion_mm, coupon.rootFusion_mm],
  ];
  return (
    <table class="readings both">
      <thead>
        <tr>
          <th />
          <th scope="col">{w.model}</th>
          <th scope="col">{w.coupon}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, bench, own]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{trimmed(bench, 2)}</td>
            <td>{own === null ? w.notMarked : trimmed(own, 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
