import { useState } from 'preact/hooks';
import { DEFAULT_RIG } from '../core/hand/hand-rig.ts';
import { RIG_RANGE } from '../core/session/preferences.ts';
import { words } from '../locale/index.ts';
import { isTest, level, preferences, setPreference } from '../page.ts';
import { CalibrationForm } from './calibration.tsx';
import { Dialog } from './dialog.tsx';
import { LanguageChoice } from './language-choice.tsx';
import { PenCheckForm } from './pen-check.tsx';

const a = words.aids;

type Flag =
  | 'pacer'
  | 'beatSeen'
  | 'beatHeard'
  | 'toeMarks'
  | 'plainView'
  | 'latchTrigger'
  | 'oneToOne'
  | 'measureFirst'
  | 'inches'
  | 'leftHanded'
  | 'captions'
  | 'ownGuides'
  | 'fadeGuides';

function Switch({ name, text, disabled }: { name: Flag; text: string; disabled?: boolean }) {
  return (
    <label class="switch">
      <input
        type="checkbox"
        checked={preferences.value[name]}
        disabled={disabled}
        onChange={(event) => setPreference(name, event.currentTarget.checked)}
      />
      {text}
    </label>
  );
}

/** Guides that can be switched off, and what is known about screen and pen. */
export function AidsDialog({ close }: { close: () => void }) {
  const [inside, setInside] = useState<'calibration' | 'pen' | null>(null);
  const p = preferences.value;
  const off = isTest.value || (level.value.kind === 'without guides' && !p.ownGuides);
  const back = () => setInside(null);
  if (inside === 'calibration') return <CalibrationForm close={back} />;
  if (inside === 'pen') return <PenCheckForm close={back} />;
  return (
    <Dialog title={a.title} close={close}>
      <p class="unit" data-testid="level">
        {words.level.long(level.value)}
      </p>
      {(level.value.kind === 'with guides' || level.value.kind === 'without guides') && (
        <Switch name="ownGuides" text={words.level.own} />
      )}
      <Switch name="pacer" text={a.pacer} disabled={off} />
      <Switch name="beatSeen" text={a.beatSeen} disabled={off} />
      <Switch name="beatHeard" text={a.beatHeard} disabled={off} />
      <Switch name="toeMarks" text={a.toeMarks} disabled={off} />
      <Switch name="fadeGuides" text={words.practice.fade} disabled={off} />
      <label class="switch">
        {a.sound}
        <input
          type="range"
          min={0}
          max={1}
          step={0.05}
          value={p.sound}
          onInput={(event) => setPreference('sound', Number(event.currentTarget.value))}
        />
      </label>
      <Switch name="captions" text={a.captions} />
      <Switch name="plainView" text={a.plainView} />
      <label class="switch">
        <input
          type="checkbox"
          checked={p.handRig !== null}
          onChange={(event) => setPreference('handRig', event.currentTarget.checked ? DEFAULT_RIG : null)}
        />
        {a.handRig}
      </label>
      {p.handRig && <RigSliders rig={p.handRig} />}
      <Switch name="latchTrigger" text={a.latch} />
      <Switch name="measureFirst" text={a.measureFirst} />
      <hr />
      <LanguageChoice />
      <Switch name="inches" text={a.inches} />
      <Switch name="leftHanded" text={a.leftHanded} />
      <hr />
      <p>
        <button type="button" onClick={() => setInside('calibration')}>
          {a.calibrate}
        </button>{' '}
        {p.devicePxPerMm !== null && a.calibrated(p.devicePxPerMm / window.devicePixelRatio)}
      </p>
      <Switch name="oneToOne" text={a.oneToOne} disabled={p.devicePxPerMm === null} />
      <p>
        <button type="button" onClick={() => setInside('pen')}>
          {a.penCheck}
        </button>{' '}
        {p.penTilts && a.penTilts}
      </p>
      <p class="unit">{a.note}</p>
      <p class="buttons">
        <button type="button" class="strong" onClick={close}>
          {words.about.close}
        </button>
      </p>
    </Dialog>
  );
}

function RigSliders({ rig }: { rig: { gun_g: number; hose: number } }) {
  return (
    <div class="rig">
      <label class="switch">
        {a.gun}
        <input
          type="range"
          min={RIG_RANGE.gun_g.from}
          max={RIG_RANGE.gun_g.to}
          step={50}
          value={rig.gun_g}
          onInput={(event) => setPreference('handRig', { ...rig, gun_g: Number(event.currentTarget.value) })}
        />
        {a.grams(rig.gun_g)}
      </label>
      <label class="switch">
        {a.hose}
        <input
          type="range"
          min={RIG_RANGE.hose.from}
          max={RIG_RANGE.hose.to}
          step={0.1}
          value={rig.hose}
          onInput={(event) => setPreference('handRig', { ...rig, hose: Number(event.currentTarget.value) })}
        />
      </label>
    </div>
  );
}
