import { later } from './later.tsx';

/** The instructor's desk. What makes it is fetched when it is first wanted. */
export const DeskDialog = later(async () => (await import('./desk/index.ts')).DeskDialog);
