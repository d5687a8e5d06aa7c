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
import pg from 'pg';

/** Called where the engine gives up: without it, it fails with a bare `unreachable`. */
function giveUp(message: string): never {
  throw new Error(`The schema engine gave up: ${message}`);
}

async function start(): Promise<void> {
  Object.assign(globalThis, { PRISMA_WASM_PANIC_REGISTRY: { set_message: giveUp } });
  const folder = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const wasm = await readFile(folder.replace(/schema_engine_bg\.js$/, 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(wasm, {
    './schema_engine_bg.js': bindings as unknown as WebAssembly.ModuleImports,
  });
  bindings.__wbg_set_wasm(instance.exports);
  (instance.exports['__wbindgen_start'] as () => void)();
}

// The bindings hold one engine for the whole process, however often this file
// is loaded (as tests do): starting another would pull the memory from under it.
const shared = globalThis as { benchleafSchemaEngine?: Promise<void> };

/**
 * Does something with an engine that talks to one database; its connections
 * are closed afterwards.
 * @param schemaText text of prisma/schema.prisma.
 */
export async function withSchemaEngine<T>(
  connectionString: string,
  schemaText: string,
  use: (engine: bindings.SchemaEngine) => Promise<T>,
): Promise<T> {
  shared.benchleafSchemaEngine ??= start();
  await shared.benchleafSchemaEngine;
  const pool = new pg.Pool({ connectionString, max: 2 });
  pool.on('error', () => undefined);
  let engine: bindings.SchemaEngine | undefined;
  try {
    engine = await bindings.SchemaEngine.new(
      { datamodels: [['schema.prisma', schemaText]] },
      () => undefined,
      bindMigrationAwareSqlAdapterFactory(new PrismaPg(pool)),
    );
    return await use(engine);
  } finally {
    // By hand, and not before it has answered: the garbage collector does not know that it is at work.
    engine?.free();
    await pool.end();
  }
}
