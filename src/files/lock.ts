import { join } from 'node:path';
import * as z from 'zod';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import {
  bytesIfThere,
  type Disk,
  errorCode,
  type FileFacts,
  factsIfThere,
  isGuarded,
  isMissing,
  sameFile,
  whyRefused,
} from './disk.ts';
import { lockTaken, noProject, projectInUse, staleLock } from './findings.ts';
import { JOURNAL_FOLDER } from './journal.ts';
import type { Machine } from './machine.ts';
import { createDurably } from './write-durably.ts';

/** The file that makes one console the only writer of a project. */
const LOCK_FILE = `${JOURNAL_FOLDER}/lock.json`;

/** Far more than a lock holds, bytes. */
const LARGEST_LOCK = 64 * 1024;

/** True for the name of a lock, or of one that is being set aside. */
export function isLockName(name: string): boolean {
  return name.startsWith('lock.json');
}

const holderShape = z.strictObject({
  token: z.string(),
  owner: z.string(),
  host: z.string(),
  process: z.int(),
  boot: z.string(),
  since: z.string(),
});

/** Who holds a project: a token that no other holder has, the person, the computer and process, and since when. */
type Holder = Readonly<z.infer<typeof holderShape>>;

/** A lock that is held. */
export interface Lock {
  readonly token: string;
  /** What was found on taking it: the lock of a console that is gone. */
  readonly findings: readonly Finding[];
  /**
   * Who holds the project now, if it is no longer us (the lock is read afresh); `no one` where the lock is gone. Rejects
   * where the disk does not answer.
   */
  displacedBy(): Promise<Holder | 'no one' | undefined>;
  /** Makes the lock again after it went missing; rejects where another console was quicker. */
  renew(): Promise<void>;
  release(): Promise<void>;
}

/** Who asks, and how a lock that may be live is treated. */
export interface LockRequest {
  readonly token: string;
  readonly owner: string;
  readonly since: string;
  readonly machine: Machine;
  /** Set by a person who knows that the holder is gone: takes over whoever holds it. */
  readonly takeOver: boolean;
  readonly pause: (ms: number) => Promise<void>;
}

/** A console that made the file a moment ago has not filled it yet. */
const FILL_PATIENCE_MS = 200;

/**
 * Takes the lock of a project whose journal folder is there. Refused where a live console holds it, naming who. A lock
 * whose process is gone (or whose computer was started again since) is taken over, with a note. No heartbeat: a laptop
 * that slept still holds its lock.
 */
export async function takeLock(disk: Disk, folder: string, request: LockRequest): Promise<Result<Lock>> {
  try {
    return await tryToTake(disk, folder, request);
  } catch (error) {
    return refused(isGuarded(error) ? noLock(error) : notWritable(error));
  }
}

async function tryToTake(disk: Disk, folder: string, request: LockRequest): Promise<Result<Lock>> {
  const path = join(folder, LOCK_FILE);
  const findings: Finding[] = [];
  for (let tries = 0; tries < 3; tries += 1) {
    try {
      await createDurably(disk, path, holderBytes(request));
      return ok(heldLock(disk, path, request, findings));
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') throw error;
    }
    const holder = await readHolderPatiently(disk, path, request.pause);
    if (holder === 'no one') continue;
    if (holder !== 'unreadable' && !request.takeOver && !isGone(holder, request.machine)) {
      return refused(inUse(holder));
    }
    if (await setAside(disk, path, holder, request.token))
      findings.push(
        holder === 'unreadable' || isGone(holder, request.machine) ? leftLocked(holder) : takenOver(holder),
      );
  }
  throw new Error('another console is opening it at this moment');
}

function holderBytes(request: LockRequest): Uint8Array {
  const { token, owner, since, machine } = request;
  const holder: Holder = {
    token,
    owner,
    host: machine.host,
    process: machine.process,
    boot: machine.boot,
    since,
  };
  return new TextEncoder().encode(`${JSON.stringify(holder)}\n`);
}

function heldLock(disk: Disk, path: string, request: LockRequest, findings: readonly Finding[]): Lock {
  // Asked before every append: a file that has not changed since our token was read in it need not be read again.
  let seen: FileFacts | undefined;
  const displacedBy: Lock['displacedBy'] = async () => {
    const facts = await factsIfThere(disk, path);
    if (facts !== undefined && seen !== undefined && sameFile(facts, seen)) return undefined;
    const holder = await readHolder(disk, path);
    if (holder === 'unreadable' || holder === 'no one') return 'no one';
    if (holder.token !== request.token) return holder;
    seen = facts;
    return undefined;
  };
  return {
    token: request.token,
    findings,
    displacedBy,
    renew: () => createDurably(disk, path, holderBytes(request)),
    release: async () => {
      if ((await displacedBy()) === undefined) await disk.unlink(path);
    },
  };
}

async function readHolder(disk: Disk, path: string): Promise<Holder | 'no one' | 'unreadable'> {
  const bytes = await bytesIfThere(disk, path, LARGEST_LOCK);
  if (bytes === undefined) return 'no one';
  try {
    return holderShape.parse(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    return 'unreadable';
  }
}

async function readHolderPatiently(
  disk: Disk,
  path: string,
  pause: (ms: number) => Promise<void>,
): Promise<Holder | 'no one' | 'unreadable'> {
  const holder = await readHolder(disk, path);
  if (holder !== 'unreadable') return holder;
  await pause(FILL_PATIENCE_MS);
  return readHolder(disk, path);
}

function isGone(holder: Holder, machine: Machine): boolean {
  if (holder.host !== machine.host) return false;
  if (holder.boot !== '' && machine.boot !== '' && holder.boot !== machine.boot) return true;
  return !machine.isRunning(holder.process);
}

/**
 * Moves the old lock out of the way under a name of our own, then looks at what was moved: where another console was
 * quicker it is that one's lock, and it is put back.
 */
async function setAside(
  disk: Disk,
  path: string,
  expected: Holder | 'unreadable',
  token: string,
): Promise<boolean> {
  const aside = `${path}.${token}`;
  try {
    await disk.rename(path, aside);
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
  const moved = await readHolder(disk, aside);
  const same =
    moved === expected ||
    (typeof moved === 'object' && typeof expected === 'object' && moved.token === expected.token);
  if (same) await disk.unlink(aside);
  else await disk.rename(aside, path);
  return same;
}

function inUse(holder: Holder): Finding {
  return projectInUse.at(
    { file: LOCK_FILE },
    {
      excerpt: `${holder.owner} on ${holder.host}, process ${holder.process}, since ${holder.since}`,
      problem: `${holder.owner} has this project open on ${holder.host} since ${holder.since}`,
      remedy:
        'Close that console first, or open this one to read only. If that computer is off for good, open with --take-over. Nothing was changed.',
    },
  );
}

function leftLocked(holder: Holder | 'unreadable'): Finding {
  const who = holder === 'unreadable' ? 'A console' : `The console of ${holder.owner} on ${holder.host}`;
  return staleLock.at(
    { file: LOCK_FILE },
    {
      problem: `${who} ended without closing the project`,
      remedy: 'Its lock was taken over.',
    },
  );
}

/** A holder that is running, or on another computer where no one here can tell: taken over because a person said so. */
function takenOver(holder: Holder): Finding {
  return lockTaken.at(
    { file: LOCK_FILE },
    {
      excerpt: `${holder.owner} on ${holder.host}, process ${holder.process}, since ${holder.since}`,
      problem: `the project was taken over from the console of ${holder.owner} on ${holder.host}, which may still be open`,
      remedy: 'It can only read from now on: rows typed there since are only on its screen. Close it.',
    },
  );
}

/**
 * Findings of a lock, with what is here of that console's rows. Known only once everything was read: `missing` are the files that are gone, that
 * can't be read or that hold damage.
 */
export function withWhatIsHere(findings: readonly Finding[], missing: readonly string[]): readonly Finding[] {
  const here =
    missing.length === 0
      ? 'Every row that it showed as saved is here. Rows that it did not show as saved may be gone: look at its last metres.'
      : `Rows that it showed as saved may be missing: see what is said of ${missing.slice(0, 5).join(', ')}.`;
  return findings.map((finding) =>
    finding.code === staleLock.code || finding.code === lockTaken.code
      ? { ...finding, remedy: `${finding.remedy} ${here}` }
      : finding,
  );
}

function noLock(error: unknown): Finding {
  return noProject.at(
    { file: LOCK_FILE },
    {
      problem: `no console can open this project for writing: ${whyRefused(error)}`,
      remedy:
        'Make sure that no one has the project open, move it away and open the project again. Nothing was changed.',
    },
  );
}

function notWritable(error: unknown): Finding {
  return noProject.at(
    { file: LOCK_FILE },
    {
      problem: `the project cannot be written: ${whyRefused(error)}`,
      remedy:
        'Free space or give this user the right to write; or copy the folder to another disk and log on there. To look only: offsider --read-only. Nothing was changed.',
    },
  );
}
