import { useRef, useState } from 'preact/hooks';
import type { MetricUnit } from '../../scoring/index.ts';
import { words } from '../locale/index.ts';
import { trimmed } from '../locale/numbers.ts';
import { Inch } from './inch.tsx';

interface NumberProps {
  label: string;
  value: number;
  from: number;
  to: number;
  step: number;
  decimals: number;
  unit?: string;
  /** Its unit where inches may stand beside it. */
  metric?: MetricUnit;
  disabled?: boolean;
  /** Shown instead of the number, e.g. "no gap" for 0. */
  say?: ((value: number) => string) | undefined;
  set: (value: number) => void;
}

/** Pixels of drag for one step. */
const DRAG_PX = 7;

/** A number in a sentence: type it, step it with the arrow keys, or drag it sideways. */
export function NumberValue(props: NumberProps) {
  const { label, value, from, to, step, decimals, unit, metric, disabled, say, set } = props;
  const [typing, setTyping] = useState<string | null>(null);
  const drag = useRef<{ x: number; start: number; moved: boolean } | null>(null);
  const clamp = (x: number): number => Number(Math.min(to, Math.max(from, x)).toFixed(decimals));
  const commit = (text: string): void => {
    setTyping(null);
    const number = Number(text.replace(',', '.').replace('−', '-'));
    if (text.trim() !== '' && Number.isFinite(number)) set(clamp(number));
  };
  if (typing !== null)
    return (
      <span class="value typing">
        <input
          aria-label={label}
          inputMode="decimal"
          value={typing}
          size={Math.max(2, typing.length)}
          ref={(input) => input?.focus()}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => setTyping(event.currentTarget.value)}
          onBlur={(event) => commit(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit(event.currentTarget.value);
            if (event.key === 'Escape') setTyping(null);
          }}
        />
        <span class="range">
          {label}: {words.setting.range(trimmed(from, decimals), trimmed(to, decimals))} {unit}
        </span>
      </span>
    );
  return (
    <span
      class="value"
      role="spinbutton"
      tabIndex={disabled ? -1 : 0}
      aria-label={label}
      aria-valuenow={value}
      aria-valuemin={from}
      aria-valuemax={to}
      aria-disabled={disabled}
      title={`${label}: ${words.setting.range(trimmed(from, decimals), trimmed(to, decimals))} ${unit ?? ''}`}
      onKeyDown={(event) => {
        if (disabled) return;
        const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 5, PageDown: -5 }[event.key];
        if (by !== undefined) set(clamp(value + by * step));
        else if (event.key === 'Home') set(from);
        else if (event.key === 'End') set(to);
        else if (event.key === 'Enter' || /^[0-9]$/.test(event.key))
          setTyping(event.key === 'Enter' ? trimmed(value, decimals) : event.key);
        else return;
        event.preventDefault();
      }}
      onPointerDown={(event) => {
        if (disabled) return;
        drag.current = { x: event.clientX, start: value, moved: false };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const from_ = drag.current;
        if (!from_) return;
        const steps = Math.trunc((event.clientX - from_.x) / DRAG_PX);
        if (steps !== 0) from_.moved = true;
        if (from_.moved) set(clamp(from_.start + steps * step));
      }}
      onPointerUp={() => {
        if (drag.current && !drag.current.moved) setTyping(trimmed(value, decimals));
        drag.current = null;
      }}
    >
      {say ? say(value) : trimmed(value, decimals)}
      {unit && <span class="unit">{` ${unit}`}</span>}
      {metric && value !== 0 && <Inch x={value} unit={metric} />}
    </span>
  );
}

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; text: string }[];
  disabled?: boolean;
  set: (value: T) => void;
}

/** One of a few words in a sentence. */
export function ChoiceValue<T extends string>({ label, value, options, disabled, set }: ChoiceProps<T>) {
  return (
    <span class="value choice">
      <select
        aria-label={label}
        title={label}
        value={value}
        disabled={disabled}
        onChange={(event) => {
          const chosen = options.find((o) => o.value === event.currentTarget.value);
          if (chosen) set(chosen.value);
        }}
      >
        {options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.text}
          </option>
        ))}
      </select>
    </span>
  );
}
