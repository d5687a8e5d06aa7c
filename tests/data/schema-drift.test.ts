/**
 * The migrations and the schema file must tell of the same database: one is
 * built by each, and their catalogues are compared. (The engine's own way of
 * reading a live database fails on the catalogue's type "char" through this
 * driver, so it only writes the SQL that the schema file asks for.)
 */
import { join } from 'node:path';
import pg from 'pg';
import { expect, inject, it, onTestFinished } from 'vitest';
import { sqlForSchema } from '#lib/data/migrate.ts';
import { testDatabase } from '#tests/support/database.ts';
import { asAdmin, databaseAddress } from '#tests/support/database-server.ts';

const folder = join(import.meta.dirname, '..', '..', 'prisma');

/** Everything that a schema file can speak of; the engine's own table is none of its business. */
const CATALOGUE = {
  columns: `
    SELECT c.relname AS "table", a.attname AS "column", format_type(a.atttypid, a.atttypmod) AS type,
           a.attnotnull AS "required", pg_get_expr(d.adbin, d.adrelid) AS "default"
    FROM pg_class c
    JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
    LEFT JOIN pg_attrdef d ON d.adrelid = c.oid AND d.adnum = a.attnum
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> '_prisma_migrations'
    ORDER BY 1, 2`,
  constraints: `
    SELECT conrelid::regclass::text AS "table", conname AS name, pg_get_constraintdef(oid) AS says
    FROM pg_constraint
    WHERE connamespace = 'public'::regnamespace AND contype <> 'n' AND conrelid::regclass::text <> '_prisma_migrations'
    ORDER BY 1, 2`,
  indexes: `
    SELECT i.indrelid::regclass::text AS "table", pg_get_indexdef(i.indexrelid) AS says
    FROM pg_index i JOIN pg_class c ON c.oid = i.indexrelid
    WHERE c.relnamespace = 'public'::regnamespace AND i.indrelid::regclass::text <> '_prisma_migrations'
      AND i.indexprs IS NULL -- A schema file has no words for an index of what is reckoned from a column.
    ORDER BY 1, 2`,
  enums: `
    SELECT t.typname AS name, array_agg(e.enumlabel::text ORDER BY e.enumsortorder) AS labels
    FROM pg_type t JOIN pg_enum e ON e.enumtypid = t.oid
    WHERE t.typnamespace = 'public'::regnamespace GROUP BY 1 ORDER BY 1`,
};

async function catalogueOf(address: string): Promise<Record<string, unknown[]>> {
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  try {
    const found: Record<string, unknown[]> = {};
    for (const [part, sql] of Object.entries(CATALOGUE)) found[part] = (await client.query(sql)).rows;
    return found;
  } finally {
    await client.end();
  }
}

async function databaseFromSchemaFile(): Promise<string> {
  const server = inject('testServer');
  const name = `schema_${process.pid}_${Date.now()}`;
  await asAdmin(server, `CREATE DATABASE ${name}`);
  onTestFinished(() => asAdmin(server, `DROP DATABASE ${name} WITH (FORCE)`));
  const address = databaseAddress(server, name);
  await asAdmin(address, await sqlForSchema(address, { folder }));
  return address;
}

it('finds the same database by the migrations as by the schema file', async () => {
  const migrated = await testDatabase();
  const asked = await catalogueOf(await databaseFromSchemaFile());
  const built = await catalogueOf(migrated.address);
  expect(built['columns']?.length).toBeGreaterThan(50);
  expect(built).toEqual(asked);
});

it('would find a column, an index or a default that no migration makes', async () => {
  const migrated = await testDatabase();
  const before = await catalogueOf(migrated.address);
  await asAdmin(migrated.address, 'ALTER TABLE lesson ALTER COLUMN version SET DEFAULT 7');
  expect(await catalogueOf(migrated.address)).not.toEqual(before);
});
