import { defineConfig } from 'drizzle-kit';

/** `npm run lab:migration` compares tables.ts with the last migration and writes the next. */
export default defineConfig({
  dialect: 'postgresql',
  schema: './scoring/lab/tables.ts',
  out: './scoring/lab/migrations',
});
