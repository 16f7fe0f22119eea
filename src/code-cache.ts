import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';

const DIGEST_BYTES = 32;
const digestOf = (code: Buffer): Buffer => createHash('sha256').update(code).digest();

/**
 * Compiled code that was kept under a name in the first of these folders that has it whole. V8 refuses code of another version, but not
 * code with a wrong byte in it, which can end the process: so each file begins with the SHA-256 of the rest.
 */
export function keptCode(folders: readonly string[], name: string): Buffer | undefined {
  for (const folder of folders) {
    try {
      const file = readFileSync(join(folder, name));
      const code = file.subarray(DIGEST_BYTES);
      if (digestOf(code).equals(file.subarray(0, DIGEST_BYTES))) return code;
    } catch {
      // Not there, or not to be read: the next folder, or the program is compiled as it runs.
    }
  }
  return undefined;
}

/** Keeps compiled code in the first of these folders that can be written, and removes there what was kept for another program. */
export function keepCode(folders: readonly string[], name: string, code: Buffer): void {
  for (const folder of folders) {
    const part = join(folder, `${name}.${process.pid}.part`);
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      writeFileSync(part, Buffer.concat([digestOf(code), code]), { mode: 0o644 });
      renameSync(part, join(folder, name));
      removeOthers(folder, name);
      return;
    } catch {
      rmSync(part, { force: true });
    }
  }
}

/** `program-<digest>-<version of Node>-<processor>.code`: those with another digest are of an older program. */
function removeOthers(folder: string, name: string): void {
  const ours = name.split('-', 2).join('-');
  for (const file of readdirSync(folder))
    if (/^program-.*\.code$/.test(file) && !file.startsWith(`${ours}-`))
      rmSync(join(folder, file), { force: true });
}

/** The folder in which the user's programs keep what they can make again: of XDG on Linux, of the system elsewhere; undefined without a home. */
export function userCacheFolder(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
): string | undefined {
  const home = env.HOME ?? env.USERPROFILE ?? '';
  const xdg = env.XDG_CACHE_HOME ?? '';
  if (platform === 'linux' && isAbsolute(xdg)) return join(xdg, 'offsider');
  if (!isAbsolute(home)) return undefined;
  if (platform === 'win32') return join(home, 'AppData', 'Local', 'offsider');
  return join(home, platform === 'darwin' ? 'Library/Caches' : '.cache', 'offsider');
}
