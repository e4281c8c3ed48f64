/** Languages that results are said in. Files, tables and the command line keep to English. */
export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];
