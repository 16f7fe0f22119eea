import { win32 } from 'node:path';
import type { Disk, OpenFile } from '../../src/files/disk.ts';
import { patiently, syncByFile } from '../../src/files/real-disk.ts';
import { type Medium, namesSeen, nodeOf, syncNames } from './medium.ts';
import { recordingDisk } from './recording-disk.ts';
import type { MakeDisk } from './runs.ts';

const error = (code: string): Error => Object.assign(new Error(code), { code });

/** Names that are devices in every folder, whatever ending they have. */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)(?:\.|$)/i;
/** How often a rename over a file is refused before it goes through: a scanner looks at what was just written. */
const HELD_FOR = 3;

/**
 * A disk that behaves as one under Windows: paths have a drive or a share and backslashes, names that differ by case alone are the same, device
 * names and endings in a dot or space are refused, folders can't be synced (flushing a file flushes the log of names before it), a rename over a
 * file is refused for a while, and one that is open or marked read-only is neither renamed nor taken away. `project` is the project's folder.
 */
export function windowsDisk(project: string, readOnly: ReadonlySet<string> = new Set()): MakeDisk {
  return (medium, fault, after) => {
    const inner = recordingDisk(medium, fault, after);
    const open = new Set<string>();
    const held = new Map<string, number>();
    const at = (path: string): string => placeOf(medium, project, path);
    const requireLoose = (path: string): void => {
      if (open.has(at(path).toLowerCase()) || readOnly.has(win32.basename(path))) throw error('EPERM');
    };
    const renameOnce = async (from: string, to: string): Promise<void> => {
      requireLoose(from);
      const target = at(to);
      if (isThere(medium, target)) {
        requireLoose(to);
        const times = (held.get(target) ?? 0) + 1;
        held.set(target, times % (HELD_FOR + 1));
        if (times <= HELD_FOR) throw error(['EPERM', 'EACCES', 'EBUSY'][times % 3] ?? 'EPERM');
      }
      await inner.rename(at(from), target);
    };
    const disk: Disk = {
      create: async (path) => {
        const place = at(path);
        const file = await inner.create(place);
        open.add(place.toLowerCase());
        return opened(medium, file, () => open.delete(place.toLowerCase()));
      },
      readFile: async (path, most) => inner.readFile(at(path), most),
      list: async (folder) => inner.list(at(folder)),
      makeFolder: async (path) => inner.makeFolder(at(path)),
      facts: async (path) => inner.facts(at(path)),
      realPath: async (path) => {
        await inner.realPath(at(path));
        return win32.join(win32.dirname(project), at(path));
      },
      rename: patiently(renameOnce, async () => {}),
      unlink: async (path) => {
        requireLoose(path);
        await inner.unlink(at(path));
      },
      syncFolder: (folder) => syncByFile(disk, folder),
    };
    return { ...inner, ...disk, project } as ReturnType<MakeDisk>;
  };
}

function opened(medium: Medium, file: OpenFile, close: () => void): OpenFile {
  return {
    write: (bytes) => file.write(bytes),
    sync: async () => {
      await file.sync();
      for (const node of medium.nodes.values()) syncNames(node);
    },
    close: async () => {
      close();
      await file.close();
    },
  };
}

/** The place on the medium that a path leads to, each name as it is there; a name that Windows has not is refused. */
function placeOf(medium: Medium, project: string, path: string): string {
  const above = win32.dirname(project);
  const whole = win32.normalize(path);
  const base = above.endsWith('\\') ? above : `${above}\\`;
  if (whole.toLowerCase() !== above.toLowerCase() && !whole.toLowerCase().startsWith(base.toLowerCase()))
    throw error('ENOENT');
  const names = whole
    .slice(base.length)
    .split('\\')
    .filter((name) => name !== '');
  let inode: number | undefined = 1;
  let place = '';
  for (const name of names) {
    if (RESERVED.test(name) || /[<>:"|?*]|[. ]$/.test(name)) throw error('EINVAL');
    const there: ReadonlyMap<string, number> | undefined =
      inode === undefined ? undefined : namesSeen(nodeOf(medium, inode));
    const known: string | undefined = [...(there?.keys() ?? [])].find(
      (each) => each.toLowerCase() === name.toLowerCase(),
    );
    inode = known === undefined ? undefined : there?.get(known);
    place += `/${known ?? name}`;
  }
  return place === '' ? '/' : place;
}

function isThere(medium: Medium, place: string): boolean {
  let inode: number | undefined = 1;
  for (const name of place.split('/').filter((each) => each !== '')) {
    if (inode === undefined) return false;
    inode = namesSeen(nodeOf(medium, inode)).get(name);
  }
  return inode !== undefined;
}
