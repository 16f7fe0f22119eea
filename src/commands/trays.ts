import { join } from 'node:path';
import { recordPhotos } from '../acts/photo.ts';
import type { Outside } from '../desk/outside.ts';
import { whyRefused } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import { safeText } from '../finding/safe-text.ts';
import { csvText } from '../finding/sheet-text.ts';
import { headerOf } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { type PhotosFound, photosFor } from '../sampling/trays/tray-photos.ts';
import { checkTrays, type ListedTray } from '../sampling/trays/trays.ts';
import { trayedHole, traysOf } from '../standing/trays.ts';
import { type AtProject, atProject, holeNamed, holesOf, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayAside, sayFile, sayJson } from './say.ts';
import { submitOn } from './submit.ts';
import { tableText } from './table-text.ts';

/** What `offsider trays` is given. */
export interface TraysAsked extends Shared {
  readonly hole: string;
  /** A folder of pictures to register by their names. */
  readonly photos?: string | undefined;
  readonly as: 'text' | 'csv' | 'json';
}

/** Lists the chip trays of a hole with metres, labels and photographs; registers those of a folder first where one is given. 1 where one is missing. */
export function trays(outside: Outside, asked: TraysAsked): Promise<number> {
  const { photos } = asked;
  return atProject(outside, { ...asked, write: photos !== undefined }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    if (photos !== undefined) {
      const failed = await register(at, hole.value, photos);
      if (failed !== undefined) return failed;
    }
    const now = at.desk.get(hole.value) ?? hole.value;
    const listed = traysOf(at.project, now);
    const missing = checkTrays(at.project.sampling, trayedHole(now));
    if (asked.as === 'json') sayJson(outside, { trays: listed, findings: missing });
    else if (asked.as === 'csv') sayFile(outside, csvText(table(listed, headerOf(now).name, '')));
    else
      say(
        outside,
        listed.length === 0
          ? `No chips of ${headerOf(now).name} are in a tray yet.`
          : tableText(table(listed, headerOf(now).name, 'NONE')),
      );
    return missing.length > 0 ? EXIT.findings : EXIT.fine;
  });
}

function table(listed: readonly ListedTray[], hole: string, none: string): readonly (readonly string[])[] {
  return [
    ['hole', 'tray', 'from_m', 'to_m', 'label', 'photo'],
    ...listed.map(({ tray, fromMm, toMm, label, photo, done }) => [
      hole,
      String(tray),
      formatDepth(fromMm),
      formatDepth(toMm),
      label,
      photo ?? (done ? none : none === '' ? '' : 'being filled'),
    ]),
  ];
}

/** Registers the pictures of a folder that tell their tray; says on stderr which do not. */
async function register(at: AtProject, hole: Document, folder: string): Promise<number | undefined> {
  const { outside, desk, project } = at;
  let files: readonly string[];
  try {
    files = await filesIn(folder);
  } catch (error) {
    const problem = `the folder can't be read: ${whyRefused(error)}`;
    return refuse(
      outside,
      wrongUse.at({ file: folder }, { problem, remedy: 'Give the folder that holds the pictures.' }),
    );
  }
  const { name } = headerOf(hole);
  const others = holesOf(desk).map((each) => headerOf(each).name);
  const found = photosFor(
    name,
    others,
    traysOf(project, hole).filter((each) => each.done),
    files,
  );
  for (const line of untoldLines(found)) sayAside(outside, `${line}`);
  if (found.matched.length === 0)
    return refuse(
      outside,
      wrongUse.at(
        { file: folder },
        {
          problem: `no picture in it tells a tray of ${name}`,
          remedy: `Name them like ${name}_tray3.jpg, or type ;photo 3 and the name of the file.`,
        },
      ),
    );
  const made = recordPhotos(project, hole, found.matched, makerOf(desk));
  if (!made.ok) return refuse(outside, ...made.findings);
  return made.value.changes.length === 0 ? undefined : submitOn(at, { document: hole, made: made.value });
}

/** Names of the files of a folder, in order; folders, links and what else there is are not pictures. */
async function filesIn(folder: string): Promise<readonly string[]> {
  const names = await realDisk.list(folder);
  const kinds = await Promise.all(names.map((name) => realDisk.facts(join(folder, name))));
  return names.filter((_, index) => kinds[index]?.kind === 'file');
}

function untoldLines({ several, untold }: PhotosFound): readonly string[] {
  return [
    ...several.map(
      ({ tray, files }) =>
        `Tray ${tray} has several pictures, none is registered: ${files.map((each) => safeText(each)).join(', ')}`,
    ),
    ...(untold.length === 0
      ? []
      : [
          `Not registered, the name fits no finished tray: ${untold
            .slice(0, 12)
            .map((each) => safeText(each))
            .join(', ')}${untold.length > 12 ? ` and ${untold.length - 12} more` : ''}`,
        ]),
  ];
}
