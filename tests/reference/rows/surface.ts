import {
  chordFace,
  columnsOf,
  DENSITY,
  dropFace,
  grooveArea,
  grooveFace,
  meniscusFace,
  roundCap,
  sagFormula,
  sagging,
  TENSION,
} from '../cases/surfaces.ts';
import { bisect } from '../formulas/special.ts';
import { capillaryLength, meniscusDistance, segment, segmentHeight } from '../formulas/surface.ts';
import { once, type Row, type Section } from '../run.ts';

/** A relaxed surface; one that did not come to rest answers nothing. */
function rested<F extends { converged: boolean }>(make: () => F): () => F {
  return once(() => {
    const face = make();
    if (!face.converged) throw new Error('the surface did not come to rest');
    return face;
  });
}
const within1percent = { share: 0.01 } as const;

const WIDTH = 12 / Math.SQRT2;
function onChord(c: number): Row[] {
  const face = rested(() => chordFace(WIDTH, c));
  const { n, middle } = columnsOf(WIDTH);
  const crown = n >> 1;
  const source = 'circular segment (geometry); Young-Laplace p = γ/R (textbook, memory)';
  return [
    {
      check: `height at the middle of a 8.49 mm chord with ${c} mm convexity`,
      source,
      unit: 'mm',
      expected: segmentHeight(WIDTH, c, middle(crown) - WIDTH / 2),
      got: () => face().height_mm[crown]!,
      tolerance: within1percent,
    },
    {
      check: `pressure under it, ${c} mm convexity`,
      source,
      unit: 'Pa',
      expected: (TENSION * 1000) / segment(WIDTH, c).radius,
      got: () => face().pressure_Pa,
      tolerance: within1percent,
    },
  ];
}

const CHORD = 6 * Math.SQRT2;
function inGroove(angle: number): Row[] {
  const area = grooveArea(6, angle);
  const face = rested(() => grooveFace(6, area));
  const phi = ((angle - 45) * Math.PI) / 180;
  const { n, middle } = columnsOf(CHORD);
  const c = Math.abs((CHORD / 2) * Math.tan(phi / 2));
  const rise = Math.sign(phi) * segmentHeight(CHORD, c, middle(n >> 1) - CHORD / 2);
  const steep = angle === 110;
  const pressure = {
    source: 'Young-Laplace over a chord w, p = 2γ sin φ / w',
    unit: 'Pa',
    expected: (2 * TENSION * 1000 * Math.sin(phi)) / CHORD,
  } as const;
  const rows: Row[] = [
    {
      check: `throat of ${area.toFixed(2)} mm² at ${angle}°`,
      source: 'circular segment over a right-angled groove (geometry)',
      unit: 'mm',
      expected: CHORD / 2 + rise,
      got: () => face().height_mm[n >> 1]!,
      tolerance: within1percent,
    },
    {
      ...pressure,
      check: `pressure in it at ${angle}°`,
      got: () => face().pressure_Pa,
      tolerance: steep ? { share: 0.01, notHeld: [0.01, 0.015] } : within1percent,
    },
  ];
  if (steep)
    rows.push({
      ...pressure,
      check: `pressure in it at ${angle}°, columns of half the size`,
      got: () => grooveFace(6, area, 0.5).pressure_Pa,
      tolerance: within1percent,
    });
  return rows;
}

function onWall(area: number): Row[] {
  const exact = once(() => sagFormula(9, area));
  const face = rested(() => sagging(9, area));
  const belly = (): number => face().height_mm.indexOf(Math.max(...face().height_mm));
  const off = (): number =>
    Math.max(...Array.from(face().height_mm, (h, j) => Math.abs(h - exact().height((j + 0.5) * face().dy))));
  const source = 'Young-Laplace with its own weight: sin ψ is a parabola up the wall (quadrature)';
  return [
    {
      check: `belly of a 9 mm strip of ${area} mm² under its own weight`,
      source,
      unit: 'mm',
      expected: () => exact().height((belly() + 0.5) * face().dy),
      got: () => face().height_mm[belly()]!,
      tolerance: within1percent,
    },
    {
      check: `face anywhere, ${area} mm²: largest difference`,
      source,
      unit: 'mm',
      expected: 0,
      got: off,
      tolerance: { amount: 0.1 },
      digits: 2,
    },
    {
      check: `pressure at its lower edge, ${area} mm²`,
      source,
      unit: 'Pa',
      expected: () => exact().pressure,
      got: () => face().pressure_Pa,
      tolerance: within1percent,
    },
  ];
}

function meniscus(): Row[] {
  const l = capillaryLength(TENSION, DENSITY);
  const face = rested(() => meniscusFace(3));
  const standsAt = (h: number): number => {
    const { height_mm, du } = face();
    let i = 0;
    while (height_mm[i + 1]! >= h) i++;
    const high = height_mm[i]!;
    return (i + 0.5 + (high - h) / (high - height_mm[i + 1]!)) * du;
  };
  return [
    ...[2, 1, 0.5, 0.2].map((h) => ({
      check: `meniscus wetting a wall to 3 mm: distance at which it is ${h} mm high`,
      source: 'Batchelor, Introduction to Fluid Dynamics, 1.9 (memory)',
      unit: 'mm',
      expected: meniscusDistance(l, 3, h),
      got: () => standsAt(h),
      tolerance: within1percent,
    })),
    {
      check: 'capillary length that puts the 0.5 mm height there',
      source: 'l = √(γ/ρg)',
      unit: 'mm',
      expected: l,
      got: () => bisect((x) => meniscusDistance(x, 3, 0.5) - standsAt(0.5), 2, 8),
      tolerance: within1percent,
    },
  ];
}

function onGround(angle: number, width: number): Row[] {
  const face = rested(() => dropFace(angle, width));
  const got = (): number => Math.max(...face().height_mm);
  const rows: Row[] = [
    {
      check: `drop ${width} mm wide meeting the ground at ${angle}°: height`,
      source: 'Bashforth & Adams in two dimensions (quadrature)',
      unit: 'mm',
      expected: () => face().exact.height,
      got,
      tolerance: within1percent,
    },
  ];
  if (width >= 60)
    rows.push({
      check: `wide puddle at ${angle}°: height`,
      source: 'h = 2 l sin(θ/2) (textbook, memory)',
      unit: 'mm',
      expected: 2 * capillaryLength(TENSION, DENSITY) * Math.sin((angle * Math.PI) / 360),
      got,
      tolerance: within1percent,
    });
  return rows;
}

function overRim(radius: number): Row[] {
  const cell = 0.75;
  const cap = rested(() => roundCap(radius, 1, cell));
  const sphere = (radius * radius + 1) / 2;
  const off = (cell / 2) * (cell / 2) * 2;
  return [
    {
      check: `cap 1 mm high over a rim of ${radius} mm: height beside the pole`,
      source: 'spherical cap (geometry)',
      unit: 'mm',
      expected: 1 - (sphere - Math.sqrt(sphere * sphere - off)),
      got: () => Math.max(...cap().height_mm.filter((h) => !Number.isNaN(h))),
      tolerance: within1percent,
    },
    {
      check: `pressure under it, rim ${radius} mm`,
      source: 'Young-Laplace p = 2γ/R (textbook, memory)',
      unit: 'Pa',
      expected: (2 * TENSION * 1000) / sphere,
      got: () => cap().pressure_Pa,
      tolerance: within1percent,
    },
  ];
}

export const surface: Section = {
  name: 'surface',
  title: 'Liquid surface alone',
  note: 'Columns of an attempt at its working cells: 0.53 mm across, 0.75 mm along; γ 1.2 N/m, ρ 7000 kg/m³. The edge of the pool is second order in the columns: a pressure is low by about 2/N² over N columns, more where the face leaves its edge steeply. Rows marked "not held" show where 1 % takes columns of half the size, with the finer answer beside.',
  rows: [
    ...[0.5, 1, 1.5, 2].flatMap(onChord),
    ...[20, 70, 90, 110].flatMap(inGroove),
    ...[5, 6].flatMap(onWall),
    ...meniscus(),
    ...onGround(30, 60),
    ...onGround(60, 60),
    ...onGround(30, 20),
    ...onGround(60, 20),
    ...[5, 6].flatMap(overRim),
  ],
};
