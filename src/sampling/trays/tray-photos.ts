import type { ListedTray } from './trays.ts';

/** Photographs found for trays, and what could not be told. */
export interface PhotosFound {
  readonly matched: readonly { readonly tray: number; readonly file: string }[];
  /** Trays that more than one file is for. */
  readonly several: readonly { readonly tray: number; readonly files: readonly string[] }[];
  /** Pictures that no tray of this hole is told by. */
  readonly untold: readonly string[];
}

const PICTURE = /\.(?:jpe?g|png|heic|heif|tiff?|webp)$/i;

/**
 * Which picture of a folder is of which tray of a hole, by its name. It names the tray (`ZQRC004_tray3.jpg`, `tray 3.jpg`), its metres
 * (`ZQRC004 40-60.jpg`), or, with the hole, its number alone (`ZQRC004-3.jpg`); so does a name that is nothing but a number. A name with
 * another hole in it is left out, and one that tells nothing (`IMG_0412.JPG`) is untold. Other files are not pictures.
 */
export function photosFor(
  hole: string,
  otherHoles: readonly string[],
  trays: readonly ListedTray[],
  files: readonly string[],
): PhotosFound {
  const told = new Map<number, string[]>();
  const untold: string[] = [];
  for (const file of files.filter((each) => PICTURE.test(each))) {
    const stem = file.replace(PICTURE, '');
    if (otherHoles.some((other) => other !== hole && names(stem, other) && !names(stem, hole))) continue;
    const tray = trayTold(hole, trays, stem);
    if (tray === undefined) untold.push(file);
    else told.set(tray, [...(told.get(tray) ?? []), file]);
  }
  const all = [...told].sort(([a], [b]) => a - b);
  return {
    matched: all.flatMap(([tray, found]) =>
      found.length === 1 && found[0] !== undefined ? [{ tray, file: found[0] }] : [],
    ),
    several: all.flatMap(([tray, found]) => (found.length > 1 ? [{ tray, files: found }] : [])),
    untold,
  };
}

/** The hole's name stands in a file's name by itself: not MBRC002 in MBRC002A. */
function names(stem: string, hole: string): boolean {
  return without(stem, hole) !== undefined;
}

/** What is left of a file's name without the hole's; undefined where that is not in it. */
function without(stem: string, hole: string): string | undefined {
  const upper = stem.toUpperCase();
  const at = upper.indexOf(hole.toUpperCase());
  const behind = upper.charAt(at + hole.length);
  const before = upper.charAt(at - 1);
  if (at < 0 || /[A-Z0-9]/.test(behind) || /[A-Z0-9]/.test(before)) return undefined;
  return `${stem.slice(0, at)} ${stem.slice(at + hole.length)}`;
}

function trayTold(hole: string, trays: readonly ListedTray[], stem: string): number | undefined {
  const rest = without(stem, hole);
  const text = rest ?? stem;
  const byWord = /tray[\s_.#-]*0*(\d{1,3})(?!\d)/i.exec(text)?.[1];
  if (byWord !== undefined) return there(trays, Number(byWord));
  if (rest === undefined) return /^0*\d{1,3}$/.test(stem.trim()) ? there(trays, Number(stem)) : undefined;
  const [, from, to] = /(\d+(?:\.\d+)?)\s*(?:-|–|to|_)\s*(\d+(?:\.\d+)?)/i.exec(rest) ?? [];
  if (from !== undefined && to !== undefined)
    return trays.find((each) => each.fromMm === Number(from) * 1000 && each.toMm === Number(to) * 1000)?.tray;
  const numbers = [...rest.matchAll(/\d+/g)].map(([digits]) => Number(digits));
  return numbers.length === 1 && numbers[0] !== undefined ? there(trays, numbers[0]) : undefined;
}

function there(trays: readonly ListedTray[], tray: number): number | undefined {
  return trays.some((each) => each.tray === tray) ? tray : undefined;
}
