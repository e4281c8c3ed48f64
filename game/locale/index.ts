/** The words in use. A second language is a second catalogue of the same type. */
export { en as words } from './en.ts';
