import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Project } from '../../project/project.ts';
import { depthFromMm } from '../../quantity/depth.ts';
import { parseLine } from '../../shorthand/parse.ts';
import type { Situation } from '../../termination/evaluate/situation.ts';
import type { Row } from '../../value/row.ts';
import { wrongUse } from '../findings.ts';

/** Rows that might come below the log, from lines of the shorthand parted by `;`: each of the usual length, read against the one above. Nothing is logged. */
export function whatIfRows(project: Project, situation: Situation, lines: string): Result<readonly Row[]> {
  const rows: Row[] = [];
  for (const text of lines.split(';').map((each) => each.trim())) {
    const fromMm = rows.at(-1)?.toMm ?? situation.loggedMm;
    const known = [...situation.rows, ...rows].filter((row) => row.toMm <= fromMm);
    const parsed = parseLine(text, {
      schema: project.schema,
      above: known.findLast((row) => row.noReturn !== true),
      previous: known.at(-1),
      gloves: project.settings.log.gloves,
    });
    if (parsed.kind !== 'row') {
      const said =
        parsed.kind === 'refused'
          ? parsed
          : { problem: 'this is not a row', remedy: 'Give lines that log a row, like "p1;.;."' };
      return refused(
        wrongUse.at({ field: '--what-if' }, { excerpt: text, problem: said.problem, remedy: said.remedy }),
      );
    }
    // What would be asked about is taken as meant: it is only supposed.
    const { asked: _asked, ...row } = parsed.row;
    rows.push({ ...row, fromMm, toMm: depthFromMm(fromMm + situation.header.intervalMm) });
  }
  return ok(rows);
}
