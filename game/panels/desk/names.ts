import { type ClassSheet, clean, type TraineeRow } from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';
import { preferences } from '../../page.ts';

const w = words.desk.class;

/** How a trainee is named on screen: by name, or where names are hidden by place on the sheet. */
export function nameSaid(sheet: ClassSheet, trainee: string): string {
  if (!preferences.value.namesHidden) return trainee;
  const all = [...new Set(sheet.rows.map((row: TraineeRow) => row.trainee))];
  return w.hidden(all.indexOf(trainee) + 1);
}

/** The name of a file, with what would steer written out, unless it gives a name away. */
export function fileSaid(file: string): string {
  return preferences.value.namesHidden ? w.hiddenFile : clean(file);
}
