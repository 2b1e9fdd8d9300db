import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { bindMigrationAwareSqlAdapterFactory, type SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';

type SchemaEngine = bindings.SchemaEngine;

let instantiated: Promise<void> | null = null;

/**
 * Loads the WebAssembly module behind the bindings, once per process. The package's own entry imports the
 * .wasm file as a module, which Node 20 cannot do, hence by hand.
 */
function instantiate(): Promise<void> {
  instantiated ??= (async () => {
    const require = createRequire(import.meta.url);
    const glue = require.resolve('@prisma/schema-engine-wasm/schema_engine_bg');
    const bytes = await readFile(glue.replace(/\.js$/, '.wasm'));
    const imports = { './schema_engine_bg.js': bindings as unknown as WebAssembly.ModuleImports };
    const { instance } = await WebAssembly.instantiate(bytes, imports);
    bindings.__wbg_set_wasm(instance.exports);
    (instance.exports.__wbindgen_start as () => void)();
  })();
  return instantiated;
}

/**
 * Runs `use` with Prisma's schema engine (its WebAssembly build: no native binary, no download) on a SQLite
 * database. Its version is pinned in package.json to the engine that the installed Prisma release names.
 *
 * @param url `file:` address of the database, or `:memory:`; the file is created when missing.
 * @param use gets the engine, which is freed and its connections closed when the returned promise settles.
 * @throws what the engine throws, shortened to its message; "in use" when another program holds the file.
 */
export async function withSchemaEngine<T>(url: string, use: (engine: SchemaEngine) => Promise<T>): Promise<T> {
  await instantiate();
  const factory = new ScriptRunningAdapter({ url });
  const adapter = bindMigrationAwareSqlAdapterFactory(factory);
  const engine = await bindings.SchemaEngine.new({ datamodels: undefined }, ignoreLog, adapter);
  try {
    return await use(engine);
  } catch (cause) {
    throw new Error(readableFault(cause), { cause });
  } finally {
    engine.free();
    await factory.closeAll();
  }
}

/** An engine failure's message without its internal call trace. */
export function readableFault(cause: unknown): string {
  const message = cause instanceof Error ? cause.message : String(cause);
  if (message.includes('SocketTimeout')) return 'The database is in use by another program: stop that one and try again.';
  return message.split(/\n\s+0: /)[0]?.trim() ?? message;
}

/** The engine reports every statement; failures come back as rejected promises anyway. */
function ignoreLog(): void {}

/** The SQLite adapter, with two needs of the schema engine met. */
class ScriptRunningAdapter extends PrismaBetterSqlite3 {
  readonly #open: SqlDriverAdapter[] = [];

  override async connect(): Promise<SqlDriverAdapter> {
    const adapter = await super.connect();
    this.#open.push(adapter);
    return adapter;
  }

  /**
   * The engine replays whole migration files on its scratch ("shadow") database as if each were one statement,
   * which better-sqlite3 refuses. Without parameters, a statement and a script are the same thing to SQLite.
   */
  override async connectToShadowDb(): Promise<SqlDriverAdapter> {
    const adapter = await super.connectToShadowDb();
    const executeRaw = adapter.executeRaw.bind(adapter);
    adapter.executeRaw = async (query) => {
      if (query.args.length > 0) return executeRaw(query);
      await adapter.executeScript(query.sql);
      return 0;
    };
    return adapter;
  }

  /** Freeing the engine leaves its connections open, and an open one keeps the file locked. */
  async closeAll(): Promise<void> {
    await Promise.all(this.#open.splice(0).map((adapter) => adapter.dispose()));
  }
}
