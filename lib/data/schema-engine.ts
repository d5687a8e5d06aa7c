/**
 * The official schema engine, as the WebAssembly build that a registry package
 * ships: it applies migrations and compares schemas without downloading
 * anything. This is the only file that knows how to start it.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';

const started = (async () => {
  const folder = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const wasm = await readFile(folder.replace(/schema_engine_bg\.js$/, 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(wasm, {
    './schema_engine_bg.js': bindings as unknown as WebAssembly.ModuleImports,
  });
  bindings.__wbg_set_wasm(instance.exports);
  (instance.exports['__wbindgen_start'] as () => void)();
})();

/**
 * An engine that talks to one database.
 * @param schemaText text of prisma/schema.prisma.
 */
export async function openSchemaEngine(
  connectionString: string,
  schemaText: string,
): Promise<bindings.SchemaEngine> {
  await started;
  return bindings.SchemaEngine.new(
    { datamodels: [['schema.prisma', schemaText]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(new PrismaPg({ connectionString })),
  );
}
