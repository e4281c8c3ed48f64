/** Languages that results are said in. Files, tables and the command line keep to English. */
export const languages = ['en', 'de'] as const;
/** One of them, by its ISO 639-1 code. */
export type Language = (typeof languages)[number];
