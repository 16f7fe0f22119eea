import type { StoredDocument } from './document-file.ts';

/** Documents as read from bytes that passed every check, by the digest of the bytes and the name that they were read under. */
export interface Verified {
  readonly get: (digest: string, key: string) => StoredDocument | undefined;
  readonly add: (digest: string, key: string, bytes: number, stored: StoredDocument) => void;
}

/**
 * Keeps what was read last, up to so many bytes of files: a project is read more than once while it is opened, checked and taken
 * in. The same bytes always give the same document, so a file that has changed is another digest and is never found here.
 */
export function keepVerified(mostBytes: number): Verified {
  const kept = new Map<string, { readonly bytes: number; readonly stored: StoredDocument }>();
  let held = 0;
  const drop = (name: string): void => {
    held -= kept.get(name)?.bytes ?? 0;
    kept.delete(name);
  };
  return {
    get: (digest, key) => {
      const name = `${digest} ${key}`;
      const found = kept.get(name);
      if (found === undefined) return undefined;
      // Behind the others, so that what is not asked for any more goes first.
      kept.delete(name);
      kept.set(name, found);
      return found.stored;
    },
    add: (digest, key, bytes, stored) => {
      if (bytes > mostBytes) return;
      const name = `${digest} ${key}`;
      drop(name);
      kept.set(name, { bytes, stored });
      held += bytes;
      for (const oldest of kept.keys()) {
        if (held <= mostBytes) break;
        drop(oldest);
      }
    },
  };
}

const MOST_BYTES = 16 * 1024 * 1024;

/** What this process has read. */
export const verified = keepVerified(MOST_BYTES);
