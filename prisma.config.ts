import { defineConfig } from 'prisma/config';

// `prisma generate` asks for a schema engine that it does not use, and would
// download it. Any executable satisfies the question. Migrations do not run
// through this command but through the engine in lib/data/migrate.ts.
process.env['PRISMA_SCHEMA_ENGINE_BINARY'] ??= process.execPath;

export default defineConfig({ schema: 'prisma/schema.prisma' });
