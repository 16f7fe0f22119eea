import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sqlite from 'node-sqlite3-wasm';

/** Asks SQLite itself, which knows nothing of our writer, about a file of bytes. The file is only read. */
export function asking<T>(
  bytes: Uint8Array,
  ask: (all: (sql: string) => readonly Readonly<Record<string, unknown>>[]) => T,
): T {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-sqlite-'));
  const path = join(folder, 'file.gpkg');
  writeFileSync(path, bytes);
  const database = new sqlite.Database(path, { readOnly: true });
  try {
    return ask((sql) => database.all(sql) as Record<string, unknown>[]);
  } finally {
    database.close();
    rmSync(folder, { recursive: true });
  }
}
