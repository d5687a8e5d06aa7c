/** Applies what is new under prisma/migrations, and tells what the schema file asks for. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { withSchemaEngine } from './schema-engine.ts';

const filters = { externalTables: [], externalEnums: [] };
const LOCK = 'provider = "postgresql"\n';

/** Where the schema and its migrations lie. */
export interface SchemaFolder {
  /** The folder `prisma/`, absolute. */
  readonly folder: string;
}

/**
 * Applies every migration that the database does not have yet, in order.
 * @returns names of those applied now.
 * @throws where the database cannot be reached or a migration fails; then the
 *   database keeps what was applied before the failing one.
 */
export async function applyMigrations(
  connectionString: string,
  { folder }: SchemaFolder,
): Promise<readonly string[]> {
  const base = join(folder, 'migrations');
  const names = (await readdir(base)).filter((name) => /^\d/.test(name)).sort();
  const directories = await Promise.all(
    names.map(async (name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok' as const, value: await readFile(join(base, name, 'migration.sql'), 'utf8') },
      },
    })),
  );
  const migrationsList = {
    baseDir: base,
    lockfile: { path: 'migration_lock.toml', content: LOCK },
    migrationDirectories: directories,
    shadowDbInitScript: '',
  };
  return withSchemaEngine(connectionString, await readSchema(folder), async (engine) => {
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters });
    return appliedMigrationNames;
  });
}

/** SQL that would build an empty database up to the schema file. */
export async function sqlForSchema(connectionString: string, { folder }: SchemaFolder): Promise<string> {
  const schema = await readSchema(folder);
  return withSchemaEngine(connectionString, schema, async (engine) => {
    const { stdout } = await engine.diff({
      from: { tag: 'empty' },
      to: { tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content: schema }] },
      script: true,
      exitCode: null,
      filters,
    });
    return stdout ?? '';
  });
}

const readSchema = (folder: string): Promise<string> => readFile(join(folder, 'schema.prisma'), 'utf8');
