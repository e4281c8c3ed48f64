import type { RigOptions } from '../input/handRig.ts';

/** What the user has set for this browser. Nothing here is part of an attempt until the attempt begins. */
export interface Preferences {
  exercise: string | null;
  cautionsRead: boolean;
  /** A torch that shows the weave to go by. */
  pacer: boolean;
  beatSeen: boolean;
  beatHeard: boolean;
  toeMarks: boolean;
  plainView: boolean;
  handRig: RigOptions | null;
  /** A key press of Space keeps the trigger until the next one. */
  latchTrigger: boolean;
  sound: number;
  /** Device pixels per millimetre of this screen, from the bank card; null before calibration. */
  devicePxPerMm: number | null;
  oneToOne: boolean;
  penTilts: boolean;
  /** Cuts open without readings, until measured or asked for. */
  measureFirst: boolean;
  /** Guides as set here, whatever the level says. */
  ownGuides: boolean;
}

const DEFAULT_PREFERENCES: Preferences = {
  exercise: null,
  cautionsRead: false,
  pacer: false,
  beatSeen: true,
  beatHeard: false,
  toeMarks: true,
  plainView: false,
  handRig: null,
  latchTrigger: false,
  sound: 0.25,
  devicePxPerMm: null,
  oneToOne: false,
  penTilts: false,
  measureFirst: false,
  ownGuides: false,
};

const KEY = 'toehold-preferences-1';

/** Reads what was kept, field by field, so that an older or spoilt entry costs only itself. */
export function loadPreferences(): Preferences {
  const kept = readKept();
  const out = { ...DEFAULT_PREFERENCES };
  const flags = [
    'cautionsRead',
    'pacer',
    'beatSeen',
    'beatHeard',
    'toeMarks',
    'plainView',
    'latchTrigger',
    'oneToOne',
    'penTilts',
    'measureFirst',
    'ownGuides',
  ] as const;
  for (const name of flags) if (typeof kept[name] === 'boolean') out[name] = kept[name];
  // Its name in entries of earlier days.
  if (typeof kept.ghost === 'boolean' && kept.pacer === undefined) out.pacer = kept.ghost;
  if (typeof kept.exercise === 'string') out.exercise = kept.exercise;
  if (typeof kept.sound === 'number' && kept.sound >= 0 && kept.sound <= 1) out.sound = kept.sound;
  if (typeof kept.devicePxPerMm === 'number' && kept.devicePxPerMm > 0.5 && kept.devicePxPerMm < 60)
    out.devicePxPerMm = kept.devicePxPerMm;
  const rig = kept.handRig as Partial<RigOptions> | null | undefined;
  if (rig && typeof rig.gun_g === 'number' && typeof rig.hose === 'number')
    out.handRig = { gun_g: rig.gun_g, hose: rig.hose };
  return out;
}

export function savePreferences(preferences: Preferences): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences));
  } catch {
    // A browser that keeps nothing still welds; the settings only last until the page closes.
  }
}

function readKept(): Partial<Record<keyof Preferences | 'ghost', unknown>> {
  try {
    const parsed: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof parsed === 'object' && parsed !== null ? parsed : {};
  } catch {
    return {};
  }
}
