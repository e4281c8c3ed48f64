import type { Attack } from './attack.ts';
import { copies } from './copies.ts';
import { editedFiles } from './edited-files.ts';
import { forgedJournals } from './forged-journals.ts';
import { hostileFiles } from './hostile-files.ts';
import { hostileLogbooks } from './hostile-logbooks.ts';
import { hostileText } from './hostile-text.ts';
import { hugeWork } from './huge-work.ts';
import { oddAccounts } from './odd-accounts.ts';
import { oddFolders } from './odd-folders.ts';

/** Every class of attack, in the order of the table. */
export const attacks: readonly Attack[] = [
  hostileFiles,
  editedFiles,
  copies,
  forgedJournals,
  hostileText,
  hugeWork,
  hostileLogbooks,
  oddFolders,
  oddAccounts,
];
