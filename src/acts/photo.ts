import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document, Thing } from '../record/document.ts';
import { traysOf } from '../standing/trays.ts';

/** Registers the photograph of a chip tray by its file name. A tray that the rig is still filling has none yet: it is refused. */
export function recordPhoto(
  project: Project,
  hole: Document,
  { tray: number, file }: { readonly tray: number; readonly file: string },
  maker: Maker,
): Result<Made> {
  // A file dragged onto the line comes with its path, which means nothing on another computer.
  const said = {
    tray: number,
    file: file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1),
  };
  const tray = traysOf(project, hole).find((each) => each.tray === said.tray);
  if (tray === undefined) return refused(notReady(hole, said.tray, 'no chips are in it yet'));
  if (!tray.done && headerOf(hole).state === 'drilling')
    return refused(notReady(hole, said.tray, `it is filled to ${formatDepth(tray.toMm)} m only`));
  const there = holeThings(hole, 'trays').findLast(([, each]) => each.tray === said.tray);
  const { fromMm, toMm } = tray;
  const what = `photograph of tray ${said.tray}: ${said.file}`;
  if (there !== undefined)
    return ok({ what, changes: [{ patch: ['trays', there[0]], set: { photo: said.file } }] });
  const thing: Thing = { tray: said.tray, fromMm, toMm, photo: said.file };
  return ok({ what, changes: [{ put: ['trays', maker.newId()], thing }] });
}

/** Registers several photographs as one edit; those that are registered already change nothing. Refused where one of them can't be. */
export function recordPhotos(
  project: Project,
  hole: Document,
  photos: readonly { readonly tray: number; readonly file: string }[],
  maker: Maker,
): Result<Made> {
  const listed = traysOf(project, hole);
  const fresh = photos.filter(({ tray, file }) => listed.find((each) => each.tray === tray)?.photo !== file);
  const made = fresh.map((each) => recordPhoto(project, hole, each, maker));
  const refusals = made.flatMap((each) => (each.ok ? [] : each.findings));
  if (refusals.length > 0) return refused(...refusals);
  const trays = fresh.map((each) => each.tray).join(', ');
  return ok({
    what: `photographs of trays ${trays} registered`,
    changes: made.flatMap((each) => (each.ok ? each.value.changes : [])),
  });
}

const notReady = (hole: Document, tray: number, problem: string) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name, thing: `tray ${tray}` },
    { problem, remedy: 'Photograph a tray wet, with its label, once it is full.' },
  );
