export { DeskDialog } from './desk-dialog.tsx';
