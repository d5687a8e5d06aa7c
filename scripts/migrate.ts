/** Applies new migrations to the database that DATABASE_URL names. */
import { join } from 'node:path';
import { environment } from '#lib/config/environment.ts';
import { applyMigrations } from '#lib/data/migrate.ts';

const applied = await applyMigrations(environment().DATABASE_URL, {
  folder: join(import.meta.dirname, '..', 'prisma'),
});
console.log(applied.length > 0 ? `Applied: ${applied.join(', ')}` : 'The database is up to date.');
process.exit(0);
