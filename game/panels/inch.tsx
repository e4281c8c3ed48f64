import { inInches, type MetricUnit } from '../../scoring/index.ts';
import { language, preferences } from '../page.ts';

/** What a metric value is in inches, where the user wants it beside; empty where not. */
export function inches(x: number, unit: MetricUnit): string {
  return preferences.value.inches ? inInches(x, unit, language.value) : '';
}

/** The same in brackets and small, after the metric value. */
export function Inch({ x, unit = 'mm' }: { x: number; unit?: MetricUnit }) {
  const said = inches(x, unit);
  return said === '' ? null : <span class="unit inch"> ({said})</span>;
}
